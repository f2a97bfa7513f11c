#include "report/text_units.hpp"

#include <array>
#include <cmath>

#include <fmt/core.h>

#include "report/text_layout.hpp"

namespace bulbwright::report {
namespace {

/// Source: NIST Handbook 44, appendix C: 1 US dry quart (mix is sold by it) =
/// 1.101220942715 litres, 1 pound =
/// 0.45359237 kg exactly.
constexpr double litres_per_quart = 1.101220942715;
constexpr double kilograms_per_pound = 0.45359237;
/// Source: international foot and mile, exact.
constexpr double metres_per_foot = 0.3048;
constexpr double kilometres_per_mile = 1.609344;

std::string inches_text(double inches) {
  const long eighths = std::lround(rounded(inches, 0.125) * 8.0);
  const long whole = eighths / 8;
  long part = eighths % 8;
  long of = 8;
  if (part == 0) return fmt::format("{}", whole);
  for (; part % 2 == 0; part /= 2) of /= 2;
  return whole == 0 ? fmt::format("{}/{}", part, of)
                    : fmt::format("{}\u00A0{}/{}", whole, part, of);
}

}  // namespace

std::string length_number(Millimetres length, const TextStyle& style) {
  if (style.units == Units::inches) return inches_text(length.value() / millimetres_per_inch);
  return fmt::format("{:.0f}", rounded(length.value(), 1.0));
}

std::string length_text(Millimetres length, const TextStyle& style) {
  const char* unit = style.units == Units::inches ? "in" : "mm";
  return fmt::format("{}\u00A0{}", length_number(length, style), unit);
}

std::string distance_text(Millimetres distance, const TextStyle& style) {
  const double km = distance.value() / 1e6;
  if (style.units == Units::millimetres) return fmt::format("{:.0f}\u00A0km", rounded(km, 1.0));
  return fmt::format("{:.0f}\u00A0miles", rounded(km / kilometres_per_mile, 1.0));
}

std::string height_text(Millimetres height, const TextStyle& style) {
  const double metres = height.value() / 1000.0;
  if (style.units == Units::millimetres) return fmt::format("{:.0f}\u00A0m", rounded(metres, 1.0));
  return fmt::format("{:.0f}\u00A0ft", rounded(metres / metres_per_foot, 1.0));
}

std::string higher_text(Millimetres height, const TextStyle& style) {
  const Millimetres shown = height < Millimetres{0.0} ? -height : height;
  const std::string text = height_text(shown, style);
  if (text.starts_with("0")) return "as high";
  return text + (height < Millimetres{0.0} ? " lower" : " higher");
}

std::string rain_text(double rain_mm, const TextStyle& style) {
  if (style.units == Units::millimetres)
    return fmt::format("{:.0f}\u00A0mm", rounded(rain_mm, 1.0));
  return fmt::format("{:.1f}\u00A0in", rounded(rain_mm / millimetres_per_inch, 0.1));
}

std::string fine_length_text(Millimetres length, const TextStyle& style) {
  if (style.units == Units::inches) {
    return fmt::format("{:.2f} in", rounded(length.value() / millimetres_per_inch, 0.01));
  }
  return fmt::format("{:g} mm", rounded(length.value(), 0.1));
}

std::string temperature_text(Celsius temperature, const TextStyle& style) {
  const char* mark = style.utf8 ? "°" : "";
  if (style.units == Units::inches) {
    return fmt::format("{:.0f}\u00A0{}F", rounded(temperature.value() * 1.8 + 32.0, 1.0), mark);
  }
  return fmt::format("{}\u00A0{}C", short_number(temperature.value()), mark);
}

std::string difference_text(Kelvins difference, const TextStyle& style) {
  const bool inches = style.units == Units::inches;
  return fmt::format("{:.1f}\u00A0{}{}", rounded(difference.value() * (inches ? 1.8 : 1.0), 0.1),
                     style.utf8 ? "°" : "", inches ? "F" : "C");
}

std::string volume_text(Litres volume, const TextStyle& style) {
  if (style.units == Units::millimetres) return short_number(volume.value()) + "\u00A0litres";
  return fmt::format("{:.0f}\u00A0qt", rounded(volume.value() / litres_per_quart, 1.0));
}

std::string weight_text(Kilograms weight, const TextStyle& style) {
  if (style.units == Units::millimetres) return short_number(weight.value()) + "\u00A0kg";
  return fmt::format("{:.0f}\u00A0lb", rounded(weight.value() / kilograms_per_pound, 1.0));
}

std::string about_weight_text(Kilograms weight, const TextStyle& style) {
  const bool metric = style.units == Units::millimetres;
  return fmt::format("{:.0f} {}",
                     rounded(weight.value() / (metric ? 1.0 : kilograms_per_pound), 1.0),
                     metric ? "kg" : "lb");
}

std::string grade_text(std::string_view grade, const TextStyle& style) {
  if (style.units == Units::inches) return fmt::format("grade\u00A0{}", grade);
  return fmt::format("{}\u00A0cm", grade);
}

std::string weights_text(Kilograms low, Kilograms high, const TextStyle& style) {
  const bool metric = style.units == Units::millimetres;
  const double unit = metric ? 1.0 : kilograms_per_pound;
  return fmt::format("{:.0f} to {:.0f}\u00A0{}", rounded(low.value() / unit, 1.0),
                     rounded(high.value() / unit, 1.0), metric ? "kg" : "lb");
}

std::string short_number(double value) {
  const std::string text = fmt::format("{:.1f}", rounded(value, 0.1));
  return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

std::string counted(int count, std::string_view one, std::string_view many) {
  return fmt::format("{}\u00A0{}", count, count == 1 ? one : many);
}

std::string month_text(Day day) {
  return std::string{month_name(day.month())};
}

std::string day_text(Day day, bool with_year) {
  const std::string plain = fmt::format("{}\u00A0{}", day.day(), month_text(day));
  return with_year ? fmt::format("{}\u00A0{}", plain, day.year()) : plain;
}

std::string days_text(Day from, Day to, bool with_year) {
  if (from == to) return day_text(from, with_year);
  if (from.year() == to.year() && from.month() == to.month()) {
    return fmt::format("{} to {}", from.day(), day_text(to, with_year));
  }
  return fmt::format("{} to {}", day_text(from, with_year && from.year() != to.year()),
                     day_text(to, with_year));
}

std::string season_text(int season, Hemisphere hemisphere) {
  return fmt::format("spring {}", hemisphere == Hemisphere::north ? season + 1 : season);
}

}  // namespace bulbwright::report
