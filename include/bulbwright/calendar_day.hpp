#pragma once

#include <compare>
#include <string>
#include <string_view>

#include <date/date.h>

namespace bulbwright {

/// A calendar date of the proleptic Gregorian calendar, held as a day count; no time of day, no
/// zone.
class Day {
 public:
  constexpr Day() = default;  ///< 1970-01-01
  constexpr explicit Day(date::sys_days days) : days_{days} {}
  constexpr Day(int year, unsigned month, unsigned day)
      : days_{date::year{year} / static_cast<int>(month) / static_cast<int>(day)} {}

  [[nodiscard]] constexpr date::year_month_day ymd() const { return date::year_month_day{days_}; }
  [[nodiscard]] constexpr int year() const { return static_cast<int>(ymd().year()); }
  [[nodiscard]] constexpr unsigned month() const { return static_cast<unsigned>(ymd().month()); }
  [[nodiscard]] constexpr unsigned day() const { return static_cast<unsigned>(ymd().day()); }
  /// 1 for 1 January.
  [[nodiscard]] constexpr int day_of_year() const {
    return (days_ - date::sys_days{ymd().year() / 1 / 1}).count() + 1;
  }
  /// Days since 1970-01-01.
  [[nodiscard]] constexpr int serial() const { return days_.time_since_epoch().count(); }

  constexpr auto operator<=>(const Day&) const = default;
  friend constexpr Day operator+(Day d, int n) { return Day{d.days_ + date::days{n}}; }
  friend constexpr Day operator-(Day d, int n) { return Day{d.days_ - date::days{n}}; }
  friend constexpr int operator-(Day a, Day b) { return (a.days_ - b.days_).count(); }
  constexpr Day& operator++() {
    days_ += date::days{1};
    return *this;
  }

 private:
  date::sys_days days_{};
};

/// Exactly YYYY-MM-DD, a real date, year 1900 to 2200.
/// @throws InvalidValue (empty field) saying what is wrong ("2027-02-29: February 2027 has 28
/// days").
Day parse_day(std::string_view text);

/// A day, or a window "A..B" with both ends in it.
struct DayWindow {
  Day first;
  Day last;
  constexpr auto operator<=>(const DayWindow&) const = default;
};
/// @throws InvalidValue as parse_day, or when the window ends before it starts.
DayWindow parse_day_window(std::string_view text);

/// "2027-01-08".
std::string to_iso(Day day);

/// For people: "8 Jan 2027"; "Fri 8 Jan 2027" with the weekday.
std::string to_words(Day day, bool weekday = false);

enum class Hemisphere { north, south };

/// The year of growth that a calendar year of autumn begins.
/// North: 1 July Y to 30 June Y+1. South: 1 January Y to 31 December Y.
DayWindow season_days(int season, Hemisphere hemisphere);

/// The season that holds `day`.
int season_of(Day day, Hemisphere hemisphere);

}  // namespace bulbwright
