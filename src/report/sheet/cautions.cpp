#include <algorithm>
#include <utility>

#include <fmt/core.h>

#include "report/notice_text.hpp"
#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// The texts one to a line beside `label`, or as one flowing text when set close.
Lines one_by_one(const char* label, const std::vector<std::string>& texts,
                 const SheetLayout& layout) {
  if (layout.closeness >= 1) {
    std::string all;
    for (const std::string& text : texts) all += (all.empty() ? "" : " ") + text;
    return labelled(label, all, layout);
  }
  Lines lines;
  for (const std::string& text : texts) {
    append(lines, labelled(lines.empty() ? label : "", text, layout));
  }
  return lines;
}

std::string lifting_text(const PlanMaterials& materials, const TextStyle& style) {
  if (materials.filled_weight <= Kilograms{0.0}) return "";
  std::string text = fmt::format("Weighs {}", weight_text(materials.filled_weight, style));
  if (materials.filled_weight_high > materials.filled_weight) {
    text += fmt::format(
        " ({})", weights_text(materials.filled_weight_low, materials.filled_weight_high, style));
  }
  text += " filled and watered";
  if (materials.lifting == LiftVerdict::one_person) {
    text += fmt::format(": one person may lift {}", weight_text(materials.lift_one, style));
  } else if (materials.lifting == LiftVerdict::two_people) {
    text += fmt::format(": two people may lift {}", weight_text(materials.lift_two, style));
  } else {
    text += ": do not lift it";
  }
  return text + ".";
}

/// Notes printed when there is no room for all.
constexpr std::size_t most_notes = 3;

}  // namespace

Lines material_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  const PlanMaterials& materials = plan.materials;
  std::string text;
  const auto say = [&](const std::string& part) { text += (text.empty() ? "" : " ") + part; };
  if (materials.mix_loose > Litres{0.0}) {
    std::string mix = volume_text(materials.mix_loose, style) + ", loose";
    if (materials.perlite > Litres{0.0}) {
      mix += fmt::format(", {} of it perlite", volume_text(materials.perlite, style));
    }
    say(mix + ".");
  }
  if (materials.mesh_disc > Millimetres{0.0}) {
    const std::string length = length_text(materials.mesh_disc, style);
    const std::string width = length_text(materials.mesh_width, style);
    std::string mesh = length == width ? fmt::format("Wire mesh {} across", length)
                                       : fmt::format("Wire mesh {} by {}", length, width);
    if (materials.mesh_opening > Millimetres{0.0}) {
      mesh += fmt::format(", holes {} at most", length_text(materials.mesh_opening, style));
    }
    if (materials.pins > 0) mesh += "; " + counted(materials.pins, "pin", "pins");
    say(mesh + ".");
  }
  if (materials.labels > 0) say(counted(materials.labels, "label", "labels") + ".");
  if (const std::string lifting = lifting_text(materials, style); !lifting.empty()) say(lifting);
  return labelled("Mix", text, layout);
}

Lines notice_lines(const Plan& plan, const SheetLayout& layout) {
  std::vector<std::string> warnings, notes;
  for (const Notice& notice : layout.closeness >= 1 ? merged(plan.notices) : plan.notices) {
    if (notice.severity == Severity::refusal && !plan.ok) continue;
    (notice.severity == Severity::note ? notes : warnings)
        .push_back(sentence(in_style(notice_text(notice, layout.style), layout.style)));
  }
  if (layout.closeness >= closest_layout && notes.size() > most_notes) {
    const std::size_t more = notes.size() - most_notes;
    notes.resize(most_notes);
    notes.push_back(fmt::format("{} more in the full list (--format json).", more));
  }
  Lines lines = one_by_one("Mind", warnings, layout);
  append(lines, one_by_one("Note", notes, layout));
  return lines;
}

Lines caution_lines(const Plan& plan, const SheetLayout& layout) {
  std::vector<std::pair<CautionSeverity, std::string>> sorted;
  for (const Caution& caution : plan.cautions) {
    if (caution.short_text.empty())
      continue;  // another caution says it, or it is for the full list
    const std::string text = sentence(in_style(caution_line(caution, layout.style), layout.style));
    const bool said = std::any_of(sorted.begin(), sorted.end(),
                                  [&](const auto& other) { return other.second == text; });
    if (!said) sorted.emplace_back(caution.severity, text);
  }
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> texts;
  int left_out = 0;
  for (const auto& [severity, text] : sorted) {
    if (severity == CautionSeverity::low && layout.closeness >= closest_layout - 1) {
      ++left_out;
    } else {
      texts.push_back(text);
    }
  }
  if (left_out > 0)
    texts.push_back(fmt::format("{} more in the full list (--format json).", left_out));
  if (layout.closeness < 2) return one_by_one("Take care", texts, layout);
  const char* bullet = layout.style.utf8 ? " •\u00A0" : " *\u00A0";
  std::string all = texts.empty() ? "" : "Take care:";
  for (const std::string& text : texts) all += bullet + text;
  Lines lines = wrap(all, layout.width);
  constexpr std::string_view label = "Take care:";
  if (!lines.empty()) lines[0] = bold(label, layout.style) + lines[0].substr(label.size());
  return lines;
}

}  // namespace bulbwright::report
