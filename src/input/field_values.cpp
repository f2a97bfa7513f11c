#include "input/field_values.hpp"

#include <cmath>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "base/text.hpp"
#include "base/utf8.hpp"

namespace bulbwright::input {
namespace {

/// Runs a parser of the core and turns its exception into a fault of this field.
template <class Parse>
auto guarded(const Field& field, Faults& faults, Parse parse) -> std::optional<decltype(parse())> {
  try {
    return parse();
  } catch (const InvalidValue& fault) {
    faults.add(field, fault.expectation());
    return std::nullopt;
  }
}

bool in_range(const Field& field, std::string_view text, Millimetres length, LengthRange range,
              Faults& faults) {
  if (length >= range.least && length <= range.most) return true;
  const double least = range.least.value();
  faults.add(field, fmt::format("{} is out of range; expected {} to {:g} m", in_quotes(text),
                                least < 0.0 ? fmt::format("{:g} m", least / 1000.0)
                                            : fmt::format("{:g} mm", least),
                                range.most.value() / 1000.0));
  return false;
}

std::optional<double> grade_value(std::string_view text) {
  if (text.ends_with("cm")) text = trimmed(text.substr(0, text.size() - 2));
  if (text.ends_with('+')) {
    text.remove_suffix(1);
    if (text.ends_with('/')) text.remove_suffix(1);
    return plain_number(text);
  }
  const std::size_t cut = text.find_first_of("/-", 1);
  if (cut == std::string_view::npos) return plain_number(text);
  const auto low = plain_number(trimmed(text.substr(0, cut)));
  const auto high = plain_number(trimmed(text.substr(cut + 1)));
  if (!low || !high || *low > *high || *high > 2.0 * *low) return std::nullopt;
  return (*low + *high) / 2.0;
}

}  // namespace

std::optional<Millimetres> read_length(const Field& field, std::string_view text, LengthRange range,
                                       Faults& faults) {
  const auto length = guarded(field, faults, [&] { return parse_length(text, range.use); });
  if (!length || !in_range(field, text, *length, range, faults)) return std::nullopt;
  return length;
}

std::optional<LengthPair> read_length_pair(const Field& field, std::string_view text,
                                           LengthRange range, Faults& faults) {
  const auto pair = guarded(field, faults, [&] { return parse_length_pair(text, range.use); });
  if (!pair || !in_range(field, text, std::min(pair->first, pair->second), range, faults) ||
      !in_range(field, text, std::max(pair->first, pair->second), range, faults)) {
    return std::nullopt;
  }
  return pair;
}

std::optional<GeoPoint> read_position(const Field& field, std::string_view text, Faults& faults) {
  try {
    return parse_position(text);
  } catch (const InvalidValue& fault) {
    faults.add(field, fault.expectation());
    return std::nullopt;
  }
}

std::optional<Celsius> read_storage_temperature(const Field& field, std::string_view text,
                                                Faults& faults) {
  const auto temperature = guarded(field, faults, [&] { return parse_temperature(text); });
  if (!temperature) return std::nullopt;
  if (*temperature < Celsius{-5.0} || *temperature > Celsius{25.0}) {
    faults.add(field, fmt::format("{} is out of range; expected -5 C to 25 C (23 F to 77 F)",
                                  in_quotes(text)));
    return std::nullopt;
  }
  return temperature;
}

std::optional<TemperatureOffset> read_offset(const Field& field, std::string_view text,
                                             Faults& faults) {
  // A comma behind a unit parts nights from days; one within a number is told as such.
  std::size_t comma = text.find(',');
  if (comma != std::string_view::npos && comma > 0 && text[comma - 1] >= '0' &&
      text[comma - 1] <= '9') {
    comma = std::string_view::npos;
  }
  const auto read = [&](std::string_view part) -> std::optional<Kelvins> {
    const auto difference = guarded(field, faults, [&] { return parse_difference(part); });
    constexpr Kelvins most{15.0};
    if (!difference || (*difference >= -most && *difference <= most)) return difference;
    faults.add(field, fmt::format("{} is out of range; expected -15 C to 15 C (-27 F to 27 F)",
                                  in_quotes(part)));
    return std::nullopt;
  };
  const auto nights = read(text.substr(0, comma));
  if (comma == std::string_view::npos) {
    return nights ? std::optional{TemperatureOffset{*nights, *nights}} : std::nullopt;
  }
  const auto days = read(trimmed(text.substr(comma + 1)));
  return nights && days ? std::optional{TemperatureOffset{*nights, *days}} : std::nullopt;
}

std::optional<Day> read_day(const Field& field, std::string_view text, Faults& faults) {
  return guarded(field, faults, [&] { return parse_day(text); });
}

std::optional<DayWindow> read_window(const Field& field, std::string_view text, Faults& faults) {
  return guarded(field, faults, [&] { return parse_day_window(text); });
}

std::optional<std::string> read_zone(const Field& field, std::string_view text, Faults& faults) {
  const std::string zone = lower_case(trimmed(text));
  const bool half = zone.ends_with('a') || zone.ends_with('b');
  const auto number = plain_number(std::string_view{zone}.substr(0, zone.size() - (half ? 1 : 0)));
  const bool known = number && *number >= 1.0 && *number <= 13.0 && *number == std::floor(*number);
  if (known && half && zone.front() != '0' && zone.find('.') == std::string::npos) return zone;
  if (known && !half) {
    faults.add(field, fmt::format("{} lacks its half; did you mean \"{}a\" or \"{}b\"?",
                                  in_quotes(text), *number, *number));
  } else {
    faults.add(field, fmt::format("{} is no hardiness zone; expected \"1a\" to \"13b\", for "
                                  "instance \"9b\"",
                                  in_quotes(text)));
  }
  return std::nullopt;
}

std::optional<double> read_grade(const Field& field, std::string_view text, Faults& faults) {
  const std::string_view plain = trimmed(text);
  const auto grade = plain.empty() ? std::nullopt : grade_value(plain);
  if (!grade) {
    faults.add(field, fmt::format("{} is no grade; expected a circumference such as \"12\" or "
                                  "\"12/14\" (cm)",
                                  in_quotes(text)));
    return std::nullopt;
  }
  if (*grade < 1.0 || *grade > 60.0) {
    faults.add(field, fmt::format("{} is out of range; expected a circumference of 1 to 60 cm",
                                  in_quotes(text)));
    return std::nullopt;
  }
  return grade;
}

std::optional<std::size_t> read_word(const Field& field, std::string_view text,
                                     std::span<const std::string_view> words, const char* what,
                                     Faults& faults) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == text) return i;
  }
  std::string hint = did_you_mean(lower_case(text), words);
  if (hint.empty()) hint = "; expected " + listed(words, "or");
  faults.add(field, fmt::format("{} is no {}{}", in_quotes(text), what, hint));
  return std::nullopt;
}

std::optional<std::string> read_plain_text(const Field& field, std::string_view text,
                                           Faults& faults, std::size_t longest) {
  for (std::size_t i = 0; i < text.size();) {
    const CodePoint point = code_point_at(text, i);
    i += point.bytes;
    // What turns the direction of text is let in: names in right-to-left scripts may need it.
    if (point.valid && (point.value > 0x9f || !is_control(point.value))) continue;
    faults.add(field,
               fmt::format("{} holds a control character; expected plain text", in_quotes(text)));
    return std::nullopt;
  }
  if (code_points(text) > longest) {
    faults.add(field, fmt::format("{} is too long; expected at most {} characters", in_quotes(text),
                                  longest));
    return std::nullopt;
  }
  return std::string{text};
}

std::string bare(std::string_view written) {
  const std::string text = in_quotes(written);
  return text.substr(1, text.size() - 2);
}

std::optional<double> read_number(const Field& field, double value, std::string_view written,
                                  double least, double most, Faults& faults) {
  if (value >= least && value <= most) return value;
  faults.add(field, fmt::format("{} is out of range; expected a number from {:g} to {:g}",
                                bare(written), least, most));
  return std::nullopt;
}

std::optional<int> read_whole_number(const Field& field, double value, std::string_view written,
                                     int least, int most, Faults& faults) {
  const bool whole = value == std::floor(value);
  if (value >= least && value <= most && whole) return static_cast<int>(value);
  faults.add(field, fmt::format("{} is {} {} to {}", bare(written),
                                whole ? "out of range; expected a whole number from"
                                      : "no whole number; expected one from",
                                least, most));
  return std::nullopt;
}

std::optional<double> read_decimal(const Field& field, std::string_view text, double least,
                                   double most, Faults& faults) {
  const auto value = plain_number(trimmed(text));
  if (value && *value >= least && *value <= most) return value;
  faults.add(field, fmt::format("{} is no number from {:g} to {:g}", in_quotes(text), least, most));
  return std::nullopt;
}

}  // namespace bulbwright::input
