#include "bloom_records.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "base/csv.hpp"
#include "climate/climate.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright::fit {
namespace {

constexpr int season_year = 2026;
constexpr double lapse_c_per_m = 0.006;
// Standard deviations in days: one year about its normals, and one garden about its station.
constexpr double year_sd = 6.5, site_sd = 6.0;
constexpr double typical_years = 3.0;  // a date called typical counts as this many years

int number(const std::string& text, std::size_t from) {
  return std::stoi(text.substr(from, 2));
}

/// The day of the season's spring that has this month and day.
Day in_season(const std::string& month_day, Hemisphere hemisphere) {
  const int month = number(month_day, 0), day = number(month_day, 3);
  const int year = season_year + (hemisphere == Hemisphere::north && month < 7 ? 1 : 0);
  return Day{year, static_cast<unsigned>(month), static_cast<unsigned>(day)};
}

Place matched(const PlaceCatalogue& places, double lat, double lon, double elevation) {
  Place place = *places.nearest(lat, lon, 1).at(0).place;
  const double shift = -lapse_c_per_m * (elevation - place.elevation_m.value_or(elevation));
  for (double& t : place.normals.tmin_c) t += shift;
  for (double& t : place.normals.tmax_c) t += shift;
  place.latitude = lat;
  return place;
}

bool many_years(const std::string& years) {
  return years.find("typical") != std::string::npos || years.find('-') != std::string::npos ||
         years.find("mean") != std::string::npos || years.find("advice") != std::string::npos;
}

void add_seasons(BloomData& data, BloomTarget& target) {
  const std::array<Winter, 3> winters = winters_from_normals(target.place, season_year);
  target.season = data.normal.size();
  data.air.push_back(winters[0]);
  std::vector<BloomSeason>* const lists[] = {&data.normal, &data.mild, &data.cold};
  for (std::size_t i = 0; i < 3; ++i) {
    lists[i]->push_back(
        bloom_season(pot_winter(winters[i], example_pot_thermal(), Exposure::plunged)));
  }
}

}  // namespace

std::string taxon_of(const std::string& label, Event event) {
  static const std::map<std::string, std::string> known{
      {"tulip-early", "tulip-fosteriana"},
      {"tulip-mid", "tulip-triumph"},
      {"tulip-late", "tulip-single-late"},
      {"narcissus-early", "narcissus-cyclamineus"},
      {"narcissus-mid", "narcissus-large-cupped"},
      {"narcissus-any", "narcissus-large-cupped"},
      {"narcissus-late", "narcissus-poeticus"},
      {"crocus-any", "crocus-large"},
      {"crocus-snow", "crocus-species"},
      {"scilla", "scilla-siberica"},
      {"allium", "allium-large"}};
  if (label == "tulip-any") {
    return event == Event::peak ? "tulip-triumph" : "tulip-single-early";
  }
  const auto found = known.find(label);
  return found == known.end() ? label : found->second;
}

BloomData read_bloom_data(const std::string& dates_csv, const std::string& forcing_csv) {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const CsvTable dates = read_csv(dates_csv, "bloom_dates.csv");
  BloomData data;
  std::map<std::tuple<std::string, std::string, std::string, std::string>, std::size_t> index;
  std::map<std::size_t, bool> typical;
  for (const CsvRecord& r : dates.records) {
    const auto field = [&](std::string_view name) { return r.fields[dates.column(name)]; };
    const std::string use = field("use");
    if (use == "none") continue;
    const auto key = std::tuple{field("site"), field("label"), field("event"), use};
    const double lat = std::stod(field("lat"));
    const Hemisphere side = lat < 0 ? Hemisphere::south : Hemisphere::north;
    auto found = index.find(key);
    if (found == index.end()) {
      BloomTarget target;
      target.site = field("site");
      target.label = field("label");
      target.event = field("event") == "peak" ? Event::peak : Event::first;
      target.taxon = taxon_of(target.label, target.event);
      target.check = use == "check";
      target.more = use == "more";
      target.stored = use == "stored" || (target.check && !field("stored_weeks").empty());
      target.weight = 0.0;
      const std::string elevation = field("elevation_m");
      target.place = matched(places, lat, std::stod(field("lon")),
                             elevation.empty() ? 0.0 : std::stod(elevation));
      const std::string planted = field("planted");
      target.planting.planted = in_season(!planted.empty()            ? planted
                                          : side == Hemisphere::north ? "10-15"
                                                                      : "04-15",
                                          side);
      const std::string stored = field("stored_weeks");
      if (!planted.empty()) target.planting.rooting_days = dry_rooting_days;
      target.planting.stored = Weeks{stored.empty() ? 0.0 : std::stod(stored)};
      target.planting.cold = cold_already(target.planting.stored);
      add_seasons(data, target);
      found = index.emplace(key, data.targets.size()).first;
      data.targets.push_back(std::move(target));
    }
    BloomTarget& target = data.targets[found->second];
    const double low = in_season(field("date_low"), side).serial();
    const double high = in_season(field("date_high"), side).serial();
    const double w = std::stod(field("weight")), middle = (low + high) / 2;
    target.rows.push_back(middle);
    target.half_width.push_back((high - low) / 2);
    target.observed = (target.observed * target.weight + middle * w) / (target.weight + w);
    target.weight += w;
    typical[found->second] = typical[found->second] || many_years(field("years"));
  }
  for (std::size_t i = 0; i < data.targets.size(); ++i) {
    BloomTarget& t = data.targets[i];
    double half = 0.0;
    for (std::size_t j = 0; j < t.rows.size(); ++j) {
      half += t.half_width[j] / static_cast<double>(t.rows.size());
      t.plain_mean += t.rows[j] / static_cast<double>(t.rows.size());
    }
    const double years =
        typical[i] ? std::max(typical_years * std::min(1.0, t.weight), t.weight) : t.weight;
    t.sd =
        std::sqrt(year_sd * year_sd / std::max(years, 0.3) + half * half / 3 + site_sd * site_sd);
  }
  const CsvTable forcing = read_csv(forcing_csv, "bloom_forcing.csv");
  for (const CsvRecord& r : forcing.records) {
    const auto field = [&](std::string_view name) { return r.fields[forcing.column(name)]; };
    data.forcing.push_back({field("taxon"), field("source"), std::stod(field("cold_weeks")),
                            std::stod(field("cold_c")), std::stod(field("then_c")),
                            std::stod(field("days_low")), std::stod(field("days_high")),
                            field("use") == "fit"});
  }
  return data;
}

double forced_days(const BloomParameters& kind, const ForcingTarget& target) {
  const Day start{2027, 1, 15};
  const BloomSeason indoors = indoor_season(start, 200, Celsius{target.then_c});
  BloomPlanting planting{start, {}, Weeks{0.0}, Weeks{0.0}};
  planting.cold = after_storage({}, Weeks{target.cold_weeks}, Celsius{target.cold_c});
  return predict_wave(kind, indoors, planting).first_exact - start.serial();
}

}  // namespace bulbwright::fit
