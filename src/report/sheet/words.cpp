#include "report/sheet/words.hpp"

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "base/notice_words.hpp"
#include "report/text_layout.hpp"

namespace bulbwright::report {
namespace {

constexpr std::array ordinals{"second", "third",   "fourth", "fifth",
                              "sixth",  "seventh", "eighth", "ninth"};

std::string lower(std::string_view text) {
  std::string out{text};
  for (char& letter : out) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return out;
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos;
       at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

/// The short names of all kinds of a plan, each once.
std::vector<std::string> kinds_of(const Plan& plan) {
  std::vector<std::string> names;
  const auto add = [&names](const std::string& name) {
    const std::string brief = plain_name(name);
    if (!brief.empty() && std::find(names.begin(), names.end(), brief) == names.end()) {
      names.push_back(brief);
    }
  };
  for (const TaxonCold& cold : plan.cold) add(cold.name);
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) add(bulbs.name);
  }
  return names;
}

/// A text about one kind: what stands around its name.
struct AboutKind {
  std::string before, kind, after;
};
AboutKind about_kind(const std::string& text, const std::vector<std::string>& kinds) {
  AboutKind found;
  for (const std::string& kind : kinds) {
    const std::size_t at = text.find(kind);
    if (at == std::string::npos) continue;
    const bool again = text.find(kind, at + kind.size()) != std::string::npos;
    if (again || !found.kind.empty()) return {};
    found = {text.substr(0, at), kind, text.substr(at + kind.size())};
  }
  return found;
}

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
  const std::string end = lower(text);
  if (text.empty() || end.find("-of-") != std::string::npos) return text;
  if (end.ends_with("crocus") || end.ends_with("iris")) return text + "es";
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

std::string listed(const std::vector<std::string>& items) {
  return bulbwright::listed(items, "and");
}

std::string capitalised(std::string_view text) {
  std::string out{text};
  if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') {
    out[0] = static_cast<char>(out[0] - 'a' + 'A');
  }
  return out;
}

std::string sentence(std::string_view text) {
  std::string out = capitalised(text);
  while (out.ends_with(' ')) out.pop_back();
  if (out.empty()) return out;
  if (std::string_view{".!?"}.find(out.back()) == std::string_view::npos) out += '.';
  return out;
}

std::string plan_words(const Plan& plan, std::string_view text, const TextStyle& style) {
  std::string out{text};
  const auto shorten = [&out](const std::string& name) {
    const std::string brief = plain_name(name);
    if (brief != name) replace_all(out, name, brief);
  };
  for (const TaxonCold& cold : plan.cold) shorten(cold.name);
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) shorten(bulbs.name);
  }
  replace_all(out, " degrees C", "\u00A0°C");
  return in_style(out, style);
}

MergedTexts merge_kinds(const Plan& plan, const std::vector<std::string>& texts) {
  const std::vector<std::string> kinds = kinds_of(plan);
  struct Group {
    AboutKind about;
    std::string text;
    std::vector<std::string> names;
  };
  std::vector<Group> groups;
  MergedTexts merged;
  for (const std::string& text : texts) {
    const AboutKind about = about_kind(text, kinds);
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      return !about.kind.empty() && group.about.before == about.before &&
             group.about.after == about.after && !group.about.kind.empty();
    });
    merged.same.push_back(static_cast<std::size_t>(same - groups.begin()));
    if (same == groups.end()) {
      groups.push_back({about, text, {several(about.kind)}});
    } else if (same->about.kind != about.kind) {
      same->names.push_back(several(about.kind));
    }
  }
  for (const Group& group : groups) {
    merged.texts.push_back(group.names.size() < 2
                               ? group.text
                               : group.about.before + listed(group.names) + group.about.after);
  }
  return merged;
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
