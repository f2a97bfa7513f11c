#include "season/calendar.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace bulbwright {
namespace {

/// Told by another part of a season: flowers by the chart, watering in by planting.
bool is_told_elsewhere(Task task) {
  return task == Task::flower || task == Task::water_in;
}

/// Done again and again, or seen to, over weeks.
bool goes_on(const PlannedDate& date) {
  constexpr std::array lasting{Task::storage_check, Task::keep_moist, Task::keep_from_rain,
                               Task::shelter};
  if (std::find(lasting.begin(), lasting.end(), date.task) != lasting.end()) return true;
  return date.task == Task::after_flowering && date.until.has_value();
}

void add_pot(std::vector<std::size_t>& pots, std::size_t pot) {
  const auto at = std::lower_bound(pots.begin(), pots.end(), pot);
  if (at == pots.end() || *at != pot) pots.insert(at, pot);
}

/// What jobs must have alike to be said together, beside their days.
using Alike = std::tuple<Task, std::optional<AfterFlowering>, WinterRain>;
Alike alike(const PlannedDate& date) {
  return {date.task, date.after, date.winter};
}

class Sharing {
 public:
  explicit Sharing(std::span<const Bag> bags) {
    for (const Bag& bag : bags) bulbs_[{bag.pot, bag.taxon, bag.in}] = bag.bulbs;
  }

  void add(const SeasonJob& job) {
    if (is_told_elsewhere(job.date.task)) return;
    if (job.date.task == Task::shoots && !nosed_.insert(job.pot).second) return;
    if (goes_on(job.date)) {
      stretch(job);
      return;
    }
    // Bags come out on the day of planting, which has its own job.
    const bool storing =
        job.date.task == Task::storage_start || job.date.task == Task::pot_and_chill;
    const auto until = storing ? std::nullopt : job.date.until;
    const auto [at, fresh] =
        index_.try_emplace({alike(job.date), job.date.date, until}, shared_.size());
    if (fresh) begin(job, until);
    join(at->second, job);
  }

  std::vector<SharedJob> result() && {
    std::stable_sort(shared_.begin(), shared_.end(), [](const SharedJob& a, const SharedJob& b) {
      return std::tuple{a.date, a.task} < std::tuple{b.date, b.task};
    });
    return std::move(shared_);
  }

 private:
  void begin(const SeasonJob& job, std::optional<Day> until) {
    const PlannedDate& date = job.date;
    shared_.push_back({date.task, date.date, until, {}, {}, date.after, date.winter, date.details});
  }
  void join(std::size_t index, const SeasonJob& job) {
    SharedJob& shared = shared_[index];
    add_pot(shared.pots, job.pot);
    for (const KindName& kind : job.date.kinds) {
      if (!said_.insert({index, job.pot, kind.taxon}).second) continue;
      const auto bag = bulbs_.find({job.pot, kind.taxon, job.date.date});
      const bool in = job.date.task == Task::storage_start && bag != bulbs_.end();
      shared.kinds.push_back({kind, job.pot, in ? bag->second : 0});
    }
  }
  /// Jobs come by their first days: one that begins within the stretch before it makes it longer.
  void stretch(const SeasonJob& job) {
    const Day end = job.date.until.value_or(job.date.date);
    const auto [at, fresh] = open_.try_emplace(alike(job.date), shared_.size());
    if (fresh) {
      begin(job, end);
    } else if (job.date.date > *shared_[at->second].until + 1) {
      at->second = shared_.size();
      begin(job, end);
    }
    SharedJob& shared = shared_[at->second];
    shared.until = std::max(*shared.until, end);
    join(at->second, job);
  }

  std::map<std::tuple<std::size_t, std::string, Day>, int> bulbs_;
  std::vector<SharedJob> shared_;
  std::map<std::tuple<Alike, Day, std::optional<Day>>, std::size_t> index_;
  std::map<Alike, std::size_t> open_;
  std::set<std::size_t> nosed_;
  std::set<std::tuple<std::size_t, std::size_t, std::string>> said_;
};

}  // namespace

std::vector<SeasonJob> season_jobs(std::span<const SeasonPot> pots) {
  std::vector<SeasonJob> jobs;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!pots[pot].ok()) continue;
    for (const PlannedDate& date : pots[pot].plan->dates) jobs.push_back({pot, date});
  }
  std::stable_sort(jobs.begin(), jobs.end(), [](const SeasonJob& a, const SeasonJob& b) {
    return std::tuple{a.date.date, a.date.task} < std::tuple{b.date.date, b.date.task};
  });
  return jobs;
}

std::vector<JobDay> shared_days(std::span<const SeasonJob> jobs, std::span<const Bag> bags) {
  Sharing sharing{bags};
  for (const SeasonJob& job : jobs) sharing.add(job);
  std::vector<JobDay> days;
  for (SharedJob& job : std::move(sharing).result()) {
    if (days.empty() || days.back().date != job.date) days.push_back({job.date, {}});
    days.back().jobs.push_back(std::move(job));
  }
  return days;
}

std::vector<JobWeek> shared_weeks(std::span<const JobDay> days) {
  std::vector<JobWeek> weeks;
  std::vector<SharedJob> open;
  for (const JobDay& day : days) {
    const Day monday = day.date - day.date.days_since_monday();
    if (weeks.empty() || weeks.back().start != monday) {
      std::erase_if(open, [&](const SharedJob& job) { return *job.until < monday; });
      weeks.push_back({monday, {}, open});
    }
    for (const SharedJob& job : day.jobs) {
      weeks.back().begin.push_back(job);
      if (job.until) open.push_back(job);
    }
  }
  return weeks;
}

}  // namespace bulbwright
