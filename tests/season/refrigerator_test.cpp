#include "season/refrigerator.hpp"

#include <algorithm>
#include <random>

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

Bag bag(Day in, int days, double litres) {
  Bag made;
  made.in = in;
  made.out = in + days;
  made.litres = Litres{litres};
  return made;
}

std::vector<Bag> some_bags(unsigned seed) {
  std::minstd_rand random{seed};
  std::vector<Bag> bags;
  for (unsigned i = 0; i < 1 + random() % 12; ++i) {
    bags.push_back(bag(Day{2026, 10, 1} + static_cast<int>(random() % 60),
                       1 + static_cast<int>(random() % 90),
                       0.1 * static_cast<double>(1 + random() % 40)));
  }
  return bags;
}

double sum_on(const std::vector<Bag>& bags, Day day) {
  double litres = 0.0;
  for (const Bag& b : bags) {
    if (b.in <= day && day < b.out) litres += b.litres.value();
  }
  return litres;
}

}  // namespace

TEST_CASE("a bag taken out makes room on that very day", "[refrigerator]") {
  const Day day{2026, 11, 13};
  const std::vector<Bag> bags{bag(day - 7, 7, 2.0), bag(day, 7, 3.0)};
  const FridgeDays days{bags};
  CHECK(days.held(day - 1) == Litres{2.0});
  CHECK(days.held(day) == Litres{3.0});
  CHECK(days.held(day + 7) == Litres{0.0});
  CHECK(days.overflow(Litres{3.0}).empty());
}

TEST_CASE("litres of every day, week and overflow are what adding up gives",
          "[refrigerator][oracle]") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const std::vector<Bag> bags = some_bags(seed);
    const FridgeDays days{bags};
    const Litres capacity{4.0};
    double excess = 0.0, most = 0.0;
    std::vector<FridgeWeek> weeks;
    std::size_t stretches = 0;
    bool over_before = false;
    for (Day day = days.first(); day <= days.last(); ++day) {
      const double held = rounded(sum_on(bags, day), 0.1);
      REQUIRE(days.held(day).value() == Approx(held).margin(1e-9));
      most = std::max(most, held);
      const double beyond = rounded(held - capacity.value(), 0.1);
      if (beyond > 0.0) excess += beyond;
      stretches += beyond > 0.0 && !over_before ? 1 : 0;
      over_before = beyond > 0.0;
      const Day monday = day - day.days_since_monday();
      if (weeks.empty() || weeks.back().start != monday) weeks.push_back({monday, Litres{0.0}});
      weeks.back().litres = std::max(weeks.back().litres, Litres{held});
    }
    CHECK(sum_on(bags, days.first() - 1) == 0.0);
    CHECK(sum_on(bags, days.last() + 1) == 0.0);
    CHECK(days.most().value() == Approx(most));
    CHECK(days.excess(capacity) == Approx(excess).margin(1e-9));
    CHECK(days.overflow(capacity).size() == stretches);
    REQUIRE(days.weeks().size() == weeks.size());
    for (std::size_t i = 0; i < weeks.size(); ++i) {
      CHECK(days.weeks()[i].start == weeks[i].start);
      CHECK(days.weeks()[i].litres.value() == Approx(weeks[i].litres.value()).margin(1e-9));
    }
  }
}

TEST_CASE("what is put in and taken out again leaves nothing", "[refrigerator][law]") {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    const std::vector<Bag> bags = some_bags(seed), more = some_bags(seed + 1000);
    FridgeDays days{bags};
    for (const Bag& b : more) days.add(b);
    for (const Bag& b : more) days.remove(b);
    const FridgeDays before{bags};
    for (Day day = days.first(); day <= days.last(); ++day)
      REQUIRE(days.held(day) == before.held(day));
  }
}
