#include "cold/cold.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

Winter constant_winter(double t_c, int days) {
  Winter winter{"constant", 40.0, Day{2026, 9, 1}, {}, {}};
  winter.days.assign(static_cast<std::size_t>(days), DayExtremes{t_c, t_c, false});
  return winter;
}

}  // namespace

TEST_CASE("a winter at 5 degC gives one cold week a week", "[cold][law]") {
  const PotWinter pot =
      pot_winter(constant_winter(5.0, 70), pot_thermal(example_pot()), Exposure::open);
  CHECK(cold_weeks_between(pot, pot.first, pot.last()).value() == Approx(10.0).epsilon(1e-12));
  CHECK(after_storage({}, Weeks{10}, 5_degc).weeks().value() == Approx(10.0).epsilon(1e-12));
}

TEST_CASE("three days at 20 degC halve the loose cold and no more", "[cold][law]") {
  const ColdState chilled = cold_already(Weeks{10});
  const ColdState warmed = after_storage(chilled, Weeks{3.0 / 7.0}, 20_degc);
  CHECK(warmed.loose_hours == Approx(loose_cold_hours / 2).epsilon(1e-12));
  CHECK(warmed.fixed_hours == chilled.fixed_hours);
}

TEST_CASE("a mild winter gives less cold than a normal one in a mild place", "[cold]") {
  const PlaceCatalogue catalogue = PlaceCatalogue::builtin();
  const auto winters = winters_from_normals(catalogue.zone_profile("9b"), 2026);
  double weeks[3];
  for (std::size_t i = 0; i < 3; ++i) {
    const PotWinter pot = pot_winter(winters[i], pot_thermal(example_pot()), Exposure::open);
    weeks[i] = cold_weeks_between(pot, Day{2026, 11, 1}, Day{2027, 2, 28}).value();
  }
  CHECK(weeks[1] < weeks[0]);
  CHECK(weeks[0] < weeks[2]);
  CHECK(weeks[0] > 3.0);
  CHECK(weeks[0] < 17.0);
}
