// shop_text(): the shopping list for people.
#include <algorithm>

#include <fmt/core.h>

#include "catalogue/taxon.hpp"
#include "report/notice_text.hpp"
#include "report/sheet/words.hpp"
#include "report/shop_report.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

constexpr int number_width = 7;
constexpr int packs_width = 22;
constexpr int narrow_width = 64;

std::string pot_name(const PotNeeds& pot, std::size_t index) {
  if (!pot.pot.empty()) return printable(pot.pot);
  return pot.file.empty() ? fmt::format("pot {}", index + 1) : printable(pot.file);
}

/// "30.4 l", or with inches "28 qt"; pieces as a number.
std::string amount(const ShoppingItem& item, double value, const TextStyle& style) {
  if (item.unit != "l") return fmt::format("{:.0f}", value);
  if (style.units == Units::inches) return volume_text(Litres{value}, style);
  return fmt::format("{:.1f} l", rounded(value, 0.1));
}

/// The size of a pack, or what is bought in whole ones.
std::string whole_amount(const ShoppingItem& item, int value, const TextStyle& style) {
  if (item.unit != "l") return fmt::format("{}", value);
  if (style.units == Units::inches) return volume_text(Litres{static_cast<double>(value)}, style);
  return fmt::format("{}\u00A0l", value);
}

std::string packs_text(const ShoppingItem& item, const TextStyle& style) {
  std::string text;
  for (const Pack& pack : item.packs) {
    text += fmt::format("{}{}\u00A0×\u00A0{}", text.empty() ? "" : " + ", pack.count,
                        whole_amount(item, pack.size, style));
  }
  return text;
}

/// One row of the table; name and packs wrap in their columns. On a narrow page the packs go under
/// the row.
void add_row(Lines& lines, const std::string& name, const std::string (&numbers)[3],
             const std::string& packs, int width) {
  const bool narrow = width < narrow_width;
  const int name_width = width - 3 * number_width - (narrow ? 0 : packs_width + 2);
  const Lines names = wrap(name, name_width);
  const Lines pack_lines = narrow ? Lines{} : wrap(packs, packs_width);
  const std::size_t rows = std::max({names.size(), pack_lines.size(), std::size_t{1}});
  for (std::size_t i = 0; i < rows; ++i) {
    std::string line = pad_right(i < names.size() ? names[i] : "", name_width);
    for (const std::string& number : numbers) line += pad_left(i == 0 ? number : "", number_width);
    if (i < pack_lines.size()) line += "  " + pack_lines[i];
    lines.push_back(std::move(line));
  }
  if (narrow && !packs.empty()) append(lines, hanging("", packs, 4, width));
}

void add_shares(Lines& lines, const ShoppingList& list, const ShoppingItem& item, int width,
                const TextStyle& style) {
  for (const ShoppingItem::Share& share : item.shares) {
    const PotNeeds& pot = list.pots[share.pot];
    std::string text = amount(item, share.need, style) + "\u00A0" + pot_name(pot, share.pot);
    if (pot.layers > 1) {
      text +=
          fmt::format(", {} layer", layer_word(share.layer, static_cast<std::size_t>(pot.layers)));
    }
    if (share.own) text += " (your own)";
    append(lines, hanging("", text, 4, width));
  }
}

/// Table rows of bulbs, each with its pots, or of everything else.
Lines table(const ShoppingList& list, bool bulbs, const TextStyle& style, int width) {
  Lines lines;
  for (const ShoppingItem& item : list.items) {
    if ((item.kind == ItemKind::bulb) != bulbs) continue;
    add_row(lines, capitalised(shop_item_text(item, style)),
            {amount(item, item.need, style), bulbs ? std::to_string(item.spares) : "",
             whole_amount(item, item.buy, style)},
            packs_text(item, style), width);
    if (bulbs) add_shares(lines, list, item, width, style);
  }
  return lines;
}

Lines closing(const ShoppingList& list, const TextStyle& style, int width) {
  Lines lines;
  const auto percent = static_cast<int>(rounded(list.flat_rate * 100.0, 1.0));
  append(lines,
         wrap(fmt::format("Spares: {} % of the bulbs to buy, rounded up (a flat rate, common "
                          "practice; no losses of your own are known). Packs: the usual sizes, the "
                          "fewest bulbs over; your shop may have others.",
                          percent),
              width));
  for (std::size_t i = 0; i < list.pots.size(); ++i) {
    const PotNeeds& pot = list.pots[i];
    if (pot.ok) continue;
    lines.emplace_back();
    append(lines, wrap(fmt::format("Nothing is listed for {}, which cannot be planted as asked{}{}",
                                   pot_name(pot, i), pot.reason ? ": " : "",
                                   pot.reason ? sentence(notice_text(*pot.reason, style)) : "."),
                       width));
  }
  return lines;
}

}  // namespace

std::string shop_item_text(const ShoppingItem& item, const TextStyle& style) {
  if (item.kind == ItemKind::mesh) {
    const std::string length = length_text(item.mesh, style),
                      width = length_text(item.mesh_width, style),
                      opening = length_text(item.mesh_opening, style);
    return length == width
               ? fmt::format("wire mesh {} across, holes {} at most", length, opening)
               : fmt::format("wire mesh {} by {}, holes {} at most", length, width, opening);
  }
  if (item.kind != ItemKind::bulb) return item.item;
  std::string text = plain_name(item.name);
  if (!item.grade.empty()) text += ", " + grade_text(item.grade, style);
  if (!item.label.empty()) text += ", " + printable(item.label);
  return text;
}

std::string shop_text(const ShoppingList& list, const TextStyle& style) {
  const int width = text_width(style);
  Lines lines{fmt::format("Shopping list for {}",
                          counted(static_cast<int>(list.pots.size()), "pot", "pots")),
              ""};
  const Lines bulbs = table(list, true, style, width), rest = table(list, false, style, width);
  if (!bulbs.empty() || !rest.empty()) {
    add_row(lines, bulbs.empty() ? "Materials" : "Bulbs", {"need", "spares", "buy"}, "in packs of",
            width);
  }
  append(lines, bulbs);
  if (!rest.empty()) {
    if (!bulbs.empty()) {
      lines.emplace_back();
      lines.emplace_back("Materials");
    }
    append(lines, rest);
  }
  lines.emplace_back();
  append(lines, closing(list, style, width));
  for (std::string& line : lines) line = in_style(line, style);
  lines.front() = bold(lines.front(), style);
  return joined(lines);
}

}  // namespace bulbwright::report
