#include "plan/care_dates.hpp"

#include <algorithm>
#include <optional>

#include <fmt/core.h>

namespace bulbwright {
namespace {

constexpr int order_lead_days = 28;   ///< common practice
constexpr int settle_days = 14;       ///< common practice: new mix settles with the first waterings
constexpr int leaves_last_days = 42;  ///< common practice: leave foliage six weeks to feed the bulb

class Dates {
 public:
  void add(Task task, Day date, std::optional<Day> until, std::string text, std::string taxon = {},
           int layer = 0) {
    if (until && *until <= date) until.reset();
    all_.push_back({date, until, task, std::move(taxon), layer, std::move(text)});
  }
  std::vector<PlannedDate> sorted() && {
    std::stable_sort(all_.begin(), all_.end(), [](const PlannedDate& a, const PlannedDate& b) {
      return a.date != b.date ? a.date < b.date : a.task < b.task;
    });
    return std::move(all_);
  }

 private:
  std::vector<PlannedDate> all_;
};

/// The day a kind leaves the paper bag: into storage, or into the pot.
Day first_use(const CareKind& kind, Day plant) {
  return kind.cold->storage_start.value_or(plant);
}

void add_before_planting(const CareFacts& facts, Dates& dates) {
  Day needed = facts.plant;
  std::optional<Day> first_stored;
  for (const CareKind& kind : facts.kinds) {
    needed = std::min(needed, first_use(kind, facts.plant));
    if (!kind.cold->storage_start) continue;
    const Task task = kind.cold->chilled_in_pot ? Task::pot_and_chill : Task::storage_start;
    dates.add(
        task, *kind.cold->storage_start, kind.cold->storage_end,
        kind.cold->chilled_in_pot
            ? fmt::format("pot {} and keep the pot cold and moist", plain_name(kind.taxon->name))
            : fmt::format("refrigerate {}", plain_name(kind.taxon->name)),
        kind.taxon->id, kind.layer);
    if (!kind.cold->chilled_in_pot) {
      first_stored =
          std::min(first_stored.value_or(*kind.cold->storage_start), *kind.cold->storage_start);
    }
  }
  dates.add(Task::order_by, needed - order_lead_days, std::nullopt, "have the bulbs ordered");
  dates.add(
      Task::bulbs_arrive, needed - 7, std::nullopt,
      "have the bulbs in the house; look them over, keep them dry, airy and under 20 degrees C");
  if (first_stored && facts.plant - *first_stored > 7) {
    dates.add(Task::storage_check, *first_stored + 7, facts.plant,
              "every week: toss rotten bulbs, wipe mouldy ones, note shrivelled and sprouted ones");
  }
}

void add_planting(const CareFacts& facts, Dates& dates) {
  for (const CareKind& kind : facts.kinds) {
    if (kind.taxon->soak_hours.value <= 0.0) continue;
    dates.add(Task::soak, facts.plant, std::nullopt,
              fmt::format("soak {} for {:g} hours in cool water before planting",
                          plain_name(kind.taxon->name), kind.taxon->soak_hours.value),
              kind.taxon->id, kind.layer);
  }
  dates.add(Task::plant, facts.plant, std::nullopt, "plant, bottom layer first");
  dates.add(Task::water_in, facts.plant, std::nullopt, "water in until it runs from the hole");
  dates.add(Task::top_up, facts.plant + settle_days, std::nullopt,
            "top up with mix where it has settled");
}

/// First and last day of hurtful or lasting frost in the mix in a cold winter.
std::optional<DayWindow> frost_days(const PotWinter& winter, Day from) {
  std::optional<DayWindow> frost;
  for (Day day = from; day <= winter.last(); ++day) {
    const PotDay& at = winter.at(day);
    if (at.min_c > hurtful_frost.value() && at.frozen_share < 0.5) continue;
    if (!frost) frost = DayWindow{day, day};
    frost->last = day;
  }
  return frost;
}

void add_growing(const CareFacts& facts, Dates& dates) {
  if (facts.kinds.empty()) return;
  Day noses = facts.kinds.front().shoots;
  Day end = facts.plant;
  for (const CareKind& kind : facts.kinds) {
    noses = std::min(noses, kind.shoots);
    end = std::max(end, kind.wave->last);
  }
  dates.add(Task::keep_moist, facts.plant + 1, end,
            "keep the mix moist, not wet; look once a week");
  if (const auto frost = frost_days(*facts.cold_winter, facts.plant)) {
    dates.add(
        Task::shelter, frost->first, frost->last,
        "in a hard winter the pot freezes through: wrap it or move it to a cold, frost-free place");
  }
  if (facts.mesh)
    dates.add(Task::uncover, noses, std::nullopt, "lift the mesh when the first noses show");
  for (const CareKind& kind : facts.kinds) {
    if (kind.bring_in) {
      dates.add(Task::bring_in, *kind.bring_in, std::nullopt,
                fmt::format("bring {} in to a light, cool room", plain_name(kind.taxon->name)),
                kind.taxon->id, kind.layer);
    }
    dates.add(Task::shoots, kind.shoots, std::nullopt,
              fmt::format("first noses of {}", plain_name(kind.taxon->name)), kind.taxon->id,
              kind.layer);
    if (!kind.wave->flowers) continue;
    dates.add(Task::flower, kind.wave->first, kind.wave->last,
              fmt::format("{} in flower", plain_name(kind.taxon->name)), kind.taxon->id,
              kind.layer);
  }
}

std::string afterwards(const Taxon& taxon) {
  switch (taxon.after) {
    case AfterFlowering::discard:
      return fmt::format("discard {} after flowering", plain_name(taxon.name));
    case AfterFlowering::keep:
      return fmt::format("{}: cut dead flowers, feed, and keep until the leaves are yellow",
                         plain_name(taxon.name));
    case AfterFlowering::dry_off:
      return fmt::format("{}: let the pot dry off once the leaves yellow", plain_name(taxon.name));
  }
  return {};
}

void add_afterwards(const CareFacts& facts, Dates& dates) {
  for (const CareKind& kind : facts.kinds) {
    if (!kind.wave->flowers) continue;
    const bool leaves_work = kind.taxon->after != AfterFlowering::discard;
    dates.add(Task::after_flowering, kind.wave->last + 1,
              leaves_work ? std::optional{kind.wave->last + leaves_last_days} : std::nullopt,
              afterwards(*kind.taxon), kind.taxon->id, kind.layer);
  }
}

}  // namespace

std::vector<PlannedDate> care_dates(const CareFacts& facts) {
  Dates dates;
  add_before_planting(facts, dates);
  add_planting(facts, dates);
  add_growing(facts, dates);
  add_afterwards(facts, dates);
  return std::move(dates).sorted();
}

}  // namespace bulbwright
