#pragma once

#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "climate/place.hpp"
#include "flowering/bloom.hpp"

namespace bulbwright::fit {

enum class Event { first, peak };

/// A published date, or several of one place, label and event, matched to a taxon and a climate.
struct BloomTarget {
  std::string site, label, taxon;
  Event event = Event::first;
  bool check = false;              ///< not used by the fit
  bool more = false;               ///< used, but not among the places errors are given for
  bool stored = false;             ///< pre-chilled; else a natural winter
  double weight = 1.0;             ///< years' worth; a third for a year its source calls unusual
  double observed = 0.0;           ///< serial day, weighted mean
  double plain_mean = 0.0;         ///< unweighted mean over the site's rows
  double sd = 7.0;                 ///< of year, window and place, for the fit
  std::vector<double> rows;        ///< the single dates
  std::vector<double> half_width;  ///< of their stated windows
  Place place;                     ///< nearest station, moved by 6 degC per km of height
  BloomPlanting planting;
  std::size_t season = 0;  ///< index into BloomData::normal
};

/// A forcing table's line: weeks of moist cold, then warmth, then days to flower.
struct ForcingTarget {
  std::string taxon, source;
  double cold_weeks = 0.0, cold_c = 0.0, then_c = 0.0, days_low = 0.0, days_high = 0.0;
  bool fitted = false;
};

struct BloomData {
  std::vector<BloomTarget> targets;
  std::vector<BloomSeason> normal, mild, cold;  ///< per target.season
  std::vector<Winter> air;
  std::vector<ForcingTarget> forcing;
};

/// The taxon that a label of the dates file stands for.
std::string taxon_of(const std::string& label, Event event);

BloomData read_bloom_data(const std::string& dates_csv, const std::string& forcing_csv);

/// Days from the end of cold to the first flowers.
double forced_days(const BloomParameters& kind, const ForcingTarget& target);

}  // namespace bulbwright::fit
