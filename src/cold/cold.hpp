#pragma once

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright {

inline constexpr double hours_per_week = 168.0;  ///< exact

/// Share of full cold that an hour at this temperature gives a bulb, 0 to 1: 1 between 1.6 and 9
/// degC, falling along half a cosine to 0 at -2 and at 14 degC. This program's own curve; no single
/// published one exists. It honours what is published: 9 degC for rooting, 5 to 2 degC later and
/// 35 degF in extension tables all count; cold tapers to nothing near -2 and ends near 13 degC
/// (docs/cold.md).
double cold_response(double t_c);

/// The same for the question whether a winter is long enough: what is colder than full cold counts
/// in full. A bulb frozen in has had its cold by the thaw: nobody refrigerates bulbs for pots that
/// lie frozen half the winter. common practice
double winter_response(double t_c);

/// Share of the loose cold left after an hour: 1 up to 16 degC, then 2^(-(t - 16)/4 / 72), so that
/// it halves in three days at 20 degC. This program's own rule after the finding that warmth undoes
/// only recent cold.
double cold_kept_per_hour(double t_c);
/// The same as halvings an hour: cold_kept_per_hour() is 2 to the minus this.
double cold_undone_per_hour(double t_c);

/// Cold a bulb has had, in hours of full cold. The newest ten days' worth is loose and can be
/// undone by warmth; what comes on top of it is fixed and stays.
struct ColdState {
  double fixed_hours = 0.0;
  double loose_hours = 0.0;  ///< 0 to loose_cold_hours

  [[nodiscard]] Weeks weeks() const { return Weeks{(fixed_hours + loose_hours) / hours_per_week}; }
  /// Adds hours of full cold, then keeps a share of what is loose (1: all).
  void add(double cold_hours, double kept = 1.0);
  /// Adds a day in the pot.
  void add(const PotDay& day) { add(day.cold_hours, day.cold_kept); }

  bool operator==(const ColdState&) const = default;
};
inline constexpr double loose_cold_hours = 240.0;

/// Cold weeks given already, at full effect (a lot's cold_already).
ColdState cold_already(Weeks weeks);

/// `state` after weeks in a cold store at one temperature, through the same curve.
ColdState after_storage(ColdState state, Weeks weeks, Celsius temperature);

/// Weeks in a cold store at `temperature` that give one cold week; infinite where it gives none.
double storage_weeks_per_cold_week(Celsius temperature);

/// Cold weeks that the pot adds from `first` to `last`, both included, to a bulb in `start`:
/// the end state's weeks less the start's. Days outside the winter add nothing. May be negative,
/// when warmth undoes more than comes.
Weeks cold_weeks_between(const PotWinter& winter, Day first, Day last, ColdState start = {});

/// The same by winter_response(): the weeks that a winter spares the refrigerator.
Weeks winter_weeks_between(const PotWinter& winter, Day first, Day last, ColdState start = {});

}  // namespace bulbwright
