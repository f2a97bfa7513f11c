#pragma once

#include <compare>
#include <string>
#include <string_view>

namespace bulbwright {

/// A number with a unit fixed by its type, so that a depth cannot be passed for a temperature.
/// Made only explicitly; compared, added and scaled within one unit.
template <class Unit>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double value) : value_{value} {}
  [[nodiscard]] constexpr double value() const { return value_; }

  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Quantity operator-() const { return Quantity{-value_}; }
  constexpr Quantity& operator+=(Quantity other) {
    value_ += other.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value_ -= other.value_;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return Quantity{a.value_ + b.value_};
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return Quantity{a.value_ - b.value_};
  }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity{k * a.value_}; }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity{k * a.value_}; }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity{a.value_ / k}; }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }

 private:
  double value_ = 0.0;
};

using Millimetres = Quantity<struct MillimetreUnit>;
using Celsius = Quantity<struct CelsiusUnit>;
using Kelvins = Quantity<struct KelvinUnit>;  ///< a difference of temperatures
using Litres = Quantity<struct LitreUnit>;
using Kilograms = Quantity<struct KilogramUnit>;
using Weeks = Quantity<struct WeekUnit>;

constexpr Millimetres operator""_mm(long double v) {
  return Millimetres{static_cast<double>(v)};
}
constexpr Millimetres operator""_mm(unsigned long long v) {
  return Millimetres{static_cast<double>(v)};
}
constexpr Celsius operator""_degc(long double v) {
  return Celsius{static_cast<double>(v)};
}
constexpr Celsius operator""_degc(unsigned long long v) {
  return Celsius{static_cast<double>(v)};
}

/// What a length is of, by which the units of a bare number are guessed: pots are 8 cm to 1.5 m,
/// gaps, walls and bulbs 2 mm to 8 cm, heights above the sea are told in metres or feet.
enum class LengthUse { pot, small, height };

/// `"38 cm" or "38 in"`: the bare number with the units, two at most, by which it is a likely
/// length.
std::string with_likely_units(std::string_view number, LengthUse use);

/// Reads "380 mm", "38cm", "0.38 m", "15 in", "15\"", "1 ft". One unit, a decimal point, no sign
/// but a leading minus (the caller judges the range).
/// @throws InvalidValue (empty field) when the unit is missing or unknown or the number is
/// malformed; a bare number names the likely fix.
Millimetres parse_length(std::string_view text, LengthUse use = LengthUse::pot);

/// A pair of lengths "60 cm x 20 cm" (x, X or the multiplication sign between); one length stands
/// alone.
struct LengthPair {
  Millimetres first;
  Millimetres second;
  bool paired = false;
  bool operator==(const LengthPair&) const = default;
};
/// @throws InvalidValue as parse_length.
LengthPair parse_length_pair(std::string_view text, LengthUse use = LengthUse::pot);

/// Reads "12 l", "12 litres", "900 ml", "0.4 cu ft". One unit, a decimal point.
/// @throws InvalidValue as parse_length.
Litres parse_volume(std::string_view text);

/// Reads "5 C", "5 degC", "5 °C", "41 F", "41 °F", as a temperature.
/// @throws InvalidValue as parse_length.
Celsius parse_temperature(std::string_view text);

/// Reads "1.2 C", "1.2 K", "-2 F", as a difference of temperatures: 1 F is 5/9 K, nothing taken
/// off.
/// @throws InvalidValue as parse_length.
Kelvins parse_difference(std::string_view text);

/// Whole number from the entire text. @throws InvalidValue naming what was expected.
long parse_whole_number(std::string_view text, long least, long most);

/// Degrees Fahrenheit to Celsius, exact in real arithmetic: (f - 32) * 5 / 9.
constexpr Celsius from_fahrenheit(double degrees_f) {
  return Celsius{(degrees_f - 32.0) * 5.0 / 9.0};
}

inline constexpr double millimetres_per_inch = 25.4;  ///< Exact. Source: international inch, 1959.

/// v rounded to a multiple of `step` away from zero at ties, never -0; the one way numbers are
/// rounded before a decision or before they are printed.
double rounded(double v, double step);

}  // namespace bulbwright
