#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "season/bag.hpp"

namespace bulbwright {

/// Bags in the refrigerator day by day. Bulbs potted before they are chilled stand in the cold with
/// their pot, not in the drawer, and count nowhere here.

/// The fullest day of a week.
struct FridgeWeek {
  Day start;  ///< a Monday
  Litres litres;
};

/// Days in a row on which the drawer is too small.
struct FridgeOverflow {
  Day from, to;   ///< both in
  Litres litres;  ///< by which it is too small on the worst of them
};

/// What is held is compared at this step, so that a drawer told in tenths holds what is printed.
inline constexpr double litre_step = 0.1;

class FridgeDays {
 public:
  /// `bags` may lie in any order.
  explicit FridgeDays(std::span<const Bag> bags);

  [[nodiscard]] bool empty() const { return held_.empty(); }
  [[nodiscard]] Day first() const { return first_; }
  [[nodiscard]] Day last() const { return first_ + (static_cast<int>(held_.size()) - 1); }
  /// Rounded to litre_step; 0 outside first() to last().
  [[nodiscard]] Litres held(Day day) const;
  [[nodiscard]] Litres most() const;
  void add(const Bag& bag);
  void remove(const Bag& bag);

  /// The weeks from the first bag in to the last bag out, empty ones between them too.
  [[nodiscard]] std::vector<FridgeWeek> weeks() const;
  /// Every stretch of days beyond `capacity`.
  [[nodiscard]] std::vector<FridgeOverflow> overflow(Litres capacity) const;
  /// Litres beyond the capacity, summed over days: 0 where all fits.
  [[nodiscard]] double excess(Litres capacity) const;

 private:
  void put(const Bag& bag, double sign);
  Day first_;
  std::vector<double> held_;  ///< litres, a day each
};

}  // namespace bulbwright
