#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/calendar_day.hpp"
#include "cold/cold_period.hpp"
#include "input/faults.hpp"

namespace bulbwright::input {

struct LocatedRequest;

/// Days of a request that say no year: "01-08" is 8 January of whatever season it is.
struct YearlessDays {
  std::optional<MonthDay> plant;
  std::optional<std::pair<MonthDay, MonthDay>> flower;     ///< a day: both the same
  std::vector<std::pair<std::size_t, MonthDay>> received;  ///< by index of the layer
  std::optional<Day> plant_was;                            ///< with its year, where it had one
  std::optional<DayWindow> flower_was;

  [[nodiscard]] bool any() const { return plant || flower || !received.empty(); }
};

/// "01-08", or "03-10..04-05": text that says no year.
bool says_no_year(std::string_view text);

/// "01-08" into the request's days without a year, "2027-01-08" into the request; a fault where it
/// is neither.
void read_plant(const Field& field, std::string_view text, LocatedRequest& asked, Faults& faults);
/// The same of a wanted day or window.
void read_flower(const Field& field, std::string_view text, LocatedRequest& asked, Faults& faults);

/// Takes the year from every day of the request, which then follow its season.
void forget_years(LocatedRequest& asked);

/// Puts the days without a year into the season; 29 February is the 28th in other years.
/// @returns what became of days that had another year, a line each: "plant: 2027-01-08 is taken as
/// 2028-01-08".
std::vector<std::string> settle_years(LocatedRequest& asked, int season, Hemisphere hemisphere);

}  // namespace bulbwright::input
