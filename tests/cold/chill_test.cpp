#include "cold/chill.hpp"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "climate/place.hpp"
#include "cold/cold_answer.hpp"
#include "cold/pot_temperature.hpp"

using namespace bulbwright;

namespace {

/// The mean over a normal distribution by brute force: the middle of 20,000 slices to six sigma.
template <class Measure>
double brute_mean(double t_c, double sd_k, Measure measure) {
  double sum = 0.0, weight = 0.0;
  for (int i = 0; i < 20'000; ++i) {
    const double z = -6.0 + 12.0 * (i + 0.5) / 20'000;
    const double density = std::exp(-z * z / 2.0);
    sum += density * measure(t_c + sd_k * z);
    weight += density;
  }
  return sum / weight;
}

}  // namespace

TEST_CASE("hours of a spread of days are worth what brute force says", "[chill][oracle]") {
  for (const double sd : {0.5, 2.0, 5.0}) {
    for (double t = -8.0; t <= 24.0; t += 0.7) {
      INFO(t << " " << sd);
      CHECK(mean_chill_hour(t, sd) == Approx(brute_mean(t, sd, [](double c) {
                                        return is_chill_hour(c) ? 1.0 : 0.0;
                                      })).margin(1e-3));
      CHECK(mean_utah_unit(t, sd) == Approx(brute_mean(t, sd, utah_unit)).margin(1e-3));
    }
  }
  CHECK(mean_chill_hour(3.0, 0.0) == 1.0);
  CHECK(mean_utah_unit(17.0, 0.0) == -0.5);
}

// Hours of 0 to 7.2 degC from October to March, from memory of published chill maps: Houston 400 to
// 600, New Orleans 350 to 400; Orlando a few. Smooth normals alone gave 43, 190 and none.
TEST_CASE("normals of warm winters have hours of chill", "[chill][published]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  const auto hours = [&](const char* name) {
    const ColdReport report = cold_answer(places.find(name), {example_pot(), Exposure::open, {}});
    return report.winters.front().total.hours_0_7;
  };
  CHECK(hours("Houston") == Approx(450.0).margin(150.0));
  CHECK(hours("New Orleans") == Approx(375.0).margin(75.0));
  CHECK(hours("Orlando") > 20.0);
}

TEST_CASE("no month of cold is below nothing, and months add up", "[chill][law]") {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  for (const Place& place : places.places()) {
    const ColdReport report = cold_answer(place, {example_pot(), Exposure::open, {}});
    for (const ColdTable& winter : report.winters) {
      INFO(place.name << " " << winter.name);
      double sum = 0.0;
      for (const ColdMonth& month : winter.months) {
        CHECK(month.figures.cold_weeks >= -1e-9);
        sum += month.figures.cold_weeks;
      }
      CHECK(sum == Approx(winter.total.cold_weeks).margin(1e-6));
    }
  }
}
