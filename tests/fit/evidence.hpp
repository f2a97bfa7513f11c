#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "climate/place.hpp"
#include "flowering/bloom.hpp"

namespace bulbwright::fit {

enum class Event { first, peak };

/// What one row of the evidence says.
enum class Says {
  date,    ///< the event lies in low..high
  open,    ///< a flower was open on some day of low..high
  period,  ///< months: the peak lies in low..high
  after,   ///< `taxon` opens at least `low` days after `before_taxon`, in the same garden
  shift,   ///< it opens low..high days after the same kind planted as `before`
};

/// Which file a row is of.
enum class Kept { gardens, published, stored, treatments };

/// A winter at one place, seen by plants in one exposure.
struct Ground {
  BloomSeason normal, mild, cold;
  Winter air;
};

/// One statement about one kind, or two, at one place.
struct Observation {
  Says says = Says::date;
  Kept kept = Kept::gardens;
  std::string place;   ///< left out whole
  std::string garden;  ///< place and year: its rows are late or early together; empty: pseudo
  std::string label;   ///< as the row names the kind: "tulip-any"
  std::string taxon;   ///< that it is judged by
  std::string other;   ///< `after`: what flowers before; `open`: the kind that closes last
  Event event = Event::first;
  double low = 0.0, high = 0.0;  ///< serial days, or days
  double sd = 5.0;               ///< of the row about its garden, days
  double garden_sd = 8.0;        ///< of the garden and year about the normals, days
  bool named = false;            ///< the row names the kind itself
  bool check = false;            ///< never used by the fit
  bool more = false;             ///< published file: added daffodils
  std::size_t ground = 0;
  BloomPlanting planting;
  std::optional<BloomPlanting> before;  ///< `shift`

  [[nodiscard]] double middle() const { return (low + high) / 2; }
  [[nodiscard]] bool dated() const { return says == Says::date && high - low <= 15.0; }
};

/// A forcing table's line: weeks of moist cold, then warmth, then days to flower.
struct ForcingTarget {
  std::string taxon, source;
  double cold_weeks = 0.0, cold_c = 0.0, then_c = 0.0, days_low = 0.0, days_high = 0.0;
  bool fitted = false;
};

struct Evidence {
  std::vector<Observation> rows;
  std::vector<Ground> grounds;
  std::vector<ForcingTarget> forcing;
  std::vector<std::string> ground_keys;
};

/// The taxon that a label stands for.
std::string taxon_of(const std::string& label, Event event);

/// Reads tests/vectors: bloom_dates, garden_dates, prechilled_dates, treatments, garden_climate,
/// bloom_forcing.
Evidence read_evidence();

/// Days from the end of cold to the first flowers.
double forced_days(const BloomParameters& kind, const ForcingTarget& target);

/// The predicted day (serial) of an event.
double predicted(const BloomParameters& kind, const BloomSeason& season,
                 const BloomPlanting& planting, Event event);

/// Days by which a row is missed: negative too early, 0 within what it says. Of a date the
/// prediction less the middle.
double miss(const Observation& row, const BloomParameters& kind, const BloomParameters& other,
            const BloomSeason& season);
/// The same from the waves of both.
double miss(const Observation& row, const Wave& wave, const Wave& other, const BloomSeason& season);

}  // namespace bulbwright::fit
