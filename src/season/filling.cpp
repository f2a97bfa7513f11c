#include "season/filling.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

int bulbs_in(const Plan& plan) {
  int bulbs = 0;
  for (const PlannedLayer& layer : plan.layers) bulbs += layer.count;
  return bulbs;
}

}  // namespace

double filling_hours(const Plan& plan) {
  return (minutes_a_pot + minutes_a_litre * plan.materials.mix_loose.value() +
          minutes_a_bulb * bulbs_in(plan)) /
         60.0;
}

Filling filling_of(std::span<const SeasonPot> pots, std::optional<double> hours_a_day) {
  std::vector<std::size_t> order;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (pots[pot].ok()) order.push_back(pot);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return pots[a].plan->plant < pots[b].plan->plant;
  });
  Filling filling;
  for (const std::size_t pot : order) {
    const Plan& plan = *pots[pot].plan;
    const double hours = filling_hours(plan);
    Day day = plan.plant;
    if (!filling.days.empty()) day = std::max(day, filling.days.back().date);
    const bool same = !filling.days.empty() && filling.days.back().date == day;
    if (same && hours_a_day && filling.days.back().hours + hours > *hours_a_day) ++day;
    if (filling.days.empty() || filling.days.back().date != day)
      filling.days.push_back({day, {}, 0, {}, {}, 0.0, day - plan.plant});
    FillingDay& filled = filling.days.back();
    filled.pots.push_back(pot);
    filled.bulbs += bulbs_in(plan);
    filled.mix_loose += plan.materials.mix_loose;
    filled.perlite += plan.materials.perlite;
    filled.hours += hours;
    ++filling.pots;
    filling.bulbs += bulbs_in(plan);
    filling.mix_loose += plan.materials.mix_loose;
    filling.hours += hours;
  }
  return filling;
}

}  // namespace bulbwright
