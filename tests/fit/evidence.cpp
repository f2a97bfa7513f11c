#include "evidence.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

#include <fmt/core.h>

#include "base/csv.hpp"
#include "climate/climate.hpp"
#include "climate/place_near.hpp"
#include "cold/pot_temperature.hpp"
#include "source_paths.hpp"

namespace bulbwright::fit {
namespace {

constexpr int season_year = 2026;
/// The first flower of an unnamed mixture is its earliest kind.
constexpr const char* earliest_tulip = "tulip-fosteriana";
constexpr double year_sd = 6.5, site_sd = 5.0;  // of a garden about its normals, days
constexpr double typical_years = 3.0;           // a date called typical counts as this many years
constexpr double row_sd = 5.0;                  // of a kind about its garden
constexpr double treatment_sd = 7.0;            // of a treatment's effect, days
constexpr double assumed_sd = 6.0;              // of unknown weeks in store

std::string slurp(const std::string& name) {
  std::ifstream in{fixture::source_path("tests/vectors/" + name)};
  if (!in) throw std::runtime_error{name};
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

Day in_season(const std::string& month_day, Hemisphere hemisphere) {
  const int month = std::stoi(month_day.substr(0, 2)), day = std::stoi(month_day.substr(3, 2));
  const int year = season_year + (hemisphere == Hemisphere::north && month < 7 ? 1 : 0);
  return Day{year, static_cast<unsigned>(month), static_cast<unsigned>(day)};
}

bool many_years(const std::string& years) {
  for (const char* word : {"typical", "usual", "mean", "advice", "several", "-"}) {
    if (years.find(word) != std::string::npos) return true;
  }
  return false;
}

struct Row {
  const CsvTable* table;
  const CsvRecord* record;
  std::string operator[](std::string_view name) const {
    return record->fields[table->column(name)];
  }
};

template <class Take>
void each_row(const std::string& file, Take take) {
  const CsvTable table = read_csv(slurp(file), file);
  for (const CsvRecord& record : table.records) take(Row{&table, &record});
}

class Reader {
 public:
  Evidence read() {
    each_row("garden_climate.csv", [&](const Row& row) {
      Place place;
      place.name = row["lat"] + " " + row["lon"];
      place.latitude = std::stod(row["lat"]);
      place.longitude = std::stod(row["lon"]);
      for (std::size_t m = 0; m < 12; ++m) {
        place.normals.tmin_c[m] = std::stod(row[fmt::format("tmin_{:02}", m + 1)]);
        place.normals.tmax_c[m] = std::stod(row[fmt::format("tmax_{:02}", m + 1)]);
      }
      climates_[row["lat"] + row["lon"] + row["elevation_m"]] = place;
    });
    each_row("bloom_dates.csv", [&](const Row& row) { published(row); });
    each_row("garden_dates.csv", [&](const Row& row) { garden(row); });
    each_row("prechilled_dates.csv", [&](const Row& row) { stored(row); });
    each_row("treatments.csv", [&](const Row& row) { treatment(row); });
    each_row("bloom_forcing.csv", [&](const Row& row) {
      evidence_.forcing.push_back({row["taxon"], row["source"], std::stod(row["cold_weeks"]),
                                   std::stod(row["cold_c"]), std::stod(row["then_c"]),
                                   std::stod(row["days_low"]), std::stod(row["days_high"]),
                                   row["use"] == "fit"});
    });
    return std::move(evidence_);
  }

 private:
  std::size_t ground(const Row& row, Exposure exposure) {
    const std::string at = row["lat"] + row["lon"] + row["elevation_m"];
    const std::string key = fmt::format("{} {}", at, static_cast<int>(exposure));
    const auto known = grounds_.find(key);
    if (known != grounds_.end()) return known->second;
    const auto climate = climates_.find(at);
    if (climate == climates_.end()) throw std::runtime_error{"no climate of " + at};
    const auto winters = winters_from_normals(climate->second, season_year);
    const auto felt = [&](const Winter& winter) {
      return bloom_season(pot_winter(winter, pot_thermal(example_pot()), exposure));
    };
    evidence_.grounds.push_back({felt(winters[0]), felt(winters[1]), felt(winters[2]), winters[0]});
    evidence_.ground_keys.push_back(key);
    return grounds_[key] = evidence_.grounds.size() - 1;
  }

  /// Of places that no table of climate in tests/vectors has.
  std::size_t anywhere(const Row& row) {
    static const StationTable stations = StationTable::builtin();
    static const PlaceCatalogue known = PlaceCatalogue::builtin();
    climates_[row["lat"] + row["lon"] + row["elevation_m"]] =
        place_near(stations, known.places(), {std::stod(row["lat"]), std::stod(row["lon"])},
                   std::stod(row["elevation_m"]));
    return ground(row, Exposure::plunged);
  }

  static void spread(Observation& o, const std::string& years, double weight) {
    const double n = std::max(0.3, many_years(years) ? std::max(typical_years, weight) : weight);
    o.garden_sd = std::hypot(year_sd / std::sqrt(n), site_sd);
    o.sd = std::hypot(row_sd, (o.high - o.low) / 2 / std::sqrt(3.0));
  }

  void published(const Row& row) {
    if (row["use"] == "none") return;
    Observation o;
    const Hemisphere side = std::stod(row["lat"]) < 0 ? Hemisphere::south : Hemisphere::north;
    const std::string weeks = row["stored_weeks"], day = row["planted"];
    o.check = row["use"] == "check";
    o.more = row["use"] == "more";
    o.kept = row["use"] == "stored" || (o.check && !weeks.empty()) ? Kept::stored : Kept::published;
    o.place = row["site"];
    o.garden = o.place + " " + row["use"];
    o.label = row["label"];
    o.event = row["event"] == "peak" ? Event::peak : Event::first;
    o.taxon = taxon_of(o.label, o.event);
    if (o.kept == Kept::stored && o.label == "tulip-any" && o.event == Event::first) {
      o.taxon = earliest_tulip;
    }
    o.named = o.taxon == o.label;
    o.low = in_season(row["date_low"], side).serial();
    o.high = in_season(row["date_high"], side).serial();
    spread(o, row["years"], std::stod(row["weight"]));
    if (std::stod(row["weight"]) < 1.0) o.sd *= 1.4;
    o.ground = ground(row, Exposure::plunged);
    o.planting = established(side);
    if (!day.empty()) planted(o, in_season(day, side), weeks.empty() ? 0.0 : std::stod(weeks));
    evidence_.rows.push_back(o);
  }

  void garden(const Row& row) {
    const std::string event = row["event"];
    if (event == "last") return;
    Observation o;
    const Hemisphere side = std::stod(row["lat"]) < 0 ? Hemisphere::south : Hemisphere::north;
    o.kept = Kept::gardens;
    o.place = row["place"];
    o.garden = o.place + row["lat"] + row["lon"] + " " + row["years"];
    o.label = row["kind"];
    o.event = event == "first" ? Event::first : Event::peak;
    o.taxon = taxon_of(o.label, o.event);
    if (o.label == "tulip-any" && o.event == Event::first) o.taxon = earliest_tulip;
    o.other = o.taxon;
    o.named = o.taxon == o.label;
    // Their flowers are made in a warm store, not in cooling ground: planted dry they are quicker.
    if (o.taxon == "narcissus-tazetta-tender") o.check = true;
    if (!o.named) {
      if (event == "first" && o.label != "tulip-any") return;
      const bool tulip = o.label == "tulip-any", crocus = o.label == "crocus-any";
      o.other = tulip ? "tulip-single-late" : crocus ? "crocus-large" : "narcissus-poeticus";
      if (event == "open") {
        o.taxon = tulip ? earliest_tulip : crocus ? "crocus-species" : "narcissus-miniature";
      }
    }
    o.says = event == "open" ? Says::open : event == "period" ? Says::period : Says::date;
    o.low = in_season(row["from"], side).serial();
    o.high = in_season(row["to"], side).serial();
    if (o.high < o.low) o.high = o.low;
    spread(o, row["years"], 1.0);
    if (!o.named || o.says == Says::period) o.sd *= 1.5;
    const bool pot = row["setting"] == "pot";
    o.ground = ground(row, pot ? Exposure::open : Exposure::plunged);
    o.planting = established(side);
    if (pot) {
      planted(o, side == Hemisphere::north ? Day{season_year, 11, 1} : Day{season_year, 5, 1}, 0.0);
    }
    evidence_.rows.push_back(o);
  }

  void stored(const Row& row) {
    Observation o;
    const Hemisphere side = std::stod(row["lat"]) < 0 ? Hemisphere::south : Hemisphere::north;
    o.kept = Kept::stored;
    o.place = row["place"];
    o.label = row["kind"];
    o.event = row["event"] == "first" ? Event::first : Event::peak;
    o.taxon = taxon_of(o.label, o.event);
    if (o.label == "tulip-any" && o.event == Event::first) o.taxon = earliest_tulip;
    o.other = o.taxon;
    o.named = o.taxon == o.label;
    if (row["event"] == "open") {
      o.says = Says::open;
      if (!o.named) {
        o.taxon = earliest_tulip;
        o.other = "tulip-single-late";
      }
    }
    o.low = in_season(row["from"], side).serial();
    o.high = in_season(row["to"], side).serial();
    const Day from = in_season(row["planted_from"], side), to = in_season(row["planted_to"], side);
    spread(o, row["years"], 1.0);
    o.sd = std::hypot(o.sd, (to - from) / 4.0);
    if (row["stored_origin"] == "assumed") o.sd = std::hypot(o.sd, assumed_sd);
    o.garden = o.place + " stored " + row["years"];
    o.ground = ground(row, row["setting"] == "pot" ? Exposure::open : Exposure::plunged);
    planted(o, from + (to - from) / 2, std::stod(row["stored_weeks"]));
    evidence_.rows.push_back(o);
  }

  void treatment(const Row& row) {
    Observation o;
    const Hemisphere side = std::stod(row["lat"]) < 0 ? Hemisphere::south : Hemisphere::north;
    o.kept = Kept::treatments;
    o.place = row["place"] + " treatment";
    o.label = o.taxon = row["taxon"];
    o.named = true;
    o.check = row["use"] != "fit";
    o.sd = treatment_sd;
    o.ground = anywhere(row);
    o.low = std::stod(row["low"]);
    o.high = std::stod(row["high"]);
    planted(o, in_season(row["a_planted"], side), std::stod(row["a_weeks"]));
    o.planting.deeper_cm = std::stod(row["a_deeper_cm"]);
    if (row["says"] == "shift") {
      o.says = Says::shift;
      o.before = o.planting;
      planted(o, in_season(row["b_planted"], side), std::stod(row["b_weeks"]));
      o.planting.deeper_cm = std::stod(row["b_deeper_cm"]);
    } else {
      o.low += o.planting.planted.serial();
      o.high += o.planting.planted.serial();
    }
    evidence_.rows.push_back(o);
  }

  /// A plant that has stood there for years, or was planted in early autumn.
  static BloomPlanting established(Hemisphere side) {
    BloomPlanting planting;
    planting.planted =
        side == Hemisphere::north ? Day{season_year, 10, 15} : Day{season_year, 4, 15};
    return planting;
  }

  static void planted(Observation& o, Day day, double stored_weeks) {
    o.planting.planted = day;
    o.planting.state = BulbState::dry;
    o.planting.stored = Weeks{stored_weeks};
    o.planting.cold = cold_already(o.planting.stored);
  }

  Evidence evidence_;
  std::map<std::string, Place> climates_;
  std::map<std::string, std::size_t> grounds_;
};

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

Evidence read_evidence() {
  return Reader{}.read();
}

double predicted(const BloomParameters& kind, const BloomSeason& season,
                 const BloomPlanting& planting, Event event) {
  const Wave wave = predict_wave(kind, season, planting);
  if (!wave.flowers) return season.last().serial();
  return event == Event::first ? wave.first_exact : wave.peak_exact;
}

double miss(const Observation& row, const Wave& wave, const Wave& other,
            const BloomSeason& season) {
  const double never = season.last().serial();
  const double first = wave.flowers ? wave.first_exact : never;
  const double peak = wave.flowers ? wave.peak_exact : never;
  switch (row.says) {
    case Says::date:
      return (row.event == Event::first ? first : peak) - row.middle();
    case Says::after:
      return std::min(0.0, first - (other.flowers ? other.first_exact : never) - row.low);
    case Says::period:
      return std::max(0.0, peak - row.high) + std::min(0.0, peak - row.low);
    case Says::shift: {
      const double days = first - (other.flowers ? other.first_exact : never);
      return std::max(0.0, days - row.high) + std::min(0.0, days - row.low);
    }
    case Says::open:
      break;
  }
  const double last = other.flowers ? other.last.serial() : never;
  return std::max(0.0, first - row.high) + std::min(0.0, last - row.low);
}

double miss(const Observation& row, const BloomParameters& kind, const BloomParameters& other,
            const BloomSeason& season) {
  return miss(row, predict_wave(kind, season, row.planting),
              predict_wave(other, season, row.before.value_or(row.planting)), season);
}

double forced_days(const BloomParameters& kind, const ForcingTarget& target) {
  const Day start{2027, 1, 15};
  const BloomSeason indoors = indoor_season(start, 200, Celsius{target.then_c});
  BloomPlanting planting{start, {}, Weeks{0.0}, Weeks{0.0}};
  planting.cold = after_storage({}, Weeks{target.cold_weeks}, Celsius{target.cold_c});
  return predict_wave(kind, indoors, planting).first_exact - start.serial();
}

}  // namespace bulbwright::fit
