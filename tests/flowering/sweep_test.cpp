// With the weeks in store given, planting later never makes a flower earlier, nor do fewer weeks.
#include <map>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"
#include "climate/climate.hpp"
#include "climate/place.hpp"
#include "flowering/timing.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue known = builtin_catalogue();
  return known;
}

/// From Alaska to the tropics, both hemispheres.
const std::vector<std::string> stations{"Newport News", "Saskatoon", "Arundel",     "Atlanta",
                                        "Anchorage",    "San Diego", "Wynyard",     "De Bilt",
                                        "Singapore",    "Chicago",   "Los Angeles", "New Orleans"};

}  // namespace

TEST_CASE("later planting or fewer weeks never bring a flower forward", "[bloom][law]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const BloomTable table = BloomTable::builtin();
  int flowers = 0;
  for (const std::string& name : stations) {
    const Place& place = places.find(name);
    const PotSeason season =
        pot_season(season_at_place(place, 2026, Exposure::open), pot_thermal(example_pot()));
    const Day start = earliest_bulbs(2026, season.hemisphere);
    for (const Taxon& taxon : catalogue().taxa()) {
      const BloomParameters kind = table.of(taxon);
      std::map<int, double> last_row;  // by planting day, of fewer weeks
      for (const double weeks : {0.0, 1.0, 4.0, 8.0, 12.0}) {
        double before = 0.0;
        for (int day = 0; day <= 140; day += 10) {
          BloomPlanting planting;
          planting.planted = start + day;
          planting.stored = Weeks{weeks};
          planting.cold = cold_already(planting.stored);
          planting.state = BulbState::dry;
          const Wave wave = predict_wave(kind, season.bloom[season.normal], planting);
          if (wave.blasted) continue;  // no flower to be early or late
          const double first = wave.flowers ? wave.first_exact : 1e9;
          flowers += wave.flowers ? 1 : 0;
          INFO(name << ' ' << taxon.id << ' ' << weeks << " weeks, planted "
                    << to_iso(planting.planted));
          CHECK(first >= before - 1e-6);
          before = first;
          const auto fewer = last_row.find(day);
          if (fewer != last_row.end()) CHECK(first <= fewer->second + 1e-6);
          last_row[day] = first;
        }
      }
    }
  }
  CHECK(flowers > 20'000);
}

TEST_CASE("the plan's own waves keep to the same law", "[bloom][timing][law]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const BloomTable table = BloomTable::builtin();
  for (const std::string name : {"Newport News", "San Diego", "Wynyard"}) {
    const PotSeason season = pot_season(season_at_place(places.find(name), 2026, Exposure::open),
                                        pot_thermal(example_pot()));
    for (const char* id : {"tulip-triumph", "galanthus", "narcissus-trumpet", "crocus-large",
                           "narcissus-tazetta-tender", "hyacinth"}) {
      TimedKind kind;
      kind.ask.taxon = &catalogue().at(id);
      kind.ask.available = earliest_bulbs(2026, season.hemisphere);
      kind.bloom = table.of(*kind.ask.taxon);
      for (const double weeks : {0.0, 6.0}) {
        Day before = kind.ask.available;
        for (int day = 20; day <= 130; day += 22) {
          const KindTiming timing = time_kind(kind, season, kind.ask.available + day, weeks);
          if (!timing.wave.flowers) continue;
          INFO(name << ' ' << id << ' ' << weeks << ' ' << day);
          CHECK(timing.wave.first >= before);
          before = timing.wave.first;
        }
      }
    }
  }
}
