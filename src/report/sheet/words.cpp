#include "report/sheet/words.hpp"

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

constexpr std::array ordinals{"second", "third",   "fourth", "fifth",
                              "sixth",  "seventh", "eighth", "ninth"};

bool is_vowel(char letter) {
  return std::string_view{"aeiou"}.find(letter) != std::string_view::npos;
}

}  // namespace

std::string layer_word(int level, std::size_t layers) {
  if (layers <= 1) return "only";
  if (level <= 1) return "bottom";
  const auto index = static_cast<std::size_t>(level);
  if (index >= layers) return "top";
  if (layers == 3) return "middle";
  return index - 2 < ordinals.size() ? ordinals[index - 2] : fmt::format("no. {}", level);
}

std::string several(std::string_view name) {
  const std::string text = plain_name(name);
  const std::string end = lower_case(text);
  if (text.empty() || end.find("-of-") != std::string::npos) return text;
  if (end.ends_with("us") || end.ends_with("is")) return text + "es";
  if (end.ends_with("s")) return text;
  if (end.ends_with("y") && end.size() > 1 && !is_vowel(end[end.size() - 2])) {
    return text.substr(0, text.size() - 1) + "ies";
  }
  return text + "s";
}

std::string bulbs_text(const LayerBulbs& bulbs, const TextStyle& style) {
  const std::string name =
      in_style(bulbs.count == 1 ? plain_name(bulbs.name) : several(bulbs.name), style);
  const std::string counted = fmt::format("{}\u00A0{}", bulbs.count, name);
  return bulbs.label.empty() ? counted : fmt::format("{} \"{}\"", counted, printable(bulbs.label));
}

std::string sentence(std::string_view text) {
  std::string out = capitalised(text);
  while (out.ends_with(' ')) out.pop_back();
  if (out.empty()) return out;
  if (std::string_view{".!?"}.find(out.back()) == std::string_view::npos) out += '.';
  return out;
}

std::string caution_line(const Caution& caution, const TextStyle& style) {
  constexpr std::string_view place = "{weight}";
  std::string line = caution.short_text;
  if (const std::size_t at = line.find(place); at != std::string::npos)
    line.replace(at, place.size(), about_weight_text(caution.weight, style));
  return line;
}

const char* shape_word(Shape shape) {
  switch (shape) {
    case Shape::round:
      return "round";
    case Shape::oval:
      return "oval";
    case Shape::rectangle:
      return "rectangular";
    case Shape::half_round:
      return "half-round";
  }
  return "";
}

}  // namespace bulbwright::report
