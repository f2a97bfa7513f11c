#include "scheduling/schedule.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bulbwright {
namespace {

constexpr int season_weeks = 24;  ///< length of planting_season()
constexpr int rooting_days = 28;  ///< common practice: four weeks to root before hard frost

constexpr double near_least = 0.5;       ///< points
constexpr double frozen_points = 50.0;   ///< nothing is planted into frozen mix
constexpr double early_points = 0.6;     ///< before growers plant refrigerated bulbs
constexpr int before_october_days = 16;  ///< from the first day that bulbs are to be had
constexpr int cold_step_days = 7;        ///< cold is worked out at these steps and joined linearly

/// What the cold of a planting day costs, and the weeks of storage it takes.
struct ColdCost {
  double points = 0.0;
  double storage_weeks = 0.0;
};

ColdPlan cold_of(const ScheduledKind& kind, const SeasonView& season, Day day) {
  const std::array<const PotWinter*, 3> winters{season.normal, season.mild, season.cold};
  return plan_cold(
      kind.ask, day, [&](const ColdState& start) { return kind.shoots(day, start); }, winters);
}

/// Costs are joined over weeks; the day itself must leave the bulbs all their weeks.
Day with_all_weeks(std::span<const ScheduledKind> kinds, const SeasonView& season, Day chosen) {
  const auto leaves_too_few = [&](Day day) {
    return std::ranges::any_of(kinds, [&](const ScheduledKind& kind) {
      return day < kind.ask.available || cold_of(kind, season, day).limit == ColdPlan::Limit::days;
    });
  };
  for (Day day = chosen; day <= chosen + 2 * cold_step_days; ++day) {
    if (!leaves_too_few(day)) return day;
  }
  return chosen;
}

ColdCost cold_cost(const ScheduledKind& kind, const SeasonView& season, Day day) {
  const ColdPlan plan = cold_of(kind, season, day);
  // Between the least and the recommended cold a week counts half: the bulbs flower, if late.
  double points = 0.0;
  if (plan.cold.need.least > 0.0) {
    points = (is_chilled_kind(*kind.ask.taxon) ? 0.5 : 0.1) *
             std::max(0.0, plan.cold.lacking_weeks - 0.5);
  }
  if (is_under_chilled(kind.ask, plan)) {
    points += 1.5 + 3.0 * std::max(0.0, plan.cold.need.least - plan.cold.need.recommended +
                                            plan.cold.missing_weeks);
  }
  if (plan.limit == ColdPlan::Limit::days) points += 1.5;  // said in a warning
  if (plan.cold.chilled_in_pot && kind.ask.use == Use::outdoors)
    points += 0.5;  // a potted pot takes the room of many bags
  return {points, plan.cold.storage_weeks};
}

/// cold_cost() of every day, worked out at weekly knots and joined linearly.
std::vector<ColdCost> cold_costs(const ScheduledKind& kind, const SeasonView& season,
                                 DayWindow days) {
  const int count = days.last - days.first + 1;
  std::vector<ColdCost> knots;
  for (int i = 0;; i += cold_step_days) {
    knots.push_back(cold_cost(kind, season, std::max(days.first + i, kind.ask.available)));
    if (i >= count) break;
  }
  std::vector<ColdCost> costs;
  for (int i = 0; i < count; ++i) {
    const auto k = static_cast<std::size_t>(i / cold_step_days);
    const double share = static_cast<double>(i % cold_step_days) / cold_step_days;
    const auto between = [&](double a, double b) { return a * (1.0 - share) + b * share; };
    costs.push_back({between(knots[k].points, knots[k + 1].points),
                     between(knots[k].storage_weeks, knots[k + 1].storage_weeks)});
  }
  return costs;
}

/// Tulips and hyacinths go in last, into cool mix: less rot and fire. common practice
constexpr double late_kinds_c = 10.0, late_kinds_per_k = 0.4;

double soil_cost(const Taxon& taxon, double mix_c) {
  if (taxon.plant_by == PlantBy::on_arrival) return 0.0;  // rather warm mix than a dry bulb
  const double good = taxon.soil_max_c.value, most = taxon.soil_max_c.high;
  if (mix_c <= good) {
    if (taxon.plant_by != PlantBy::december_january_after_cold) return 0.0;
    return std::clamp(late_kinds_per_k * (mix_c - late_kinds_c), 0.0, 0.9);
  }
  if (mix_c <= most) return 1.0 + 0.5 * (mix_c - good);
  return 5.0 + 2.0 * (mix_c - most);
}

DayCost cost_of(const ScheduledKind& kind, const SeasonView& season, Day day, const ColdCost& cold,
                std::optional<Day> hard_frost) {
  const Taxon& taxon = *kind.ask.taxon;
  DayCost cost;
  if (day < kind.ask.available) {
    cost.storing = 100.0;  // not to be had
    return cost;
  }
  if (kind.ask.use == Use::forcing) {
    // Potted from October on and stood in the dark, whatever the mix outside. common practice
    if (day < planting_season(season.season, season.hemisphere).first + before_october_days)
      cost.early = early_points;
    const double in_room = (day - kind.ask.available) / 7.0;
    cost.storing = 0.5 * std::max(0.0, in_room - taxon.max_dry_storage_weeks.value);
    return cost;
  }
  cost.soil = soil_cost(taxon, mix_at_planting(*season.normal, day).value());
  cost.cold = cold.points;
  if (hard_frost && *hard_frost - day < rooting_days) {
    cost.rooting = 0.1 * (rooting_days - std::max(0, *hard_frost - day));
  }
  if (is_frozen(*season.normal, day)) cost.rooting += frozen_points;
  const bool stored = cold.storage_weeks >= 0.5 && taxon.cold_form == ColdForm::dry_ok;
  if (stored && kind.ask.stored_from && day < *kind.ask.stored_from) cost.early = early_points;
  // Room and refrigerator are counted apart (data/SOURCES.md).
  const double in_room = (day - kind.ask.available) / 7.0 - cold.storage_weeks;
  cost.storing = 0.5 * std::max(0.0, in_room - taxon.max_dry_storage_weeks.value);
  return cost;
}

Remark what_bounds(const DayCost& cost) {
  const std::array<std::pair<double, RemarkCode>, 4> parts{
      {{cost.soil, RemarkCode::too_warm_to_root},
       {cost.cold, RemarkCode::too_little_cold},
       {cost.rooting, RemarkCode::too_near_frost},
       {cost.storing, RemarkCode::not_to_be_had}}};
  return {std::max_element(parts.begin(), parts.end(),
                           [](const auto& a, const auto& b) { return a.first < b.first; })
              ->second,
          {},
          {}};
}

/// The first run of good days, or nothing.
std::optional<DayWindow> first_run(const std::vector<double>& costs, Day first) {
  const auto good = [](double cost) { return rounded(cost, 0.01) < good_day; };
  const auto from = std::find_if(costs.begin(), costs.end(), good);
  if (from == costs.end()) return std::nullopt;
  const auto to = std::find_if_not(from, costs.end(), good);
  const auto index = [&](auto it) { return static_cast<int>(it - costs.begin()); };
  return DayWindow{first + index(from), first + (index(to) - 1)};
}

std::size_t cheapest(const std::vector<double>& costs) {
  const double least = *std::min_element(costs.begin(), costs.end());
  const auto chosen = std::find_if(costs.begin(), costs.end(), [&](double cost) {
    return rounded(cost, 0.01) <= rounded(least + near_least, 0.01);
  });
  return static_cast<std::size_t>(chosen - costs.begin());
}

PlantingWindow window_of(const ScheduledKind& kind, const std::vector<DayCost>& costs, Day first) {
  std::vector<double> totals;
  for (const DayCost& cost : costs) totals.push_back(cost.total());
  PlantingWindow window;
  window.taxon = kind.ask.taxon->id;
  window.days = first_run(totals, first);
  if (window.days) {
    const auto after = static_cast<std::size_t>(window.days->last - first) + 1;
    window.reason = {RemarkCode::open_to_the_end};
    if (after < costs.size()) {
      const std::vector<Remark> why{what_bounds(costs[after])};
      window.reason = {RemarkCode::days_end, {}, {{DetailName::why, why}}};
    }
  } else {
    window.reason = what_bounds(costs[cheapest(totals)]);
  }
  return window;
}

void say_no_common_window(std::span<const ScheduledKind> kinds,
                          const std::vector<PlantingWindow>& windows, PlantingChoice& choice) {
  std::vector<Remark> days;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const Taxon& taxon = *kinds[i].ask.taxon;
    const std::vector<KindName> kind{{taxon.id, taxon.name}};
    if (windows[i].days) {
      days.push_back({RemarkCode::kind_days, kind, {{DetailName::window, *windows[i].days}}});
    } else {
      const std::vector<Remark> why{windows[i].reason};
      days.push_back({RemarkCode::kind_without_days, kind, {{DetailName::why, why}}});
    }
  }
  choice.notices.push_back(
      {NoticeCode::no_common_window,
       Severity::warning,
       {},
       {{DetailName::windows, std::move(days)}, {DetailName::planted, choice.plant}}});
}

/// The first day from `from` on which the mix is cool enough for a kind.
std::optional<Day> first_cool_day(const Taxon& taxon, const SeasonView& season, Day from) {
  const Day last = planting_season(season.season, season.hemisphere).last;
  for (Day day = from; day <= last; ++day) {
    if (mix_at_planting(*season.normal, day).value() <= taxon.soil_max_c.value) return day;
  }
  return std::nullopt;
}

void say_soil(std::span<const ScheduledKind> kinds, const SeasonView& season,
              PlantingChoice& choice) {
  const double mix_c = rounded(mix_at_planting(*season.normal, choice.plant).value(), 0.1);
  for (const ScheduledKind& kind : kinds) {
    const Taxon& taxon = *kind.ask.taxon;
    if (kind.ask.use == Use::forcing || soil_cost(taxon, mix_c) < good_day) continue;
    const bool too_warm = mix_c > taxon.soil_max_c.high;
    Remark advice{RemarkCode::keep_in_shade};
    if (const auto cool = first_cool_day(taxon, season, choice.plant)) {
      advice = {RemarkCode::wait_for_day, {}, {{DetailName::day, *cool}}};
    } else if (too_warm) {
      advice.code = RemarkCode::treat_as_annuals;
    }
    choice.notices.push_back({too_warm ? NoticeCode::mix_too_warm : NoticeCode::mix_warm,
                              Severity::warning,
                              {{taxon.id, taxon.name}},
                              {{DetailName::mix, Celsius{mix_c}},
                               {DetailName::advice, std::vector<Remark>{std::move(advice)}}}});
    return;
  }
}

/// A day that the grower chose, on which the mix of the normal winter lies frozen.
void say_frozen(std::span<const ScheduledKind> kinds, const SeasonView& season,
                PlantingChoice& choice) {
  const PotWinter& normal = *season.normal;
  const bool stands_out = std::ranges::any_of(
      kinds, [](const ScheduledKind& kind) { return kind.ask.use == Use::outdoors; });
  if (!stands_out || !is_frozen(normal, choice.plant)) return;
  std::vector<Detail> details{{DetailName::planted, choice.plant}};
  Day thaw = choice.plant, open = choice.plant;
  while (thaw < normal.last() && is_frozen(normal, thaw)) ++thaw;
  while (open > normal.first && is_frozen(normal, open)) open = open - 1;
  const Day rooted = open - rooting_days;
  const bool to_be_had = std::ranges::all_of(
      kinds, [&](const ScheduledKind& kind) { return kind.ask.available <= rooted; });
  if (to_be_had) details.push_back({DetailName::last, rooted});
  details.push_back({DetailName::day, thaw});
  choice.notices.push_back({NoticeCode::mix_frozen, Severity::warning, {}, std::move(details)});
}

}  // namespace

std::vector<ScheduledKind> scheduled_kinds(std::span<const TimedKind> kinds,
                                           const PotSeason& season) {
  std::vector<ScheduledKind> result;
  for (const TimedKind& kind : kinds) {
    result.push_back({kind.ask, [&kind, &season](Day planted, const ColdState& start) {
                        return shoots_of(kind, season, planted, start);
                      }});
  }
  return result;
}

DayWindow planting_season(int season, Hemisphere hemisphere) {
  const Day first = earliest_bulbs(season, hemisphere);
  return {first, first + season_weeks * 7};
}

bool is_frozen(const PotWinter& winter, Day day) {
  return winter.at(day).frozen_share > 0.2 || winter.at(day).mean_c < 0.0;
}

std::optional<Day> first_hard_frost(const PotWinter& winter, Day from) {
  for (Day day = from; day <= winter.last(); ++day) {
    if (winter.at(day).frozen_share > 0.5) return day;
  }
  return std::nullopt;
}

Celsius mix_at_planting(const PotWinter& winter, Day day) {
  double sum = 0.0;
  for (int i = 0; i < 7; ++i) sum += winter.at(day + i).mean_c;
  return Celsius{sum / 7.0};
}

std::vector<DayCost> planting_costs(const ScheduledKind& kind, const SeasonView& season) {
  const DayWindow days = planting_season(season.season, season.hemisphere);
  const std::vector<ColdCost> cold = cold_costs(kind, season, days);
  const std::optional<Day> frost = first_hard_frost(*season.normal, days.first);
  std::vector<DayCost> costs;
  for (Day day = days.first; day <= days.last; ++day) {
    costs.push_back(
        cost_of(kind, season, day, cold[static_cast<std::size_t>(day - days.first)], frost));
  }
  return costs;
}

PlantingChoice choose_planting(std::span<const ScheduledKind> kinds, const SeasonView& season,
                               std::optional<Day> given) {
  const DayWindow days = planting_season(season.season, season.hemisphere);
  PlantingChoice choice;
  std::vector<double> pot(static_cast<std::size_t>(days.last - days.first) + 1, 0.0);
  std::vector<double> worst = pot;
  for (const ScheduledKind& kind : kinds) {
    const std::vector<DayCost> costs = planting_costs(kind, season);
    choice.windows.push_back(window_of(kind, costs, days.first));
    for (std::size_t i = 0; i < costs.size(); ++i) {
      pot[i] += costs[i].total();
      worst[i] = std::max(worst[i], costs[i].total());
    }
  }
  PlantingWindow common;
  common.days = first_run(worst, days.first);
  common.reason.code = common.days ? RemarkCode::days_for_all : RemarkCode::no_day_for_all;
  choice.plant = given ? *given : days.first + static_cast<int>(cheapest(pot));
  if (!given && common.days &&
      (choice.plant < common.days->first || choice.plant > common.days->last)) {
    choice.plant = common.days->first;
  }
  if (!given) choice.plant = with_all_weeks(kinds, season, choice.plant);
  // A kind that no day suits says so by itself; here it is about days that exclude one another.
  const bool some_suit =
      std::any_of(choice.windows.begin(), choice.windows.end(),
                  [](const PlantingWindow& window) { return window.days.has_value(); });
  if (!common.days && some_suit && kinds.size() > 1)
    say_no_common_window(kinds, choice.windows, choice);
  choice.windows.push_back(common);
  say_soil(kinds, season, choice);
  if (given) say_frozen(kinds, season, choice);
  return choice;
}

}  // namespace bulbwright
