#include "report/wording.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "catalogue/taxon.hpp"
#include "report/notice_text.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// One place of a pattern: "given", or "open:is|are".
struct Place {
  std::string_view name;
  std::string_view how;
};

Place place_of(std::string_view inside) {
  const std::size_t colon = inside.find(':');
  if (colon == std::string_view::npos) return {inside, {}};
  return {inside.substr(0, colon), inside.substr(colon + 1)};
}

const DetailValue* detail_of(std::string_view name, const Said& said) {
  for (const Detail& detail : said.details) {
    if (name == word_of(detail.name)) return &detail.value;
  }
  return nullptr;
}

bool is_there(std::string_view name, const Said& said) {
  return name == "kinds" ? !said.kinds.empty() : detail_of(name, said) != nullptr;
}

/// The names of the places in a piece of a pattern.
std::vector<std::string_view> places_in(std::string_view piece) {
  std::vector<std::string_view> names;
  for (std::size_t at = piece.find('{'); at != std::string_view::npos; at = piece.find('{', at)) {
    const std::size_t end = piece.find('}', at);
    names.push_back(place_of(piece.substr(at + 1, end - at - 1)).name);
    at = end;
  }
  return names;
}

bool all_there(std::string_view piece, const Said& said) {
  for (const std::string_view name : places_in(piece)) {
    if (!is_there(name, said)) return false;
  }
  return true;
}

std::string counted_days(int days) {
  return fmt::format("{} day{}", days, days == 1 ? "" : "s");
}

std::string joined(const std::vector<std::string>& words, std::string_view how) {
  if (how == "or" || how == "and") return listed(words, how == "or" ? "or" : "and");
  const char* between = how == "semi" ? "; " : ", ";
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
  return text;
}

std::string kinds_text(std::span<const KindName> kinds, std::string_view how) {
  if (kinds.size() == 1 && how != "many") return plain_name(kinds.front().name);
  std::vector<std::string> names;
  for (const KindName& kind : kinds) {
    std::string name = several(kind.name);
    if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
  }
  return listed(names, how == "or" ? "or" : "and");
}

std::string length_up(Millimetres length, const TextStyle& style) {
  const double step = style.units == Units::inches ? millimetres_per_inch / 8.0 : 1.0;
  return length_text(Millimetres{std::ceil(rounded(length.value() / step, 0.01)) * step}, style);
}

std::string tall_text(Millimetres length, const TextStyle& style) {
  if (style.units == Units::inches) {
    return fmt::format("{:.0f}\u00A0in", rounded(length.value() / millimetres_per_inch, 1.0));
  }
  return fmt::format("{}\u00A0cm", short_number(length.value() / 10.0));
}

std::string warmer_text(Kelvins difference, const TextStyle& style) {
  const double shown = rounded(difference.value(), 0.1);
  if (shown == 0.0) return "as warm";
  const Kelvins apart{shown < 0.0 ? -shown : shown};
  return difference_text(apart, style) + (shown < 0.0 ? " colder" : " warmer");
}

/// The words of one figure.
class DetailWords {
 public:
  DetailWords(std::string_view how, const TextStyle& style) : how_{how}, style_{style} {}

  std::string operator()(int value) const {
    if (how_ == "days") return counted_days(value);
    if (how_ == "late") {
      return fmt::format("{} {}", counted_days(std::abs(value)), value < 0 ? "early" : "late");
    }
    if (const std::size_t bar = how_.find('|'); bar != std::string_view::npos) {
      return std::string{value == 1 ? how_.substr(0, bar) : how_.substr(bar + 1)};
    }
    return fmt::format("{}", value);
  }
  std::string operator()(double value) const { return fmt::format("{:g}", value); }
  std::string operator()(Weeks weeks) const {
    const double shown = rounded(weeks.value(), 0.5);
    return fmt::format("{:g} week{}", shown, shown == 1.0 ? "" : "s");
  }
  std::string operator()(Millimetres length) const {
    if (how_ == "up") return length_up(length, style_);
    if (how_ == "tall") return tall_text(length, style_);
    if (how_ == "far") return distance_text(length, style_);
    if (how_ == "rain") return rain_text(length.value(), style_);
    if (how_ == "sea") return height_text(length, style_);
    if (how_ == "higher") return higher_text(length, style_);
    return length_text(length, style_);
  }
  std::string operator()(Celsius temperature) const {
    if (how_ == "half") return temperature_text(Celsius{rounded(temperature.value(), 0.5)}, style_);
    return temperature_text(temperature, style_);
  }
  std::string operator()(Kelvins difference) const {
    if (how_ == "warmer") return warmer_text(difference, style_);
    return difference_text(difference, style_);
  }
  std::string operator()(Litres volume) const { return volume_text(volume, style_); }
  std::string operator()(Day day) const { return to_words(day); }
  std::string operator()(const DayWindow& days) const {
    return fmt::format("{} to {}", to_words(days.first), to_words(days.last));
  }
  std::string operator()(const std::string& name) const { return name; }
  std::string operator()(const std::vector<KindName>& kinds) const {
    return kinds_text(kinds, how_);
  }
  std::string operator()(const std::vector<Remark>& remarks) const {
    std::vector<std::string> texts;
    for (const Remark& remark : remarks) texts.push_back(remark_text(remark, style_));
    return joined(texts, how_);
  }

 private:
  std::string_view how_;
  const TextStyle& style_;
};

std::string place_words(const Place& place, const Said& said, const TextStyle& style) {
  if (place.name == "kinds") return kinds_text(said.kinds, place.how);
  const DetailValue* value = detail_of(place.name, said);
  if (value == nullptr) {
    throw std::logic_error{fmt::format("a sentence lacks its detail {}", place.name)};
  }
  return std::visit(DetailWords{place.how, style}, *value);
}

}  // namespace

bool can_say(std::string_view pattern, const Said& said) {
  while (!pattern.empty()) {
    const std::size_t open = std::min(pattern.find('['), pattern.size());
    if (!all_there(pattern.substr(0, open), said)) return false;
    const std::size_t close = pattern.find(']', open);
    if (close == std::string_view::npos) break;
    pattern.remove_prefix(close + 1);
  }
  return true;
}

std::string worded(std::string_view pattern, const Said& said, const TextStyle& style) {
  std::string text;
  while (!pattern.empty()) {
    if (pattern.front() == '[') {
      const std::size_t close = pattern.find(']');
      const std::string_view inside = pattern.substr(1, close - 1);
      if (all_there(inside, said)) text += worded(inside, said, style);
      pattern.remove_prefix(close + 1);
    } else if (pattern.front() == '{') {
      const std::size_t close = pattern.find('}');
      text += place_words(place_of(pattern.substr(1, close - 1)), said, style);
      pattern.remove_prefix(close + 1);
    } else {
      const std::size_t next = std::min(pattern.find_first_of("[{"), pattern.size());
      text += pattern.substr(0, next);
      pattern.remove_prefix(next);
    }
  }
  return text;
}

}  // namespace bulbwright::report
