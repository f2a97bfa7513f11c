#include "cold/pot_temperature.hpp"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "climate/hourly_temperature.hpp"
#include "cold/hard_frost.hpp"

using namespace bulbwright;

namespace {

Winter swinging_winter(double mean_c, int days) {
  Winter winter{"", 45.0, Day{2026, 10, 1}, {}, {}};
  winter.days.assign(static_cast<std::size_t>(days), DayExtremes{mean_c - 5, mean_c + 5, false});
  for (int h = 0; h < 24 * days; ++h) {
    winter.hours.push_back(mean_c + 5 * std::sin(2 * std::numbers::pi * h / 24));
  }
  return winter;
}

}  // namespace

// The analytic answer of a first-order lag to a sinusoid: 1/sqrt(1 + (2 pi tau/P)^2). Hourly means
// of straight-line air flatten the swing by less than 2 %.
TEST_CASE("a pot damps the day's swing as the analytic solution says",
          "[pot_temperature][oracle]") {
  for (const Exposure exposure : {Exposure::open, Exposure::plunged}) {
    const PotWinter pot =
        pot_winter(swinging_winter(8.0, 30), pot_thermal(example_pot()), exposure);
    const PotDay& day = pot.days.back();
    const double left = lag_amplitude(pot.tau_hours, 24.0);
    CHECK((day.max_c - day.min_c) / 10.0 == Approx(left).epsilon(0.02));
    CHECK(day.mean_c == Approx(8.0).margin(1e-6));
  }
}

// Damping depth about 0.10 m for the daily wave in moist soil: e^(-0.15/0.10) = 0.22 at 15 cm.
TEST_CASE("a plunged pot swings like soil at 15 cm", "[pot_temperature]") {
  const double tau = effect_of(Exposure::plunged).least_tau_hours;
  CHECK(lag_amplitude(tau, 24.0) == Approx(std::exp(-1.5)).margin(0.003));
}

TEST_CASE("the mean of the mix follows the air whatever the pot", "[pot_temperature][law]") {
  for (const double litres : {1.0, 3.0, 12.0, 32.0, 200.0}) {
    PotThermal pot;
    pot.volume = Litres{litres};
    pot.cooling_area_m2 = 0.05 * std::pow(litres, 2.0 / 3.0);
    const PotWinter winter = pot_winter(swinging_winter(6.0, 60), pot, Exposure::open);
    CHECK(winter.days.back().mean_c == Approx(6.0).margin(0.01));
  }
}

TEST_CASE("exposures move the mean as stated", "[pot_temperature]") {
  const auto mean = [](Exposure exposure) {
    return pot_winter(swinging_winter(8.0, 30), pot_thermal(example_pot()), exposure)
        .days.back()
        .mean_c;
  };
  CHECK(mean(Exposure::warm_wall) - mean(Exposure::open) == Approx(1.5).margin(0.01));
  CHECK(mean(Exposure::sheltered) - mean(Exposure::open) == Approx(0.25).margin(0.01));
}

// A 32 l pot at 0 degC in air of -5 degC loses h A 5 K = 27 W; half its volume is water, 334 MJ/m3:
// 5.3 MJ, which is 55 hours at that rate, longer through the mix (computed by hand).
TEST_CASE("freezing a pot takes days, and thawing too", "[pot_temperature]") {
  Winter winter{"", 45.0, Day{2026, 12, 1}, {}, {}};
  const auto stretch = [&](double t_c, int days) {
    winter.days.insert(winter.days.end(), static_cast<std::size_t>(days), {t_c, t_c, false});
    winter.hours.insert(winter.hours.end(), static_cast<std::size_t>(24 * days), t_c);
  };
  stretch(1.0, 3);
  stretch(-5.0, 12);
  stretch(5.0, 12);
  const PotWinter pot = pot_winter(winter, pot_thermal(example_pot()), Exposure::open);
  int frozen_through = 0;
  while (pot.days[static_cast<std::size_t>(frozen_through)].frozen_share < 1.0) ++frozen_through;
  CHECK(frozen_through - 3 >= 3);
  CHECK(frozen_through - 3 <= 8);
  CHECK(pot.days[4].min_c == 0.0);
  CHECK(pot.days[14].mean_c == Approx(-5.0).margin(0.3));
  CHECK(pot.days.back().frozen_share == 0.0);
  CHECK(pot.days.back().mean_c == Approx(5.0).margin(0.3));
}

TEST_CASE("a hard frost reaches the roots of a pot in a cold place only", "[pot_temperature]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  const auto lowest_at = [&](const char* name, Exposure exposure) {
    return lowest_in_frost(frost_climate(catalogue.find(name)), pot_thermal(example_pot()),
                           exposure)
        .value();
  };
  CHECK(lowest_at("Saint Paul, M", Exposure::open) < roots_killed_below_c);
  CHECK(lowest_at("San Francisco", Exposure::open) > 0.0);
  CHECK(lowest_at("Seattle", Exposure::open) > hurtful_frost.value());
  CHECK(lowest_at("Chicago, I", Exposure::plunged) >= lowest_at("Chicago, I", Exposure::open));
}
