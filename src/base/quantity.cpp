#include "base/quantity.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <functional>
#include <span>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"

namespace bulbwright {
namespace {

struct UnitName {
  std::string_view name;
  double factor;
};

constexpr std::array length_units{
    UnitName{"mm", 1.0},    UnitName{"cm", 10.0},     UnitName{"m", 1000.0}, UnitName{"in", 25.4},
    UnitName{"inch", 25.4}, UnitName{"inches", 25.4}, UnitName{"\"", 25.4},  UnitName{"ft", 304.8}};

constexpr double litres_per_cubic_foot = 28.316846592;  // exact, from the foot of 304.8 mm
constexpr std::array volume_units{UnitName{"l", 1.0},     UnitName{"L", 1.0},
                                  UnitName{"litre", 1.0}, UnitName{"litres", 1.0},
                                  UnitName{"liter", 1.0}, UnitName{"liters", 1.0},
                                  UnitName{"ml", 0.001},  UnitName{"cu ft", litres_per_cubic_foot}};

struct NumberAndUnit {
  double number;
  std::string_view unit;
};

/// A unit with the lengths of a use that are likely in it, in millimetres.
struct LikelyUnit {
  LengthUse use;
  const char* unit;
  double least, most;
};
constexpr std::array likely_units{
    LikelyUnit{LengthUse::pot, "cm", 80, 1500},    LikelyUnit{LengthUse::pot, "in", 80, 1500},
    LikelyUnit{LengthUse::pot, "mm", 80, 1500},    LikelyUnit{LengthUse::pot, "m", 80, 1500},
    LikelyUnit{LengthUse::pot, "ft", 300, 1500},   LikelyUnit{LengthUse::small, "mm", 2, 80},
    LikelyUnit{LengthUse::small, "cm", 2, 80},     LikelyUnit{LengthUse::small, "in", 2, 80},
    LikelyUnit{LengthUse::height, "m", -5e5, 9e6}, LikelyUnit{LengthUse::height, "ft", -5e5, 9e6},
};

double factor_of(std::string_view unit) {
  for (const UnitName& known : length_units) {
    if (known.name == unit) return known.factor;
  }
  return 0.0;
}

NumberAndUnit split_unit(std::string_view whole, const char* example,
                         const std::function<std::string(std::string_view)>& with_units) {
  const std::string_view text = trimmed(whole);
  if (text.empty())
    throw InvalidValue{"", fmt::format("empty; expected a value with a unit such as {}", example)};
  double number = 0.0;
  const auto [end, fault] =
      std::from_chars(text.data(), text.data() + text.size(), number, std::chars_format::fixed);
  if (fault != std::errc{} || !std::isfinite(number)) {
    throw InvalidValue{"", fmt::format("{} is not a number with a unit; expected something like {}",
                                       in_quotes(whole), example)};
  }
  std::string_view rest = text.substr(static_cast<std::size_t>(end - text.data()));
  if (!rest.empty() && rest.front() == ',' && rest.size() > 1 && rest[1] >= '0' && rest[1] <= '9') {
    throw InvalidValue{"", fmt::format("{} has a decimal comma; write it with a point, like 12.5",
                                       in_quotes(whole))};
  }
  rest = trimmed(rest);
  if (rest.empty()) {
    throw InvalidValue{
        "", fmt::format("{} has no unit; did you mean {}?", in_quotes(whole), with_units(text))};
  }
  return {number, rest};
}

double unit_factor(std::string_view whole, std::string_view unit, std::span<const UnitName> units,
                   const char* expected) {
  for (const UnitName& known : units) {
    if (known.name == unit) return known.factor;
  }
  throw InvalidValue{"", fmt::format("{} has the unknown unit {}; expected {}", in_quotes(whole),
                                     in_quotes(unit), expected)};
}

/// The unit of "°C", "degC" and "deg C" without its degree.
std::string_view without_degree(std::string_view unit) {
  if (unit.starts_with("\xc2\xb0")) unit.remove_prefix(2);  // the degree sign
  if (unit.starts_with("deg")) unit = trimmed(unit.substr(3));
  return unit;
}

std::string in_celsius_or_fahrenheit(std::string_view number) {
  return fmt::format("\"{0} C\" or \"{0} F\"", number);
}

std::string in_litres_or_cubic_feet(std::string_view number) {
  return fmt::format("\"{0} l\" or \"{0} cu ft\"", number);
}

}  // namespace

std::string with_likely_units(std::string_view number, LengthUse use) {
  const double value = plain_number(number).value_or(0.0);
  std::vector<std::string> guesses;
  for (const LikelyUnit& likely : likely_units) {
    const double length = value * factor_of(likely.unit);
    if (likely.use != use || length < likely.least || length > likely.most) continue;
    if (guesses.size() < 2) guesses.push_back(fmt::format("\"{} {}\"", number, likely.unit));
  }
  if (guesses.empty()) return fmt::format("\"{0} mm\" or \"{0} in\"", number);
  return listed(guesses, "or");
}

Millimetres parse_length(std::string_view text, LengthUse use) {
  const auto [number, unit] =
      split_unit(text, "\"380 mm\" or \"15 in\"",
                 [use](std::string_view bare) { return with_likely_units(bare, use); });
  return Millimetres{number * unit_factor(text, unit, length_units, "mm, cm, m, in or ft")};
}

LengthPair parse_length_pair(std::string_view text, LengthUse use) {
  constexpr std::string_view times = "\xc3\x97";  // the multiplication sign in UTF-8
  std::size_t at = text.find_first_of("xX");
  std::size_t width = 1;
  if (at == std::string_view::npos) {
    at = text.find(times);
    width = times.size();
  }
  if (at == std::string_view::npos) {
    const Millimetres one = parse_length(text, use);
    return {one, one, false};
  }
  return {parse_length(text.substr(0, at), use), parse_length(text.substr(at + width), use), true};
}

Litres parse_volume(std::string_view text) {
  const auto [number, unit] =
      split_unit(text, "\"12 l\" or \"0.4 cu ft\"", in_litres_or_cubic_feet);
  return Litres{number * unit_factor(text, unit, volume_units, "l, ml or cu ft")};
}

Celsius parse_temperature(std::string_view text) {
  const auto [number, written] = split_unit(text, "\"5 C\" or \"41 F\"", in_celsius_or_fahrenheit);
  const std::string_view unit = without_degree(written);
  if (unit == "C" || unit == "c") return Celsius{number};
  if (unit == "F" || unit == "f") return from_fahrenheit(number);
  throw InvalidValue{"", fmt::format("{} has the unknown unit {}; expected C or F", in_quotes(text),
                                     in_quotes(unit))};
}

Kelvins parse_difference(std::string_view text) {
  std::string_view signless = trimmed(text);
  const bool plus = signless.size() > 1 && signless.front() == '+' &&
                    std::string_view{"0123456789."}.find(signless[1]) != std::string_view::npos;
  if (plus) signless.remove_prefix(1);
  const auto [number, written] =
      split_unit(signless, "\"1.2 C\" or \"2 F\"", in_celsius_or_fahrenheit);
  const std::string_view unit = without_degree(written);
  if (unit == "C" || unit == "c" || unit == "K" || unit == "k") return Kelvins{number};
  if (unit == "F" || unit == "f") return Kelvins{number * 5.0 / 9.0};
  throw InvalidValue{"", fmt::format("{} has the unknown unit {}; expected C, K or F",
                                     in_quotes(text), in_quotes(unit))};
}

long parse_whole_number(std::string_view text, long least, long most) {
  const std::string_view digits = trimmed(text);
  long value = 0;
  const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (fault != std::errc{} || end != digits.data() + digits.size() || value < least ||
      value > most) {
    throw InvalidValue{
        "", fmt::format("{} is not a whole number from {} to {}", in_quotes(text), least, most)};
  }
  return value;
}

double rounded(double v, double step) {
  const double r = std::round(v / step) * step;
  // 0.1 and the like are no binary fractions: 3 * 0.1 prints as 0.30000000000000004, 3 / 10 does
  // not.
  const double inverse = std::round(1.0 / step);
  const double exact =
      step < 1.0 && std::abs(1.0 / inverse - step) < 1e-12 ? std::round(v * inverse) / inverse : r;
  return exact == 0.0 ? 0.0 : exact;
}

}  // namespace bulbwright
