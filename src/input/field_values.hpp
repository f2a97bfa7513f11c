#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/calendar_day.hpp"
#include "base/enum_words.hpp"
#include "base/quantity.hpp"
#include "base/text.hpp"
#include "climate/place.hpp"
#include "climate/position.hpp"
#include "input/faults.hpp"
#include "pot/pot.hpp"

namespace bulbwright::input {

/// Single values from their text, for pot files and flags alike. Each returns nothing after adding
/// a fault that names the field, quotes the value and says what was expected.

struct LengthRange {
  Millimetres least;
  Millimetres most;
  LengthUse use;
};
/// Sizes of a pot.
inline constexpr LengthRange pot_size{Millimetres{1.0}, largest_pot_size, LengthUse::pot};
/// Lengths that may be nothing: headspace, gap, wall, corner.
inline constexpr LengthRange small_length{Millimetres{0.0}, largest_pot_size, LengthUse::small};

/// Heights above the sea: the Dead Sea to beyond the highest garden.
inline constexpr LengthRange height_of_place{Millimetres{-450'000.0}, Millimetres{6'000'000.0},
                                             LengthUse::height};

std::optional<Millimetres> read_length(const Field& field, std::string_view text, LengthRange range,
                                       Faults& faults);
std::optional<LengthPair> read_length_pair(const Field& field, std::string_view text,
                                           LengthRange range, Faults& faults);

/// "38.58, -121.49": latitude and longitude in degrees.
std::optional<GeoPoint> read_position(const Field& field, std::string_view text, Faults& faults);

/// How much warmer than normals: "1.2 C" by night and day, or "-3 C, 0.5 C", nights first; -15 to
/// 15 K.
std::optional<TemperatureOffset> read_offset(const Field& field, std::string_view text,
                                             Faults& faults);

/// What a refrigerator or a shed may hold, -5 to 25 degrees Celsius.
std::optional<Celsius> read_storage_temperature(const Field& field, std::string_view text,
                                                Faults& faults);

std::optional<Day> read_day(const Field& field, std::string_view text, Faults& faults);
std::optional<DayWindow> read_window(const Field& field, std::string_view text, Faults& faults);

/// "1a" to "13b", any case; the result in lower case. Source of the range: USDA Plant Hardiness
/// Zone Map (2012), zones 1a to 13b.
std::optional<std::string> read_zone(const Field& field, std::string_view text, Faults& faults);

/// A circumference in cm: "12", "12.5", "12/14", "12-14" (the middle counts), "12+" and "12/+"
/// (12 counts), with or without "cm". 1 to 60 cm.
std::optional<double> read_grade(const Field& field, std::string_view text, Faults& faults);

/// The index of `text` in `words`; `what` names the kind of word ("shape", for "... is no shape").
std::optional<std::size_t> read_word(const Field& field, std::string_view text,
                                     std::span<const std::string_view> words, const char* what,
                                     Faults& faults);
/// The enumerator of the word.
template <class Enum>
std::optional<Enum> read_word(const Field& field, std::string_view text, const char* what,
                              Faults& faults) {
  const auto index = read_word(field, text, words_of<Enum>(), what, faults);
  return index ? std::optional{static_cast<Enum>(*index)} : std::nullopt;
}

/// Characters of a name, and of a note.
inline constexpr std::size_t longest_name = 100, longest_note = 1000;

/// A name or remark of at most so many characters, none of them a control character.
std::optional<std::string> read_plain_text(const Field& field, std::string_view text,
                                           Faults& faults, std::size_t longest = longest_name);

/// A number as written, for messages: escaped and cut like in_quotes(), without the quotes.
std::string bare(std::string_view written);
/// A number in [least, most]; `written` is how it stands in the input.
std::optional<double> read_number(const Field& field, double value, std::string_view written,
                                  double least, double most, Faults& faults);
/// A whole number in [least, most].
std::optional<int> read_whole_number(const Field& field, double value, std::string_view written,
                                     int least, int most, Faults& faults);
/// A plain decimal number from its whole text, for flags.
std::optional<double> read_decimal(const Field& field, std::string_view text, double least,
                                   double most, Faults& faults);

}  // namespace bulbwright::input
