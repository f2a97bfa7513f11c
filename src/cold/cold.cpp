#include "cold/cold.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace bulbwright {
namespace {

constexpr double none_below_c = -2.0, full_from_c = 1.6, full_to_c = 9.0, none_above_c = 14.0;
constexpr double undone_above_c = 16.0;
constexpr double halving_hours = 72.0;  // at halving_c
constexpr double halving_c = 20.0;

/// 1 at x = 0, 0 at x = 1, level at both.
double half_cosine(double x) {
  return 0.5 + 0.5 * std::cos(std::numbers::pi * x);
}

}  // namespace

double cold_response(double t_c) {
  if (t_c <= none_below_c || t_c >= none_above_c) return 0.0;
  if (t_c < full_from_c) return half_cosine((full_from_c - t_c) / (full_from_c - none_below_c));
  if (t_c > full_to_c) return half_cosine((t_c - full_to_c) / (none_above_c - full_to_c));
  return 1.0;
}

double winter_response(double t_c) {
  return cold_response(std::max(t_c, full_from_c));
}

double cold_undone_per_hour(double t_c) {
  return std::max(0.0, t_c - undone_above_c) / (halving_c - undone_above_c) / halving_hours;
}

double cold_kept_per_hour(double t_c) {
  return std::exp2(-cold_undone_per_hour(t_c));
}

void ColdState::add(double cold_hours, double kept) {
  loose_hours += cold_hours;
  const double settled = std::max(0.0, loose_hours - loose_cold_hours);
  fixed_hours += settled;
  loose_hours = (loose_hours - settled) * kept;
}

ColdState cold_already(Weeks weeks) {
  ColdState state;
  state.add(weeks.value() * hours_per_week);
  return state;
}

ColdState after_storage(ColdState state, Weeks weeks, Celsius temperature) {
  const double hours = weeks.value() * hours_per_week;
  const double kept = std::pow(cold_kept_per_hour(temperature.value()), hours);
  state.add(hours * cold_response(temperature.value()), kept);
  return state;
}

double storage_weeks_per_cold_week(Celsius temperature) {
  const double response = cold_response(temperature.value());
  return response > 0.0 ? 1.0 / response : std::numeric_limits<double>::infinity();
}

namespace {

/// Weeks that one kind of a day's hours adds.
Weeks weeks_between(const PotWinter& winter, Day first, Day last, ColdState start,
                    double PotDay::*hours) {
  ColdState state = start;
  const Day to = std::min(last, winter.last());
  for (Day day = std::max(first, winter.first); day <= to; ++day) {
    const PotDay& at = winter.at(day);
    state.add(at.*hours, at.cold_kept);
  }
  return state.weeks() - start.weeks();
}

}  // namespace

Weeks cold_weeks_between(const PotWinter& winter, Day first, Day last, ColdState start) {
  return weeks_between(winter, first, last, start, &PotDay::cold_hours);
}

Weeks winter_weeks_between(const PotWinter& winter, Day first, Day last, ColdState start) {
  return weeks_between(winter, first, last, start, &PotDay::winter_hours);
}

}  // namespace bulbwright
