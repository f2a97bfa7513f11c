// suggest_text(): suggested stacks for people.
#include <algorithm>

#include <fmt/core.h>

#include "catalogue/taxon.hpp"
#include "report/notice_text.hpp"
#include "report/sheet/words.hpp"
#include "report/suggest_report.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

constexpr int names_width = 36;
constexpr int dates_width = 19;

/// "bottom  19 Triumph tulips   12 to 28 Mar   8 weeks cold".
void add_layer(Lines& lines, const Suggestion& suggestion, std::size_t i, int width) {
  const PlannedWave& wave = suggestion.waves[i];
  const std::string word = layer_word(wave.layer, suggestion.waves.size());
  const std::string bulbs =
      counted(suggestion.bulbs[i], plain_name(wave.name), several(plain_name(wave.name)));
  const double weeks = suggestion.cold[i].storage_weeks;
  const std::string cold =
      weeks > 0.0 ? short_number(weeks) + (weeks == 1.0 ? " week cold" : " weeks cold") : "";
  const std::string dates = days_text(wave.first, wave.last, false);
  if (width >= 8 + names_width + dates_width + 15) {
    lines.push_back("   " + pad_right(word, 8) + pad_right(bulbs, names_width) +
                    pad_right(dates, dates_width) + cold);
  } else {
    append(lines, hanging("   " + word, bulbs + ", " + dates + (cold.empty() ? "" : ", " + cold),
                          11, width));
  }
}

void add_suggestion(Lines& lines, const Suggestion& suggestion, std::size_t number, int width,
                    const TextStyle& style) {
  lines.push_back(bold(fmt::format("{}. {} in flower; plant on {}", number,
                                   counted(suggestion.days_in_flower, "day", "days"),
                                   day_text(suggestion.plant, true)),
                       style));
  for (std::size_t i = suggestion.waves.size(); i-- > 0;) add_layer(lines, suggestion, i, width);
  const auto say = [&](const std::string& text) { append(lines, hanging("   -", text, 5, width)); };
  for (const Remark& reason : suggestion.reasons) say(capitalised(remark_text(reason, style)));
  for (const Notice& notice : suggestion.mind) say("Mind: " + notice_text(notice, style));
}

/// Kinds left out, one paragraph a reason, in the order of the first of each.
void add_left_out(Lines& lines, const Suggestions& suggestions, int width, const TextStyle& style) {
  std::vector<std::pair<Remark, std::vector<std::string>>> by_reason;
  for (const LeftOut& out : suggestions.left_out) {
    auto group = std::find_if(by_reason.begin(), by_reason.end(),
                              [&](const auto& known) { return known.first == out.reason; });
    if (group == by_reason.end()) {
      by_reason.push_back({out.reason, {}});
      group = std::prev(by_reason.end());
    }
    const std::string name = plain_name(out.name);
    std::vector<std::string>& names = group->second;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  for (const auto& [reason, names] : by_reason)
    append(lines, wrap(fmt::format("Left out, {}: {}.", remark_text(reason, style), listed(names)),
                       width));
}

}  // namespace

std::string suggest_text(const Suggestions& suggestions, const TextStyle& style) {
  const int width = text_width(style);
  Lines lines;
  const std::string heading =
      fmt::format("Stacks for {}, flowers wanted {}", suggestions.place,
                  days_text(suggestions.window.first, suggestions.window.last, true));
  for (const std::string& line : wrap(heading, width)) lines.push_back(bold(line, style));
  append(lines, wrap(fmt::format("{} of {} kinds come into question; {} stacks of them looked at, "
                                 "{} suit pot, place and window.",
                                 suggestions.kinds - static_cast<int>(suggestions.left_out.size()),
                                 suggestions.kinds, suggestions.stacks, suggestions.fitting),
                     width));
  for (std::size_t i = 0; i < suggestions.found.size(); ++i) {
    lines.emplace_back();
    add_suggestion(lines, suggestions.found[i], i + 1, width, style);
  }
  lines.emplace_back();
  for (const Notice& notice : suggestions.notices)
    append(lines, wrap(sentence(notice_text(notice, style)), width));
  add_left_out(lines, suggestions, width, style);
  append(lines, wrap("Dates are forecasts for a normal winter. Bulbs are poisonous to eat unless "
                     "known not to be, and some hurt the skin: keep them from food, children and "
                     "animals. Plan the pot you choose (plan FILE) for depths, amounts, weight and "
                     "every caution.",
                     width));
  for (std::string& line : lines) line = in_style(line, style);
  return joined(lines);
}

}  // namespace bulbwright::report
