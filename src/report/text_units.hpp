#pragma once

#include <string>
#include <string_view>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// Quantities as a person reads them at the bench. Rounded first, never "-0". Number and unit are
/// held together by a no-break space, which wrap() prints as a space.

/// "275 mm" to the whole millimetre, or "10 7/8 in" to the nearest eighth of an inch.
std::string length_text(Millimetres length, const TextStyle& style);

/// How far a place lies: "32 km", or with inches "20 miles".
std::string distance_text(Millimetres distance, const TextStyle& style);

/// A height of land: "640 m", or with inches "2100 ft".
std::string height_text(Millimetres height, const TextStyle& style);

/// How much higher a place lies: "32 m higher", "32 m lower", "as high".
std::string higher_text(Millimetres height, const TextStyle& style);

/// Rain of a month: "102 mm", or with inches "4.0 in".
std::string rain_text(double rain_mm, const TextStyle& style);

/// A length that is worked to, as `fit` prints: "65.5 mm" to the tenth, or "2.58 in"; with a plain
/// space.
std::string fine_length_text(Millimetres length, const TextStyle& style);

/// The first without its unit, for two lengths in a row: "600", "23 5/8".
std::string length_number(Millimetres length, const TextStyle& style);

/// "5 °C", or with inches "41 °F".
std::string temperature_text(Celsius temperature, const TextStyle& style);

/// How far two temperatures lie apart: "1.4 °C", or with inches "2.5 °F".
std::string difference_text(Kelvins difference, const TextStyle& style);

/// "28.4 litres", or with inches "26 qt", US dry quarts, by which mix is sold.
std::string volume_text(Litres volume, const TextStyle& style);

/// "41.6 kg", or with inches "92 lb".
std::string weight_text(Kilograms weight, const TextStyle& style);

/// "42 kg" or "92 lb", to the whole unit.
std::string about_weight_text(Kilograms weight, const TextStyle& style);

/// "33 to 52 kg", or with inches "73 to 115 lb".
std::string weights_text(Kilograms low, Kilograms high, const TextStyle& style);

/// A bulb's grade as it is traded, its circumference in cm: "12 cm", or with inches "grade 12".
std::string grade_text(std::string_view grade, const TextStyle& style);

/// A number to 0.1 without an idle ".0": "9.5", "11".
std::string short_number(double value);

/// "1 bulb", "2 bulbs".
std::string counted(int count, std::string_view one, std::string_view many);

/// "Jan".
std::string month_text(Day day);

/// "8 Jan", or "8 Jan 2027" with the year.
std::string day_text(Day day, bool with_year);

/// "9 to 25 Mar", "18 Feb to 3 Mar", "28 Dec 2026 to 3 Jan 2027"; one day alone as a day;
/// `with_year` adds the year where both lie in one.
std::string days_text(Day from, Day to, bool with_year);

/// "spring 2027": the spring in which the season's bulbs flower.
std::string season_text(int season, Hemisphere hemisphere);

}  // namespace bulbwright::report
