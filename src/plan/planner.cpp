#include "plan/planner.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/core.h>

#include "cold/hard_frost.hpp"
#include "flowering/display.hpp"
#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "plan/parts.hpp"
#include "plan/wishes.hpp"
#include "pot/planned_pot.hpp"
#include "scheduling/schedule.hpp"

namespace bulbwright {
namespace {

void add_timing(std::span<const TimedKind> kinds, const Timing& timing, Plan& plan) {
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const KindTiming& kind = timing.kinds[i];
    plan.cold.push_back(kind.cold.cold);
    plan.waves.push_back(kind.wave);
    for (Notice& notice : timing_notices(kinds[i], kind, timing.plant))
      plan.notices.push_back(std::move(notice));
  }
  plan.display = display_of(plan.waves);
}

PlacePicture picture_of(const PlaceSeason& place_season, const PotSeason& season,
                        std::optional<WinterRain> winter) {
  PlacePicture picture;
  picture.label = place_season.label;
  picture.latitude = place_season.latitude;
  picture.hemisphere = place_season.hemisphere;
  picture.basis = place_season.basis;
  picture.measured_until = place_season.measured_until;
  picture.account = place_season.account;
  picture.winter_given = winter.has_value();
  if (picture.account.water) picture.winter = picture.account.water->rain;
  picture.winter = winter.value_or(picture.winter);
  std::array<int, 12> days{};
  const PotWinter& normal = season.winters[season.normal];
  const DayWindow year = season_days(place_season.season, place_season.hemisphere);
  for (Day day = year.first; day <= year.last; ++day) {
    picture.mix_mean_c[day.month() - 1] += normal.at(day).mean_c;
    ++days[day.month() - 1];
  }
  for (std::size_t m = 0; m < 12; ++m) picture.mix_mean_c[m] /= days[m];
  return picture;
}

void refuse_where_a_notice_does(Plan& plan) {
  for (const Notice& notice : plan.notices)
    plan.ok = plan.ok && notice.severity != Severity::refusal;
  std::stable_sort(plan.notices.begin(), plan.notices.end(),
                   [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
}

Plan forward_plan(const PotCase& asked, const PlanContext& context) {
  Plan plan;
  plan.season = context.place_season.season;
  plan.pot = planned_pot(asked.pot);
  Layering layering = plan_layers(asked.layers, asked.pot, context.effort, context.packings);
  plan.layers = std::move(layering.layers);
  plan.notices = std::move(layering.notices);

  plan.place = picture_of(context.place_season, asked.season, asked.request.winter);
  PlantingChoice choice = choose_planting(scheduled_kinds(asked.kinds, asked.season),
                                          asked.season.view(), asked.request.plant);
  plan.plant = choice.plant;
  plan.windows = std::move(choice.windows);
  for (Notice& notice : choice.notices) plan.notices.push_back(std::move(notice));
  const Timing timing = time_pot(asked.kinds, asked.season, plan.plant);
  add_timing(asked.kinds, timing, plan);

  const PlanFacts facts{asked.request,
                        context,
                        asked.pot,
                        asked.layers,
                        asked.season,
                        asked.kinds,
                        timing,
                        lowest_in_frost(context.place_season.frost, pot_thermal(asked.pot),
                                        context.place_season.exposure)};
  const Materials materials = add_materials(facts, plan);
  add_shopping(facts, plan);
  add_dates(facts, plan);
  add_notices(facts, plan);
  add_cautions(facts, materials, plan);
  refuse_where_a_notice_does(plan);
  return plan;
}

}  // namespace

Plan make_plan(const Request& request, const PlanContext& context) {
  Settled settled = settle(make_case(request, context), context);
  Plan plan = forward_plan(settled.pot_case, context);
  plan.request = request;
  plan.plant_given = request.plant.has_value();
  plan.wanted = std::move(settled.wanted);
  plan.spread = std::move(settled.spread);
  for (Notice& notice : settled.notices) plan.notices.push_back(std::move(notice));
  refuse_where_a_notice_does(plan);
  return plan;
}

}  // namespace bulbwright
