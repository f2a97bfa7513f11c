#include "flowering/display.hpp"

#include <algorithm>

#include "flowering/open_days.hpp"

namespace bulbwright {

Display display_of(std::span<const PlannedWave> waves) {
  Display display;
  if (waves.empty()) return display;
  std::vector<DayWindow> open;
  for (const PlannedWave& wave : waves) {
    if (wave.flowers) open.push_back({wave.first, wave.last});
  }
  if (open.empty()) return display;
  std::sort(open.begin(), open.end());
  display.first = open.front().first;
  Day end = open.front().first - 1;  // last day known to be in flower
  for (const DayWindow& wave : open) {
    if (wave.first > end + 1) display.gaps.push_back({end + 1, wave.first - 1});
    const Day from = std::max(wave.first, end + 1);
    if (wave.last >= from) display.days_in_flower += wave.last - from + 1;
    end = std::max(end, wave.last);
  }
  display.last = end;
  display.longest = open_days_of(open, {*display.first, end}).longest;
  return display;
}

}  // namespace bulbwright
