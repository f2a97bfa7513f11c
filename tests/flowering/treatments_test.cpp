// What published trials and growers say that refrigeration, planting day and depth do outdoors
// (tests/vectors/treatments.csv, a source in each row; what had to be assumed stands beside it).
// Rows with use=fit taught the table (docs/bloom_model.md), the others did not; the flowering days
// of Argentina and Houston are among its refrigerated cases.
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "base/csv.hpp"
#include "climate/place_near.hpp"
#include "flowering/pot_season_fixture.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

constexpr double four_in_five = 1.2816, slack_days = 5.0;

Day in_season(const std::string& month_day, Hemisphere side) {
  const int month = std::stoi(month_day.substr(0, 2)), day = std::stoi(month_day.substr(3, 2));
  const int year = 2026 + (side == Hemisphere::north && month < 7 ? 1 : 0);
  return Day{year, static_cast<unsigned>(month), static_cast<unsigned>(day)};
}

struct Planted {
  WaveForecast forecast;
  Day on;
  double weeks = 0.0;

  [[nodiscard]] double first() const { return forecast.wave.first_exact; }
};

Planted planted(const BloomParameters& kind, const PotSeason& season, const std::string& on,
                const std::string& weeks, const std::string& deeper_cm) {
  BloomPlanting planting;
  planting.planted = in_season(on, season.hemisphere);
  planting.state = BulbState::dry;
  planting.stored = Weeks{std::stod(weeks)};
  planting.cold = cold_already(planting.stored);
  planting.deeper_cm = std::stod(deeper_cm);
  const auto wave = [&](std::size_t winter) {
    return predict_wave(kind, season.bloom[winter], planting);
  };
  return {forecast_of_three(kind, wave(season.normal), wave(season.mild), wave(season.cold)),
          planting.planted, planting.stored.value()};
}

}  // namespace

TEST_CASE("treatments outdoors do what is published", "[bloom][published]") {
  const std::string path = fixture::source_path("tests/vectors/treatments.csv");
  std::ifstream stream{path, std::ios::binary};
  std::ostringstream read;
  read << stream.rdbuf();
  const std::string text = read.str();  // the table looks into it
  const CsvTable treatments = read_csv(text, path);
  const StationTable stations = StationTable::builtin();
  const PlaceCatalogue known = PlaceCatalogue::builtin();
  const BloomTable table = BloomTable::builtin();
  int rows = 0;
  for (const CsvRecord& row : treatments.records) {
    ++rows;
    const auto field = [&](const char* name) { return row.fields[treatments.column(name)]; };
    const auto number = [&](const char* name) { return std::stod(field(name)); };
    const Place place =
        place_near(stations, known.places(), {number("lat"), number("lon")}, number("elevation_m"));
    const PotSeason season =
        pot_season(season_at_place(place, 2026, Exposure::plunged), pot_thermal(example_pot()));
    const BloomParameters kind = table.of(fixture::catalogue().at(field("taxon")));
    const Planted a =
        planted(kind, season, field("a_planted"), field("a_weeks"), field("a_deeper_cm"));
    double days = a.first() - a.on.serial();
    double reach = a.forecast.wave.first - a.forecast.earliest_first;
    if (field("says") == "shift") {
      const Planted b =
          planted(kind, season, field("b_planted"), field("b_weeks"), field("b_deeper_cm"));
      days = b.first() - a.first();
      // One place, one winter: what is left is what storage and depth are not known to do.
      const double stored = a.weeks > 0.0 || b.weeks > 0.0 ? kind.stored_spread_days : 0.0;
      const double depth = depth_doubt * (a.forecast.wave.depth_days + b.forecast.wave.depth_days);
      reach = four_in_five * std::hypot(stored, depth);
    }
    INFO(field("taxon") << ", " << field("place") << ": " << field("statement") << "; here " << days
                        << " +- " << reach);
    CHECK(days >= number("low") - reach - slack_days);
    CHECK(days <= number("high") + reach + slack_days);
  }
  CHECK(rows == 26);
}
