#include <algorithm>

#include <fmt/core.h>

#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"

namespace bulbwright::report {
namespace {

/// The kinds of a layer as it was asked for, by the names of the plan.
std::string kinds_text(const Plan& plan, const LayerRequest& asked, const TextStyle& style) {
  std::vector<std::string> names;
  for (const LayerPart& part : asked.parts) {
    const auto cold = std::find_if(plan.cold.begin(), plan.cold.end(),
                                   [&](const TaxonCold& kind) { return kind.taxon == part.taxon; });
    names.push_back(cold == plan.cold.end() ? part.taxon : several(in_style(cold->name, style)));
  }
  return listed(names);
}

}  // namespace

Lines note_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  std::vector<std::string> notes;
  if (!plan.request.pot.note.empty())
    notes.push_back(sentence(in_style(printable(plan.request.pot.note), style)));
  for (const LayerRequest& layer : plan.request.layers) {
    if (layer.note.empty()) continue;
    notes.push_back(sentence(fmt::format("{}: {}", kinds_text(plan, layer, style),
                                         in_style(printable(layer.note), style))));
  }
  return one_by_one("Your notes", notes, layout);
}

}  // namespace bulbwright::report
