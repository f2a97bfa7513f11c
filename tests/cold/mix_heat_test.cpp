// The heat of the mix, ice and all, against conservation of energy and a slow simulation.
#include "cold/mix_heat.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

/// Latent heat of half a litre of water in a litre of moist mix, in kelvin of cooling: 334 MJ/m3 x
/// 0.5 / 2.2 MJ/(m3 K). from memory
constexpr double latent_k = 76.0;

/// Weeks of hourly air, degC: a day's swing on spells that cross 0 degC both ways, and some noise.
std::vector<double> weather(double mean_c, int hours) {
  std::mt19937 engine{7};
  std::uniform_real_distribution<double> noise{-1.5, 1.5};
  std::vector<double> air;
  for (int h = 0; h < hours; ++h) {
    const double turn = 2.0 * std::numbers::pi * h;
    air.push_back(mean_c + 6.0 * std::sin(turn / 170.0) + 4.0 * std::sin(turn / 24.0) +
                  noise(engine));
  }
  return air;
}

/// Sensible heat less what freezing has given off, in kelvin of the unfrozen mix.
double heat_of(const MixHeat& mix) {
  return mix.temperature_c() - latent_k * mix.ice();
}

/// Heat alone is followed, in short steps: temperature and ice are read off it. The enthalpy method
/// of phase change (from memory), with explicit steps.
class EnthalpyMix {
 public:
  EnthalpyMix(double tau_hours, double t_c) : tau_{tau_hours}, heat_{t_c} {
    if (t_c < 0.0) heat_ = t_c - latent_k;
  }
  [[nodiscard]] double temperature_c() const {
    return heat_ >= 0.0 ? heat_ : std::min(0.0, heat_ + latent_k);
  }
  [[nodiscard]] double ice() const { return std::clamp(-heat_ / latent_k, 0.0, 1.0); }
  void hour(double a, double b) {
    constexpr int steps = 2000;
    for (int i = 0; i < steps; ++i) {
      const double air = a + (b - a) * (i + 0.5) / steps;
      heat_ += (air - temperature_c()) / tau_ / steps;
    }
  }

 private:
  double tau_;
  double heat_;
};

}  // namespace

// Conservation of energy: what the mix gains in an hour is what came in, the integral of (air -
// mix)/tau, however much of it froze or thawed. Exact, so 1e-9 K is left for rounding.
TEST_CASE("heat that comes in is heat that the mix holds", "[mix_heat][law]") {
  for (const double tau : {0.5, 2.0, 6.0, 17.0, 60.0}) {
    for (const double mean_c : {-8.0, -3.0, 0.0, 3.0}) {
      MixHeat mix{tau, latent_k};
      mix.start_at(1.0);
      const std::vector<double> air = weather(mean_c, 2000);
      double most_ice = 0.0, worst = 0.0;
      for (std::size_t h = 1; h < air.size(); ++h) {
        const double before = heat_of(mix);
        const double mean = mix.hour(air[h - 1], air[h]);
        const double came_in = ((air[h - 1] + air[h]) / 2.0 - mean) / tau;
        worst = std::max(worst, std::abs(heat_of(mix) - before - came_in));
        most_ice = std::max(most_ice, mix.ice());
      }
      CAPTURE(tau, mean_c);
      CHECK(worst < 1e-9);
      if (tau <= 6.0 && mean_c <= -3.0) CHECK(most_ice == 1.0);
    }
  }
}

// The simulation's own error is a step's worth of lag, 1/2000 of an hour: below 0.01 K and 1e-3 of
// the ice.
TEST_CASE("temperature and ice are those of a slow simulation", "[mix_heat][oracle]") {
  for (const double tau : {1.0, 6.0, 17.0}) {
    for (const double mean_c : {-4.0, 0.0}) {
      MixHeat mix{tau, latent_k};
      mix.start_at(2.0);
      EnthalpyMix slow{tau, 2.0};
      const std::vector<double> air = weather(mean_c, 700);
      double worst_k = 0.0, worst_ice = 0.0;
      for (std::size_t h = 1; h < air.size(); ++h) {
        mix.hour(air[h - 1], air[h]);
        slow.hour(air[h - 1], air[h]);
        worst_k = std::max(worst_k, std::abs(mix.temperature_c() - slow.temperature_c()));
        worst_ice = std::max(worst_ice, std::abs(mix.ice() - slow.ice()));
      }
      CAPTURE(tau, mean_c);
      CHECK(worst_k < 0.01);
      CHECK(worst_ice < 1e-3);
    }
  }
}

// By hand: air that falls from 0 to -6 degC in an hour takes 3 K h out of the mix at 0 degC,
// through a lag of 4 h 0.75 K, of the 76 K that freezing takes. Rising from -6 to 0 it takes as
// much again.
TEST_CASE("ice grows by the heat that falling and rising air take", "[mix_heat][law]") {
  MixHeat mix{4.0, latent_k};
  mix.start_at(0.0);
  CHECK(mix.hour(0.0, -6.0) == 0.0);
  CHECK(mix.ice() == Approx(0.75 / latent_k).epsilon(1e-12));
  CHECK(mix.hour(-6.0, 0.0) == 0.0);
  CHECK(mix.ice() == Approx(1.5 / latent_k).epsilon(1e-12));
  // Thawing takes it back: 2 to 8 degC brings 5 K h, 1.25 K.
  CHECK(mix.hour(2.0, 8.0) == 0.0);
  CHECK(mix.ice() == Approx(0.25 / latent_k).epsilon(1e-12));
}

TEST_CASE("mix is at 0 degC while it is partly frozen", "[mix_heat][law]") {
  MixHeat mix{3.0, latent_k};
  mix.start_at(5.0);
  const std::vector<double> air = weather(-2.0, 1500);
  int partly = 0, frozen_through = 0, thawed = 0;
  for (std::size_t h = 1; h < air.size(); ++h) {
    mix.hour(air[h - 1], air[h]);
    REQUIRE(mix.ice() >= 0.0);
    REQUIRE(mix.ice() <= 1.0);
    if (mix.temperature_c() > 0.0) {
      CHECK(mix.ice() == 0.0);
      ++thawed;
    } else if (mix.temperature_c() < 0.0) {
      CHECK(mix.ice() == 1.0);
      ++frozen_through;
    } else {
      ++partly;
    }
  }
  CHECK(partly > 100);
  CHECK(frozen_through > 50);
  CHECK(thawed > 50);
}
