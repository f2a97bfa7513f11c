#pragma once

#include <compare>
#include <string>
#include <string_view>

namespace bulbwright {

/// A calendar date of the proleptic Gregorian calendar, held as a day count; no time of day, no
/// zone. The calendar arithmetic is Howard Hinnant's, included by calendar_day.cpp alone.
class Day {
 public:
  constexpr Day() = default;  ///< 1970-01-01
  /// A month past 12 or a day past the month's end gives some other day: parse_day() checks.
  Day(int year, unsigned month, unsigned day);

  [[nodiscard]] int year() const;
  [[nodiscard]] unsigned month() const;         ///< 1 to 12
  [[nodiscard]] unsigned day() const;           ///< 1 to 31
  [[nodiscard]] int day_of_year() const;        ///< 1 for 1 January
  [[nodiscard]] int days_since_monday() const;  ///< 0 for a Monday
  /// Days since 1970-01-01.
  [[nodiscard]] constexpr int serial() const { return serial_; }

  constexpr auto operator<=>(const Day&) const = default;
  friend constexpr Day operator+(Day d, int n) { return Day{d.serial_ + n}; }
  friend constexpr Day operator-(Day d, int n) { return Day{d.serial_ - n}; }
  friend constexpr int operator-(Day a, Day b) { return a.serial_ - b.serial_; }
  constexpr Day& operator++() {
    ++serial_;
    return *this;
  }

 private:
  constexpr explicit Day(int serial) : serial_{serial} {}
  int serial_ = 0;
};

bool is_leap_year(int year);
/// True where the calendar has that day.
bool is_date(int year, unsigned month, unsigned day);

/// Years that dates and seasons are taken from.
inline constexpr int first_year = 1900;
inline constexpr int last_year = 2200;

/// Exactly YYYY-MM-DD, a real date, first_year to last_year.
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

/// "Jan" to "Dec" and "January" to "December" of month 1 to 12.
std::string_view month_name(unsigned month);
std::string_view full_month_name(unsigned month);

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
