#include "shopping/shopping.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>

#include <fmt/core.h>

namespace bulbwright {
namespace {

/// Whole units that cover `amount`, which is first rounded so that 40.0000000001 litres are 40.
int whole(double amount) {
  return static_cast<int>(std::ceil(rounded(amount, 0.1) - 1e-9));
}

std::vector<ShoppingItem> bulb_items(std::span<const PotNeeds> pots,
                                     std::span<const PackSizes> packs, double rate) {
  std::map<std::tuple<std::string, std::string, std::string>, ShoppingItem> items;
  std::map<std::string, std::string> genera;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!pots[pot].ok) continue;
    for (const BulbNeed& bulbs : pots[pot].bulbs) {
      ShoppingItem& item = items[{bulbs.taxon, bulbs.grade, bulbs.label}];
      if (item.item.empty()) {
        item.item = bulbs.taxon;
        item.unit = "bulb";
        item.taxon = bulbs.taxon;
        item.name = bulbs.name;
        item.grade = bulbs.grade;
        item.label = bulbs.label;
        item.loss_rate = rate;
        item.loss_origin = "flat rate";
        genera[bulbs.taxon] = bulbs.genus;
      }
      item.need += bulbs.count;
      if (bulbs.own) item.own += bulbs.count;
      item.shares.push_back({pot, bulbs.layer, static_cast<double>(bulbs.count), bulbs.own});
    }
  }
  std::vector<ShoppingItem> result;
  for (auto& [key, item] : items) {
    const int lacking = static_cast<int>(item.need) - item.own;
    item.spares = flat_spares(lacking, rate);
    item.buy = lacking + item.spares;
    const auto sizes = sizes_for(packs, ItemKind::bulb, item.taxon, genera[item.taxon]);
    if (!sizes.empty()) item.packs = fewest_packs(item.buy, sizes);
    result.push_back(std::move(item));
  }
  return result;
}

/// An item that each pot takes an amount of; not listed where none does.
void add_amount(std::vector<ShoppingItem>& items, std::span<const PotNeeds> pots,
                std::span<const PackSizes> packs, ShoppingItem item,
                double (*amount)(const PotNeeds&)) {
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    const double need = rounded(amount(pots[pot]), 0.1);
    if (!pots[pot].ok || need <= 0.0) continue;
    item.need += need;
    item.shares.push_back({pot, 0, need, false});
  }
  if (item.shares.empty()) return;
  item.need = rounded(item.need, 0.1);
  item.buy = whole(item.need);
  const auto sizes = sizes_for(packs, item.kind, "", "");
  if (!sizes.empty()) item.packs = fewest_packs(item.buy, sizes);
  items.push_back(std::move(item));
}

ShoppingItem plain_item(ItemKind kind, std::string item, std::string unit) {
  ShoppingItem result;
  result.kind = kind;
  result.item = std::move(item);
  result.unit = std::move(unit);
  return result;
}

/// One line per length, width and opening, in that order.
void add_mesh(std::vector<ShoppingItem>& items, std::span<const PotNeeds> pots) {
  std::map<std::array<double, 3>, ShoppingItem> sizes;
  const auto add = [&](std::size_t pot, Millimetres length, Millimetres across, Millimetres holes) {
    const double size = rounded(length.value(), 1.0);
    const double width = rounded(across.value(), 1.0);
    const double opening = rounded(holes.value(), 1.0);
    if (!pots[pot].ok || size <= 0.0) return;
    ShoppingItem& item = sizes[{size, width, opening}];
    if (item.item.empty()) {
      const std::string sides =
          size == width ? fmt::format("{:.0f}", size) : fmt::format("{:.0f} x {:.0f}", size, width);
      item = plain_item(ItemKind::mesh,
                        fmt::format("wire mesh {} mm, openings at most {:.0f} mm", sides, opening),
                        "piece");
      item.mesh = Millimetres{size};
      item.mesh_width = Millimetres{width};
      item.mesh_opening = Millimetres{opening};
    }
    item.need += 1.0;
    item.buy += 1;
    item.shares.push_back({pot, 0, 1.0, false});
  };
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    const PotNeeds& needs = pots[pot];
    add(pot, needs.mesh, needs.mesh_width, needs.mesh_opening);
    add(pot, needs.mesh_beneath, needs.mesh_beneath_width, needs.mesh_beneath_opening);
  }
  for (auto& [key, item] : sizes) items.push_back(std::move(item));
}

}  // namespace

ShoppingList shopping_list(std::vector<PotNeeds> pots, std::span<const PackSizes> packs,
                           double rate) {
  ShoppingList list;
  list.flat_rate = rate;
  list.items = bulb_items(pots, packs, rate);
  const auto add = [&](ItemKind kind, const char* item, const char* unit,
                       double (*amount)(const PotNeeds&)) {
    add_amount(list.items, pots, packs, plain_item(kind, item, unit), amount);
  };
  add(ItemKind::mix, "potting mix", "l", [](const PotNeeds& pot) { return pot.mix.value(); });
  add(ItemKind::amendment, "perlite", "l", [](const PotNeeds& pot) { return pot.perlite.value(); });
  add_mesh(list.items, pots);
  add(ItemKind::pin, "mesh pins", "piece",
      [](const PotNeeds& pot) { return static_cast<double>(pot.pins); });
  add(ItemKind::label, "plant labels", "piece",
      [](const PotNeeds& pot) { return static_cast<double>(pot.labels); });
  list.pots = std::move(pots);
  return list;
}

}  // namespace bulbwright
