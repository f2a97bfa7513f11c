#include "plan/care_dates.hpp"

#include <algorithm>
#include <optional>

#include "climate/place.hpp"
#include "cold/cold_plan.hpp"

namespace bulbwright {
namespace {

constexpr int order_lead_days = 28;  ///< common practice
constexpr int sold_out_days = 46;    ///< named sorts go before bulbs come; common practice
constexpr int settle_days = 14;      ///< common practice: new mix settles with the first waterings
constexpr Celsius warmest_room{20.0};  ///< common practice: bulbs wait cooler than this
/// Spells as deep as the year's hardest do not come while the mix is still so warm in the mean.
/// common practice: pots are sheltered about when the ground begins to freeze
constexpr Celsius spells_below{4.0};
constexpr int leaves_last_days = 42;  ///< common practice: leave foliage six weeks to feed the bulb

class Dates {
 public:
  PlannedDate& add(Task task, Day date, std::optional<Day> until = std::nullopt) {
    if (until && *until <= date) until.reset();
    return all_.emplace_back(PlannedDate{date, until, task});
  }
  PlannedDate& add(Task task, const CareKind& kind, Day date,
                   std::optional<Day> until = std::nullopt) {
    PlannedDate& added = add(task, date, until);
    added.kinds = {{kind.taxon->id, kind.taxon->name}};
    added.layer = kind.layer;
    return added;
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
  bool to_order = facts.kinds.empty();
  std::optional<Day> first_stored;
  for (const CareKind& kind : facts.kinds) {
    if (kind.cooled_from && *kind.cooled_from < facts.plant)
      dates.add(Task::storage_start, kind, *kind.cooled_from, facts.plant);
    if (!kind.at_hand) {
      to_order = true;
      needed = std::min(needed, first_use(kind, facts.plant));
    }
    if (!kind.cold->storage_start) continue;
    const Task task = kind.cold->chilled_in_pot ? Task::pot_and_chill : Task::storage_start;
    dates.add(task, kind, *kind.cold->storage_start, kind.cold->storage_end);
    if (!kind.cold->chilled_in_pot) {
      first_stored =
          std::min(first_stored.value_or(*kind.cold->storage_start), *kind.cold->storage_start);
    }
  }
  const bool any_dry = std::any_of(facts.kinds.begin(), facts.kinds.end(),
                                   [](const auto& kind) { return kind.state == BulbState::dry; });
  if (to_order) {
    Day order = needed - order_lead_days, arrive = needed - 7;
    if (facts.bulbs_from) {
      order = std::min(order, *facts.bulbs_from - sold_out_days);
      arrive = std::min(needed, std::max(arrive, *facts.bulbs_from));
    }
    dates.add(Task::order_by, order);
    if (any_dry || facts.kinds.empty())  // rooted bulbs go from one pot into the other
      dates.add(Task::bulbs_arrive, arrive).details = {{DetailName::highest, warmest_room}};
  }
  if (first_stored && facts.plant - *first_stored > 7)
    dates.add(Task::storage_check, *first_stored + 7, facts.plant);
}

void add_planting(const CareFacts& facts, Dates& dates) {
  for (const CareKind& kind : facts.kinds) {
    const double hours = kind.taxon->soak_hours.value;
    if (hours <= 0.0 || kind.state != BulbState::dry) continue;
    dates.add(Task::soak, kind, facts.plant).details = {{DetailName::hours, hours}};
  }
  dates.add(Task::plant, facts.plant);
  dates.add(Task::water_in, facts.plant);
  dates.add(Task::top_up, facts.plant + settle_days);
}

/// First and last day of hurtful or lasting frost in the mix in a cold winter.
std::optional<DayWindow> frost_days(const PotWinter& winter, Day from, Celsius lowest_mix) {
  std::optional<DayWindow> frost;
  double coldest = winter.at(from).mean_c;
  for (Day day = from; day <= winter.last(); ++day)
    coldest = std::min(coldest, winter.at(day).mean_c);
  const double deep = std::max(0.0, coldest - lowest_mix.value());
  for (Day day = from; day <= winter.last(); ++day) {
    const PotDay& at = winter.at(day);
    const bool hard = lowest_mix < hurtful_frost && at.mean_c < spells_below.value() &&
                      at.mean_c - deep < hurtful_frost.value();
    if (!hard && at.min_c > hurtful_frost.value() && at.frozen_share < 0.5) continue;
    if (!frost) frost = DayWindow{day, day};
    frost->last = day;
  }
  return frost;
}

/// The last flower, and six weeks more where a kind is to feed its bulb.
Day end_of_leaves(const CareFacts& facts) {
  Day over = facts.plant;
  bool feeds = false;
  for (const CareKind& kind : facts.kinds) {
    over = std::max(over, kind.wave->last);
    feeds = feeds ||
            (kind.wave->flowers && after_here(kind, facts.bulbs_last) != AfterFlowering::discard);
  }
  return feeds ? over + leaves_last_days : over;
}

void add_growing(const CareFacts& facts, Dates& dates) {
  if (facts.kinds.empty()) return;
  Day noses = facts.kinds.front().shoots;
  for (const CareKind& kind : facts.kinds) noses = std::min(noses, kind.shoots);
  dates.add(Task::keep_moist, facts.plant + 1, end_of_leaves(facts)).winter = facts.winter;
  const bool stands_out = std::ranges::any_of(
      facts.kinds, [](const CareKind& kind) { return kind.cold->use == Use::outdoors; });
  // Shoots want the open air, and with leaves the pot drinks.
  if (stands_out && facts.winter == WinterRain::wet && noses - 1 > facts.plant + 1)
    dates.add(Task::keep_from_rain, facts.plant + 1, noses - 1);
  const auto frost =
      stands_out ? frost_days(*facts.cold_winter, facts.plant, facts.lowest_mix) : std::nullopt;
  if (frost) dates.add(Task::shelter, frost->first, frost->last);
  if (facts.mesh) dates.add(Task::uncover, noses);
  for (const CareKind& kind : facts.kinds) {
    if (kind.bring_in) dates.add(Task::bring_in, kind, *kind.bring_in);
    dates.add(Task::shoots, kind, kind.shoots);
    if (kind.wave->flowers) dates.add(Task::flower, kind, kind.wave->first, kind.wave->last);
  }
}

/// Layers cannot be pulled out of a full pot, nor one dried while another grows: what is discarded
/// or dried off waits for the last flower, and for the last leaves where any are kept.
void add_afterwards(const CareFacts& facts, Dates& dates) {
  const Day over = end_of_leaves(facts);
  for (const CareKind& kind : facts.kinds) {
    if (!kind.wave->flowers) continue;
    const AfterFlowering after = after_here(kind, facts.bulbs_last);
    const bool kept = after == AfterFlowering::keep;
    dates
        .add(Task::after_flowering, kind, kept ? kind.wave->last + 1 : over + 1,
             kept ? std::optional{over} : std::nullopt)
        .after = after;
  }
}

}  // namespace

AfterFlowering after_here(const CareKind& kind, bool bulbs_last) {
  const TaxonCold& cold = *kind.cold;
  const bool cooled = cold.storage_weeks + cold.already_weeks > 0.0;
  if (cold.use == Use::forcing || (cold.need.least > 0.0 && cooled)) return AfterFlowering::discard;
  const bool enough =
      cold.lacking_weeks <= 0.5 && rounded(cold.chance_least_met, 0.01) >= sure_chance;
  const bool lasts = bulbs_last && enough && kind.taxon->after == AfterFlowering::discard;
  return lasts ? kind.taxon->after_cold_winter : kind.taxon->after;
}

bool bulbs_last(Celsius annual_low, std::span<const double> mix_mean_c) {
  constexpr double hot_month_c = 23.0;
  return annual_low < zone_bounds("8a").low ||
         std::ranges::all_of(mix_mean_c, [](double month) { return month < hot_month_c; });
}

std::vector<PlannedDate> care_dates(const CareFacts& facts) {
  Dates dates;
  add_before_planting(facts, dates);
  add_planting(facts, dates);
  add_growing(facts, dates);
  add_afterwards(facts, dates);
  return std::move(dates).sorted();
}

}  // namespace bulbwright
