#include "base/calendar_day.hpp"

#include <array>

#include <date/date.h>
#include <fmt/core.h>

#include "base/error.hpp"

namespace bulbwright {
namespace {

constexpr std::array month_names{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array full_month_names{"January",   "February", "March",    "April",
                                      "May",       "June",     "July",     "August",
                                      "September", "October",  "November", "December"};
constexpr std::array weekday_names{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

bool has_form(std::string_view text) {
  if (text.size() != 10) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool dash = i == 4 || i == 7;
    if (dash ? text[i] != '-' : text[i] < '0' || text[i] > '9') return false;
  }
  return true;
}

date::sys_days sys(int serial) {
  return date::sys_days{date::days{serial}};
}

date::year_month_day ymd(int serial) {
  return date::year_month_day{sys(serial)};
}

int number(std::string_view digits) {
  int value = 0;
  for (const char digit : digits) value = value * 10 + (digit - '0');
  return value;
}

}  // namespace

Day::Day(int year, unsigned month, unsigned day)
    : serial_{date::sys_days{date::year{year} / static_cast<int>(month) / static_cast<int>(day)}
                  .time_since_epoch()
                  .count()} {}

int Day::year() const {
  return static_cast<int>(ymd(serial_).year());
}

unsigned Day::month() const {
  return static_cast<unsigned>(ymd(serial_).month());
}

unsigned Day::day() const {
  return static_cast<unsigned>(ymd(serial_).day());
}

int Day::day_of_year() const {
  return (sys(serial_) - date::sys_days{ymd(serial_).year() / 1 / 1}).count() + 1;
}

int Day::days_since_monday() const {
  return (date::weekday{sys(serial_)} - date::Monday).count();
}

bool is_leap_year(int year) {
  return date::year{year}.is_leap();
}

bool is_date(int year, unsigned month, unsigned day) {
  return (date::year{year} / date::month{month} / date::day{day}).ok();
}

Day parse_day(std::string_view text) {
  if (!has_form(text)) {
    throw InvalidValue{
        "", fmt::format("{} is no date; expected YYYY-MM-DD, for instance \"2027-01-08\"",
                        in_quotes(text))};
  }
  const int year = number(text.substr(0, 4));
  const int month = number(text.substr(5, 2));
  const int day = number(text.substr(8, 2));
  if (year < first_year || year > last_year) {
    throw InvalidValue{"", fmt::format("{}: the year must be from {} to {}", in_quotes(text),
                                       first_year, last_year)};
  }
  if (month < 1 || month > 12) {
    throw InvalidValue{"", fmt::format("{}: there is no month {}", in_quotes(text), month)};
  }
  const date::year_month_day_last last{date::year{year} / month / date::last};
  const int days = static_cast<int>(static_cast<unsigned>(last.day()));
  if (day < 1 || day > days) {
    throw InvalidValue{"", fmt::format("{}: {} {} has {} days", in_quotes(text),
                                       full_month_name(static_cast<unsigned>(month)), year, days)};
  }
  return Day{year, static_cast<unsigned>(month), static_cast<unsigned>(day)};
}

DayWindow parse_day_window(std::string_view text) {
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos) {
    const Day day = parse_day(text);
    return {day, day};
  }
  const DayWindow window{parse_day(text.substr(0, dots)), parse_day(text.substr(dots + 2))};
  if (window.last < window.first) {
    throw InvalidValue{"", fmt::format("{} ends before it starts", in_quotes(text))};
  }
  return window;
}

std::string_view month_name(unsigned month) {
  return month_names[month - 1];
}

std::string_view full_month_name(unsigned month) {
  return full_month_names[month - 1];
}

std::string to_iso(Day day) {
  return fmt::format("{:04}-{:02}-{:02}", day.year(), day.month(), day.day());
}

std::string to_words(Day day, bool weekday) {
  const std::string plain = fmt::format("{} {} {}", day.day(), month_name(day.month()), day.year());
  if (!weekday) return plain;
  return fmt::format("{} {}", weekday_names[static_cast<std::size_t>(day.days_since_monday())],
                     plain);
}

DayWindow season_days(int season, Hemisphere hemisphere) {
  if (hemisphere == Hemisphere::north) return {Day{season, 7, 1}, Day{season + 1, 6, 30}};
  return {Day{season, 1, 1}, Day{season, 12, 31}};
}

int season_of(Day day, Hemisphere hemisphere) {
  if (hemisphere == Hemisphere::south || day.month() >= 7) return day.year();
  return day.year() - 1;
}

}  // namespace bulbwright
