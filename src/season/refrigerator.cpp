#include "season/refrigerator.hpp"

#include <algorithm>

namespace bulbwright {

FridgeDays::FridgeDays(std::span<const Bag> bags) {
  for (const Bag& bag : bags) put(bag, 1.0);
}

void FridgeDays::put(const Bag& bag, double sign) {
  if (bag.potted || bag.out <= bag.in) return;
  if (held_.empty()) first_ = bag.in;
  if (bag.in < first_) {
    held_.insert(held_.begin(), static_cast<std::size_t>(first_ - bag.in), 0.0);
    first_ = bag.in;
  }
  const auto end = static_cast<std::size_t>(bag.out - first_);
  if (held_.size() < end) held_.resize(end, 0.0);
  for (auto day = static_cast<std::size_t>(bag.in - first_); day < end; ++day)
    held_[day] += sign * bag.litres.value();
}

void FridgeDays::add(const Bag& bag) {
  put(bag, 1.0);
}

void FridgeDays::remove(const Bag& bag) {
  put(bag, -1.0);
}

Litres FridgeDays::held(Day day) const {
  if (held_.empty() || day < first_ || day > last()) return Litres{0.0};
  return Litres{rounded(held_[static_cast<std::size_t>(day - first_)], litre_step)};
}

Litres FridgeDays::most() const {
  Litres most{0.0};
  for (const double litres : held_) most = std::max(most, Litres{rounded(litres, litre_step)});
  return most;
}

std::vector<FridgeWeek> FridgeDays::weeks() const {
  std::vector<FridgeWeek> weeks;
  if (held_.empty()) return weeks;
  for (Day day = first_; day <= last(); ++day) {
    const Day monday = day - day.days_since_monday();
    if (weeks.empty() || weeks.back().start != monday) weeks.push_back({monday, Litres{0.0}});
    weeks.back().litres = std::max(weeks.back().litres, held(day));
  }
  return weeks;
}

std::vector<FridgeOverflow> FridgeDays::overflow(Litres capacity) const {
  std::vector<FridgeOverflow> found;
  if (held_.empty()) return found;
  for (Day day = first_; day <= last(); ++day) {
    const Litres beyond{rounded((held(day) - capacity).value(), litre_step)};
    if (beyond <= Litres{0.0}) continue;
    if (found.empty() || found.back().to != day - 1) found.push_back({day, day, beyond});
    found.back().to = day;
    found.back().litres = std::max(found.back().litres, beyond);
  }
  return found;
}

double FridgeDays::excess(Litres capacity) const {
  double sum = 0.0;
  if (held_.empty()) return sum;
  for (Day day = first_; day <= last(); ++day) {
    const double beyond = rounded((held(day) - capacity).value(), litre_step);
    if (beyond > 0.0) sum += beyond;
  }
  return sum;
}

}  // namespace bulbwright
