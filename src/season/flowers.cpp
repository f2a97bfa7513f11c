#include "season/flowers.hpp"

#include <algorithm>

#include "flowering/display.hpp"
#include "flowering/open_days.hpp"

namespace bulbwright {
namespace {

std::vector<FlowerWeek> weeks_of(const Flowers& flowers) {
  std::vector<FlowerWeek> weeks;
  if (!flowers.display.first) return weeks;
  std::vector<DayWindow> open;
  for (const PottedWave& wave : flowers.waves) open.push_back({wave.wave.first, wave.wave.last});
  const Day first = *flowers.display.first;
  for (Day monday = first - first.days_since_monday(); monday <= *flowers.display.last;
       monday = monday + 7) {
    const DayWindow week{monday, monday + 6};
    std::vector<std::size_t> pots;
    for (const PottedWave& wave : flowers.waves) {
      if (wave.wave.first > week.last) break;
      if (wave.wave.last >= week.first) pots.push_back(wave.pot);
    }
    std::sort(pots.begin(), pots.end());
    const auto end = std::unique(pots.begin(), pots.end());
    weeks.push_back({monday, open_days_of(open, week).days, static_cast<int>(end - pots.begin())});
  }
  return weeks;
}

void add(Flowers& flowers, std::size_t pot, const Plan& plan) {
  flowers.pots.push_back(pot);
  for (const PlannedWave& wave : plan.waves) {
    if (wave.flowers) flowers.waves.push_back({pot, wave});
  }
}

void finish(Flowers& flowers) {
  std::stable_sort(
      flowers.waves.begin(), flowers.waves.end(),
      [](const PottedWave& a, const PottedWave& b) { return a.wave.first < b.wave.first; });
  std::vector<PlannedWave> waves;
  for (const PottedWave& wave : flowers.waves) waves.push_back(wave.wave);
  flowers.display = display_of(waves);
  flowers.weeks = weeks_of(flowers);
}

}  // namespace

Flowers flowers_of_all(std::span<const SeasonPot> pots) {
  Flowers flowers;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (pots[pot].ok()) add(flowers, pot, *pots[pot].plan);
  }
  finish(flowers);
  return flowers;
}

std::vector<Flowers> flowers_of_groups(std::span<const SeasonPot> pots) {
  std::vector<Flowers> groups;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!pots[pot].ok() || pots[pot].group.empty()) continue;
    auto at = std::find_if(groups.begin(), groups.end(),
                           [&](const Flowers& group) { return group.group == pots[pot].group; });
    if (at == groups.end()) {
      groups.emplace_back().group = pots[pot].group;
      at = std::prev(groups.end());
    }
    add(*at, pot, *pots[pot].plan);
  }
  for (Flowers& group : groups) finish(group);
  return groups;
}

}  // namespace bulbwright
