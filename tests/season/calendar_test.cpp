#include "season/calendar.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

#include "season/season_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::terrace;

namespace {

struct SomePots : PotHouse {
  SomePots() {
    for (const char* name : {"steps", "porch", "urn"}) {
      add(round_pot(name, 380, {"tulip-triumph", "crocus-large"}, Day{2027, 1, 2}));
    }
    add(round_pot("late", 300, {"narcissus-large-cupped"}, Day{2027, 1, 16}));
  }
};

}  // namespace

TEST_CASE("every date of every plan is in the calendar once, in order", "[calendar][law]") {
  const SomePots house;
  const std::vector<SeasonJob> jobs = season_jobs(house.pots);
  std::size_t dates = 0;
  for (const SeasonPot& pot : house.pots) dates += pot.plan->dates.size();
  CHECK(jobs.size() == dates);
  CHECK(std::is_sorted(jobs.begin(), jobs.end(), [](const SeasonJob& a, const SeasonJob& b) {
    return a.date.date < b.date.date;
  }));
}

TEST_CASE("the same job of several pots on one day is said once", "[calendar]") {
  const SomePots house;
  const std::vector<JobDay> days = shared_days(season_jobs(house.pots), house.bags());
  int plantings = 0;
  for (const JobDay& day : days) {
    std::set<std::pair<Task, std::optional<AfterFlowering>>> tasks;
    for (const SharedJob& job : day.jobs) {
      CHECK(job.date == day.date);
      CHECK(tasks.insert({job.task, job.after}).second);
      if (job.task != Task::plant) continue;
      ++plantings;
      CHECK(job.pots.size() == (day.date == Day{2027, 1, 2} ? 3U : 1U));
    }
  }
  CHECK(plantings == 2);
}

TEST_CASE("what goes on covers every pot's days and no gap between two", "[calendar][law]") {
  const SomePots house;
  const std::vector<SeasonJob> jobs = season_jobs(house.pots);
  const std::vector<JobDay> days = shared_days(jobs, house.bags());
  for (const SeasonJob& job : jobs) {
    if (job.date.task != Task::keep_moist && job.date.task != Task::storage_check) continue;
    const bool covered = std::any_of(days.begin(), days.end(), [&](const JobDay& day) {
      return std::any_of(day.jobs.begin(), day.jobs.end(), [&](const SharedJob& shared) {
        return shared.task == job.date.task && shared.date <= job.date.date &&
               *shared.until >= job.date.until.value_or(job.date.date) &&
               std::count(shared.pots.begin(), shared.pots.end(), job.pot) == 1;
      });
    });
    CHECK(covered);
  }
}

TEST_CASE("a bag's bulbs stand with the day they are refrigerated", "[calendar]") {
  const SomePots house;
  const std::vector<Bag> bags = house.bags();
  int in_calendar = 0, in_bags = 0;
  for (const Bag& bag : bags) in_bags += bag.bulbs;
  for (const JobDay& day : shared_days(season_jobs(house.pots), bags)) {
    for (const SharedJob& job : day.jobs) {
      for (const JobKind& kind : job.kinds) in_calendar += kind.bulbs;
    }
  }
  REQUIRE(in_bags > 0);
  CHECK(in_calendar == in_bags);
}

TEST_CASE("every job begins in its own week, and goes on in the later ones", "[calendar][law]") {
  const SomePots house;
  const std::vector<JobDay> days = shared_days(season_jobs(house.pots), house.bags());
  std::size_t begun = 0, jobs = 0;
  for (const JobDay& day : days) jobs += day.jobs.size();
  for (const JobWeek& week : shared_weeks(days)) {
    CHECK(week.start.days_since_monday() == 0);
    begun += week.begin.size();
    for (const SharedJob& job : week.begin)
      CHECK((job.date >= week.start && job.date <= week.start + 6));
    for (const SharedJob& job : week.go_on)
      CHECK((job.date < week.start && *job.until >= week.start));
  }
  CHECK(begun == jobs);
}
