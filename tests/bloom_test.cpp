#include "bulbwright/bloom.hpp"

#include <array>
#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "bulbwright/catalogue.hpp"
#include "bulbwright/climate.hpp"
#include "bulbwright/error.hpp"
#include "bulbwright/place.hpp"

using namespace bulbwright;

namespace {

BloomParameters parameters(const std::string& id) {
  static const Catalogue catalogue = builtin_catalogue();
  static const BloomTable table = BloomTable::builtin();
  return table.of(catalogue.at(id));
}

const Place& place(const std::string& name) {
  static const PlaceCatalogue places = PlaceCatalogue::builtin();
  return places.find(name);
}

BloomSeason plunged(const Place& at, int season = 2026) {
  return bloom_season(
      pot_winter(winters_from_normals(at, season)[0], example_pot_thermal(), Exposure::plunged));
}

BloomPlanting planted(Day day, double stored_weeks = 0.0) {
  return {day, cold_already(Weeks{stored_weeks}), Weeks{stored_weeks}, Weeks{0.0}};
}

/// The place half a year and the equator away: months moved by six, latitude turned.
Place mirrored(Place at) {
  MonthlyNormals moved;
  for (std::size_t m = 0; m < 12; ++m) {
    moved.tmin_c[m] = at.normals.tmin_c[(m + 6) % 12];
    moved.tmax_c[m] = at.normals.tmax_c[(m + 6) % 12];
  }
  at.normals = moved;
  at.latitude = -at.latitude;
  return at;
}

const std::vector<std::string> stations{"Newport News", "Saskatoon", "Arundel", "Atlanta",
                                        "Anchorage",    "San Diego", "Wynyard", "De Bilt"};

Day mid_autumn(const Place& at) {
  return hemisphere_of(at) == Hemisphere::north ? Day{2026, 10, 15} : Day{2026, 4, 15};
}

}  // namespace

// Baskerville and Emin 1969, Ecology 50: the two closed forms of the sine, and the half below it.
TEST_CASE("degree-days of a sine meet their closed forms", "[bloom][published]") {
  CHECK(degree_days(4.0, 12.0, 0.0) == Approx(8.0));
  CHECK(degree_days(-9.0, -1.0, 0.0) == 0.0);
  CHECK(degree_days(-5.0, 5.0, 0.0) == Approx(5.0 / 3.14159265358979));
  CHECK(degree_days(0.0, 10.0, 0.0) == Approx(5.0));
}

TEST_CASE("every taxon has bloom parameters and flowers in spring by the end of its season",
          "[bloom]") {
  const Catalogue catalogue = builtin_catalogue();
  const BloomTable table = BloomTable::builtin();
  const BloomSeason season = plunged(place("Newport News"));
  for (const Taxon& taxon : catalogue.taxa()) {
    INFO(taxon.id);
    const BloomParameters kind = table.of(taxon);
    CHECK(kind.heat_sum > 0.0);
    const Wave wave = predict_wave(kind, season, planted(Day{2026, 10, 15}));
    CHECK(wave.flowers);
    CHECK(wave.shoots <= wave.first);
    CHECK(wave.first <= wave.peak);
    CHECK(wave.peak <= wave.last);
    CHECK(wave.last - wave.first < 80);
  }
}

TEST_CASE("the same climate half a year away flowers half a year away", "[bloom][law]") {
  for (const std::string& name : stations) {
    const Place& north = place(name);
    if (hemisphere_of(north) != Hemisphere::north) continue;
    const Place south = mirrored(north);
    for (const std::string id : {"tulip-triumph", "narcissus-large-cupped", "crocus-large"}) {
      INFO(name << ' ' << id);
      const Wave a = predict_wave(parameters(id), plunged(north), planted(Day{2026, 10, 15}));
      const Wave b = predict_wave(parameters(id), plunged(south), planted(Day{2026, 4, 15}));
      // Months differ in length by up to three days, and the earth runs faster in January.
      CHECK(std::abs((a.first - Day{2026, 10, 15}) - (b.first - Day{2026, 4, 15})) <= 6);
    }
  }
}

TEST_CASE("warmth never delays and a week more storage never does", "[bloom][law]") {
  for (const std::string& name : stations) {
    const Place& at = place(name);
    const BloomSeason season = plunged(at);
    const Day day = mid_autumn(at) + 75;
    for (const std::string id : {"tulip-triumph", "hyacinth", "narcissus-large-cupped"}) {
      const BloomParameters kind = parameters(id);
      double before = 1e9;
      for (double weeks = 0.0; weeks <= 16.0; weeks += 0.25) {
        INFO(name << ' ' << id << ' ' << weeks);
        const double now = predict_wave(kind, season, planted(day, weeks)).first_exact;
        if (now == 0.0) continue;
        CHECK(now <= before + 1e-6);
        before = now;
      }
    }
  }
}

TEST_CASE("a table that is wrong says where", "[bloom][input]") {
  const std::string head = "taxon,quantity,value,unit,origin,source\n";
  CHECK_THROWS_AS(BloomTable::parse(head + "a,heat_some,3,,,\n", "t.csv"), InputError);
  CHECK_THROWS_AS(BloomTable::parse(head + "a,heat_sum,x,,,\n", "t.csv"), InputError);
  CHECK_THROWS_AS(BloomTable::parse(head + "a,heat_sum,-1,,,\n", "t.csv"), InputError);
  CHECK_THROWS_AS(BloomTable::parse(head + "a,heat_sum,3,,,\na,heat_sum,4,,,\n", "t.csv"),
                  InputError);
}
