#pragma once

#include <bitset>
#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <tuple>
#include <vector>

#include "flowering/timing.hpp"

namespace bulbwright {

/// What a search over planting days and storage weeks may choose from: the days on which a pot can
/// be planted, and for each the weeks of storage that each kind takes, with the wave that follows.

/// What bounds the choice. Each can be lifted, to find out which one stands in the way.
enum class TimingLimit {
  bulbs,       ///< bulbs can be had from a day on
  mix,         ///< mix too warm to root: above the kind's highest planting temperature
  frost,       ///< less than two weeks to root before hard frost
  room,        ///< dry for longer than the kind takes
  storage,     ///< more storage than the kind takes, or more cold than it needs at the most
  least,       ///< less cold than the least, in the poorest winter
  season_end,  ///< planting time is over
};
inline constexpr std::size_t timing_limits = 7;
using LimitSet = std::bitset<timing_limits>;
LimitSet only(TimingLimit limit);

/// One storage of one kind and what follows in the normal winter.
struct StorageOption {
  double weeks = 0.0;
  Day first, peak, last;
  bool short_of_cold = false;  ///< less than recommended, and than in the ordinary plan
};

/// The answers of time_kind(), remembered.
class TimingMemo {
 public:
  TimingMemo(std::span<const TimedKind> kinds, const PotSeason& season)
      : kinds_{kinds}, season_{&season} {}

  struct Entry {
    double weeks = 0.0;
    Day first, peak, last;  ///< of a kind that does not flower, last is before first
    double missing_weeks = 0.0;
  };
  /// `weeks` absent: as an ordinary plan stores them.
  const Entry& at(std::size_t kind, Day planted, std::optional<double> weeks);

  [[nodiscard]] std::span<const TimedKind> kinds() const { return kinds_; }
  [[nodiscard]] const PotSeason& season() const { return *season_; }

 private:
  std::span<const TimedKind> kinds_;
  const PotSeason* season_;
  std::map<std::tuple<std::size_t, int, double>, Entry> entries_;
};

/// The choice. Its ordinary day, with ordinary weeks for every kind, is always in it: whatever that
/// plan breaks, the choice may break as far.
class TimingOptions {
 public:
  /// `given`: only this planting day.
  TimingOptions(TimingMemo& memo, Day ordinary, std::optional<Day> given, LimitSet lifted = {});

  /// Days on which every kind has an option, in order.
  [[nodiscard]] const std::vector<Day>& days() const { return days_; }
  [[nodiscard]] Day ordinary() const { return ordinary_; }
  /// By kind for the i-th day, fewest weeks first; of options with the same wave only the first.
  [[nodiscard]] const std::vector<std::vector<StorageOption>>& at(std::size_t day) const {
    return options_[day];
  }

 private:
  [[nodiscard]] bool lifted(TimingLimit limit) const {
    return lifted_[static_cast<std::size_t>(limit)];
  }
  [[nodiscard]] bool mix_allows(Day day) const;
  [[nodiscard]] std::vector<StorageOption> options_of(std::size_t kind, Day day) const;
  [[nodiscard]] bool takes(std::size_t kind, Day day, const TimingMemo::Entry& entry) const;

  TimingMemo* memo_;
  Day ordinary_;
  LimitSet lifted_;
  std::vector<Day> days_;
  std::vector<std::vector<std::vector<StorageOption>>> options_;
};

}  // namespace bulbwright
