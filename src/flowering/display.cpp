#include "flowering/display.hpp"

#include <algorithm>
#include <tuple>

#include "flowering/doubt.hpp"
#include "flowering/open_days.hpp"

namespace bulbwright {
namespace {

/// Indices of the waves that flower, in the order of their days.
std::vector<std::size_t> in_order(std::span<const PlannedWave> waves) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < waves.size(); ++i) {
    if (waves[i].flowers) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(waves[a].first, waves[a].last) < std::tie(waves[b].first, waves[b].last);
  });
  return order;
}

}  // namespace

Display display_of(std::span<const PlannedWave> waves) {
  Display display;
  const std::vector<std::size_t> order = in_order(waves);
  if (order.empty()) return display;
  display.first = waves[order.front()].first;
  Day end = *display.first - 1;  // last day known to be in flower
  std::size_t latest = order.front();
  for (const std::size_t i : order) {
    const PlannedWave& wave = waves[i];
    if (i != order.front()) {
      const int gap_days = wave.first - end - 1;
      const double chance = gap_chance(waves[latest], wave);
      display.joints.push_back({latest, i, gap_days, chance});
      if (gap_days > 0) display.gaps.push_back({end + 1, wave.first - 1, chance});
    }
    const Day from = std::max(wave.first, end + 1);
    if (wave.last >= from) display.days_in_flower += wave.last - from + 1;
    if (wave.last > end) latest = i;
    end = std::max(end, wave.last);
  }
  display.last = end;
  std::vector<DayWindow> open = wave_windows(waves);
  display.longest = open_days_of(open, {*display.first, end}).longest;
  return display;
}

}  // namespace bulbwright
