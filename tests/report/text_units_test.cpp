#include "report/text_units.hpp"

#include <catch2/catch.hpp>

#include "report/text_layout.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {
const TextStyle metric{};
const TextStyle inches{true, 80, Units::inches, false};
std::string plain(const std::string& text) {
  std::string line = joined({text});
  line.pop_back();
  return line;
}
}  // namespace

// 1 in = 25.4 mm exactly (international inch, 1959); a ruler's eighths by hand.
TEST_CASE("a length reads as on the ruler", "[text_units]") {
  CHECK(plain(length_text(275_mm, metric)) == "275 mm");
  CHECK(plain(length_text(274.6_mm, metric)) == "275 mm");
  CHECK(plain(length_text(Millimetres{-0.3}, metric)) == "0 mm");
  CHECK(plain(length_text(275_mm, inches)) == "10 7/8 in");  // 10.827
  CHECK(plain(length_text(25.4_mm, inches)) == "1 in");
  CHECK(plain(length_text(19.05_mm, inches)) == "3/4 in");
  CHECK(plain(length_text(12.7_mm, inches)) == "1/2 in");
  CHECK(plain(length_text(380_mm, inches)) == "15 in");  // 14.961
  CHECK(plain(length_text(0_mm, inches)) == "0 in");
}

// NIST Handbook 44, appendix C: 1 dry quart = 1.101220942715 L, 1 lb = 0.45359237 kg.
TEST_CASE("volumes and weights follow the units", "[text_units][published]") {
  CHECK(plain(volume_text(Litres{28.35}, metric)) == "28.4 litres");
  CHECK(plain(volume_text(Litres{11.01220942715}, inches)) == "10 qt");
  CHECK(plain(weight_text(Kilograms{41.6}, metric)) == "41.6 kg");
  CHECK(plain(weight_text(Kilograms{45.359237}, inches)) == "100 lb");
}

// 5 degrees Celsius are 41 degrees Fahrenheit (F = 1.8 C + 32).
TEST_CASE("a temperature comes in the scale of the units", "[text_units]") {
  CHECK(plain(temperature_text(5_degc, metric)) == "5 °C");
  CHECK(plain(temperature_text(5_degc, inches)) == "41 °F");
  CHECK(plain(temperature_text(5_degc, {false, 80, Units::millimetres, false})) == "5 C");
}

TEST_CASE("stretches of days say the year once and only when asked", "[text_units]") {
  const Day a{2027, 3, 9}, b{2027, 3, 25}, c{2027, 4, 10}, before{2026, 12, 28};
  CHECK(plain(days_text(a, b, false)) == "9 to 25 Mar");
  CHECK(plain(days_text(a, c, false)) == "9 Mar to 10 Apr");
  CHECK(plain(days_text(a, c, true)) == "9 Mar to 10 Apr 2027");
  CHECK(plain(days_text(before, c, true)) == "28 Dec 2026 to 10 Apr 2027");
  CHECK(plain(days_text(a, a, true)) == "9 Mar 2027");
}

TEST_CASE("a season is named by the spring it flowers in", "[text_units]") {
  CHECK(season_text(2026, Hemisphere::north) == "spring 2027");
  CHECK(season_text(2026, Hemisphere::south) == "spring 2026");
}

TEST_CASE("lengths that are worked to keep their tenths, weights their range", "[report]") {
  TextStyle style;
  CHECK(fine_length_text(Millimetres{65.54}, style) == "65.5 mm");
  CHECK(fine_length_text(Millimetres{65.0}, style) == "65 mm");
  CHECK(weights_text(Kilograms{33.4}, Kilograms{51.6}, style) == "33 to 52\u00A0kg");
  style.units = Units::inches;
  CHECK(fine_length_text(Millimetres{65.532}, style) == "2.58 in");
  CHECK(weights_text(Kilograms{33.4}, Kilograms{51.6}, style) == "74 to 114\u00A0lb");
}
