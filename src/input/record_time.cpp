#include "input/record_time.hpp"

#include <fmt/core.h>

#include "base/error.hpp"

namespace bulbwright::input {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Takes a two-digit number of at most `most` off the front.
std::optional<int> take_two(std::string_view& text, int most) {
  if (text.size() < 2 || !is_digit(text[0]) || !is_digit(text[1])) return std::nullopt;
  const int value = 10 * (text[0] - '0') + (text[1] - '0');
  if (value > most) return std::nullopt;
  text.remove_prefix(2);
  return value;
}

/// True where `text` is a zone, or nothing.
bool is_zone(std::string_view text) {
  if (text.empty() || text == "Z") return true;
  if (text[0] != '+' && text[0] != '-') return false;
  text.remove_prefix(1);
  if (!take_two(text, 14)) return false;
  if (text.starts_with(':')) text.remove_prefix(1);
  return text.empty() || (take_two(text, 59) && text.empty());
}

struct TimeOfDay {
  int hour = 0;
  int minute = 0;
};

std::optional<TimeOfDay> parse_time_of_day(std::string_view text) {
  const auto hour = take_two(text, 24);
  if (!hour) return std::nullopt;
  int minute = 0, second = 0;
  if (text.starts_with(':')) {
    text.remove_prefix(1);
    const auto minutes = take_two(text, 59);
    if (!minutes) return std::nullopt;
    minute = *minutes;
    if (text.starts_with(':')) {
      text.remove_prefix(1);
      const auto seconds = take_two(text, 60);
      if (!seconds) return std::nullopt;
      second = *seconds;
      if (text.starts_with('.')) {
        text.remove_prefix(1);
        while (!text.empty() && is_digit(text[0])) text.remove_prefix(1);
      }
    }
  }
  if (!is_zone(text) || (*hour == 24 && (minute > 0 || second > 0))) return std::nullopt;
  return TimeOfDay{*hour, minute};
}

/// The common case without exceptions and copies; parse_day() says what is wrong with the rest.
Day parse_date(std::string_view text) {
  if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
    std::string_view century = text.substr(0, 2), year = text.substr(2, 2),
                     month = text.substr(5, 2), day = text.substr(8, 2);
    const auto c = take_two(century, 21), y = take_two(year, 99), m = take_two(month, 12),
               d = take_two(day, 28);
    if (c && y && m && d && *c >= 19 && *m >= 1 && *d >= 1) {
      return Day{100 * *c + *y, static_cast<unsigned>(*m), static_cast<unsigned>(*d)};
    }
  }
  return parse_day(text);
}

}  // namespace

RecordTime parse_record_time(std::string_view text) {
  const Day day = parse_date(text.substr(0, 10));
  if (text.size() <= 10) return {day, std::nullopt};
  if (text[10] == 'T' || text[10] == ' ') {
    if (const auto time = parse_time_of_day(text.substr(11))) {
      return {day + time->hour / 24, time->hour % 24};
    }
  }
  throw InvalidValue{
      "", fmt::format("{} is no time; expected a form like \"2012-11-01T05:00\"", in_quotes(text))};
}

}  // namespace bulbwright::input
