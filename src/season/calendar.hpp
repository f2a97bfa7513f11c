#pragma once

#include <optional>
#include <span>
#include <vector>

#include "plan/task.hpp"
#include "season/bag.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// One job of one pot.
struct SeasonJob {
  std::size_t pot = 0;  ///< index into the season's pots
  PlannedDate date;
};

/// All jobs of all pots that can be planted, by day, then in the order of tasks and pots.
std::vector<SeasonJob> season_jobs(std::span<const SeasonPot> pots);

/// A kind that a job is about, in one pot.
struct JobKind {
  KindName kind;
  std::size_t pot = 0;
  int bulbs = 0;  ///< that go into the refrigerator; else 0
};

/// The same job in several pots, said once.
struct SharedJob {
  Task task = Task::plant;
  Day date;
  std::optional<Day> until;
  std::vector<std::size_t> pots;  ///< each once, in their order
  std::vector<JobKind> kinds;     ///< none: the whole pots
  std::optional<AfterFlowering> after{};
  WinterRain winter = WinterRain::ordinary;
  std::vector<Detail> details{};
};

/// What people do on one day.
struct JobDay {
  Day date;
  std::vector<SharedJob> jobs;  ///< in the order of tasks
};

/// The jobs said as few times as can be: what is the same on one day once for all its pots; what
/// goes on for weeks (looking stored bulbs over, keeping moist, shelter, feeding leaves) as one
/// stretch for all pots whose stretches meet; of the first noses the first of each pot; watering in
/// goes with planting, and flowers are for the chart.
std::vector<JobDay> shared_days(std::span<const SeasonJob> jobs, std::span<const Bag> bags);

/// The same by weeks: what begins in a week that starts on a Monday.
struct JobWeek {
  Day start;
  std::vector<SharedJob> begin;
  std::vector<SharedJob> go_on;  ///< begun before, not over yet
};
std::vector<JobWeek> shared_weeks(std::span<const JobDay> days);

}  // namespace bulbwright
