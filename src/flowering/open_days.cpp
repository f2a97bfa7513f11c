#include "flowering/open_days.hpp"

#include <algorithm>
#include <cstdlib>

namespace bulbwright {
namespace {

bool open_on(const PlannedWave& wave, Day day) {
  return wave.flowers && wave.first <= day && day <= wave.last;
}

}  // namespace

OpenDays open_days_of(std::span<DayWindow> waves, DayWindow within) {
  std::sort(waves.begin(), waves.end());
  OpenDays coverage;
  std::optional<DayWindow> run;
  for (const DayWindow& wave : waves) {
    const DayWindow open{std::max(wave.first, within.first), std::min(wave.last, within.last)};
    if (open.last < open.first) continue;
    if (run && open.first <= run->last + 1) {
      coverage.days += std::max(0, open.last - run->last);
      run->last = std::max(run->last, open.last);
    } else {
      coverage.days += open.last - open.first + 1;
      run = open;
    }
    const int length = run->last - run->first + 1;
    if (length > coverage.longest_days) {
      coverage.longest_days = length;
      coverage.longest = run;
    }
  }
  return coverage;
}

std::vector<DayWindow> wave_windows(std::span<const PlannedWave> waves) {
  std::vector<DayWindow> windows;
  for (const PlannedWave& wave : waves) {
    if (wave.flowers) windows.push_back({wave.first, wave.last});
  }
  return windows;
}

int waves_open(std::span<const PlannedWave> waves, Day day) {
  return static_cast<int>(std::count_if(
      waves.begin(), waves.end(), [&](const PlannedWave& wave) { return open_on(wave, day); }));
}

std::optional<Day> day_of_most_flower(std::span<const PlannedWave> waves) {
  if (waves.empty()) return std::nullopt;
  Day first = waves.front().first, last = waves.front().last;
  for (const PlannedWave& wave : waves) {
    first = std::min(first, wave.first);
    last = std::max(last, wave.last);
  }
  std::optional<Day> best;
  int most = 0, nearest = 0;
  for (Day day = first; day <= last; ++day) {
    int open = 0, distance = 0;
    for (const PlannedWave& wave : waves) {
      if (!open_on(wave, day)) continue;
      ++open;
      distance += std::abs(wave.peak - day);
    }
    if (open > most || (open == most && open > 0 && distance < nearest)) {
      best = day;
      most = open;
      nearest = distance;
    }
  }
  return best;
}

}  // namespace bulbwright
