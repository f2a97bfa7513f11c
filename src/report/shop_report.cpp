#include "report/shop_report.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "input/pot_file_writer.hpp"
#include "report/common_json.hpp"
#include "report/notice_text.hpp"
#include "report/section_json.hpp"
#include "report/spreadsheet.hpp"

namespace bulbwright::report {
namespace {

/// Whole numbers as integers, litres with their tenth.
Json amount_json(const ShoppingItem& item, double amount) {
  if (item.unit == "l") return rounded(amount, 0.1);
  return static_cast<int>(amount);
}

Json pot_json(const PotNeeds& pot, std::size_t index) {
  Json json{{"number", index + 1}};
  put_text(json, "name", pot.pot);
  put_text(json, "file", pot.file);
  json["ok"] = pot.ok;
  if (pot.reason) json["reason"] = plain_text(*pot.reason);
  Json layers = Json::array();
  for (const BulbNeed& bulbs : pot.bulbs) {
    Json layer{{"level", bulbs.layer}, {"taxon", bulbs.taxon}, {"name", bulbs.name}};
    put_text(layer, "grade", bulbs.grade);
    put_text(layer, "label", bulbs.label);
    layer["count"] = bulbs.count;
    layer["own"] = bulbs.own ? bulbs.count : 0;
    layers.push_back(std::move(layer));
  }
  json["layers"] = std::move(layers);
  json["mix_loose_litres"] = rounded(pot.mix_loose.value(), 0.1);
  json["perlite_litres"] = rounded(pot.perlite.value(), 0.1);
  json["mesh_mm"] = document_mm(pot.mesh);
  json["mesh_width_mm"] = document_mm(pot.mesh_width);
  json["pins"] = pot.pins;
  json["labels"] = pot.labels;
  return json;
}

Json share_json(const ShoppingItem& item, const ShoppingItem::Share& share) {
  Json json{{"pot_number", share.pot + 1}};
  if (share.layer > 0) json["layer"] = share.layer;
  json["need"] = amount_json(item, share.need);
  if (item.kind == ItemKind::bulb)
    json["own"] = share.own ? amount_json(item, share.need) : Json(0);
  return json;
}

std::string amount_cell(const ShoppingItem& item, double amount) {
  return item.unit == "l" ? fmt::format("{:.1f}", rounded(amount, 0.1))
                          : fmt::format("{:.0f}", amount);
}

/// The pot that takes all of it, by its name, file or number; empty where several do.
std::string only_pot(const ShoppingList& list, const ShoppingItem& item) {
  const std::size_t first = item.shares.front().pot;
  for (const ShoppingItem::Share& share : item.shares) {
    if (share.pot != first) return "";
  }
  const PotNeeds& pot = list.pots[first];
  return !pot.pot.empty() ? pot.pot : !pot.file.empty() ? pot.file : std::to_string(first + 1);
}

/// An item is a row, with one more for each further size of pack: amounts stand in the first alone,
/// so that columns can be added up.
std::string item_rows(const ShoppingList& list, const ShoppingItem& item) {
  const bool one_layer = item.shares.size() == 1 && item.shares.front().layer > 0;
  const std::string what =
      fmt::format("{},{},{},{},{},{}", text_cell(item.taxon),
                  text_cell(item.kind == ItemKind::bulb ? item.name : item.item), item.grade,
                  text_cell(item.label), text_cell(only_pot(list, item)),
                  one_layer ? std::to_string(item.shares.front().layer) : "");
  const std::string amounts =
      fmt::format("{},{},{},{}", amount_cell(item, item.need), item.own, item.spares, item.buy);
  const std::string_view kind = word_of(item.kind);
  std::string rows;
  for (std::size_t i = 0; i < std::max<std::size_t>(1, item.packs.size()); ++i) {
    const std::string pack =
        item.packs.empty() ? "," : fmt::format("{},{}", item.packs[i].size, item.packs[i].count);
    rows +=
        fmt::format("{},{},{},,{},{}\r\n", what, i == 0 ? amounts : ",,,", pack, kind, item.unit);
  }
  return rows;
}

}  // namespace

Json shop_item_object(const ShoppingItem& item) {
  Json json{{"item", item.item},     {"kind", word_of(item.kind)},
            {"unit", item.unit},     {"need", amount_json(item, item.need)},
            {"spares", item.spares}, {"buy", item.buy}};
  if (item.loss_rate) {
    json["loss_rate"] = rounded(*item.loss_rate, 0.001);
    json["loss_origin"] = item.loss_origin;
    json["own"] = item.own;
  }
  Json packs = Json::array();
  for (const Pack& pack : item.packs) {
    packs.push_back(Json{{"size", pack.size}, {"count", pack.count}});
  }
  json["packs"] = std::move(packs);
  put_text(json, "name", item.name);
  put_text(json, "grade", item.grade);
  put_text(json, "label", item.label);
  if (item.kind == ItemKind::mesh) {
    json["mesh_mm"] = document_mm(item.mesh);
    json["mesh_width_mm"] = document_mm(item.mesh_width);
    json["mesh_opening_mm"] = document_mm(item.mesh_opening);
  }
  Json shares = Json::array();
  for (const ShoppingItem::Share& share : item.shares) shares.push_back(share_json(item, share));
  json["shares"] = std::move(shares);
  return json;
}

std::string shop_json(const ShoppingList& list, std::span<const Request> requests) {
  Json json = document("bulbwright.shop/1");
  json["request"] = Json::array();
  for (const Request& request : requests)
    json["request"].push_back(input::pot_file_object(request));
  json["sure"] = nullptr;
  json["pots"] = Json::array();
  for (std::size_t i = 0; i < list.pots.size(); ++i)
    json["pots"].push_back(pot_json(list.pots[i], i));
  json["items"] = Json::array();
  for (const ShoppingItem& item : list.items) json["items"].push_back(shop_item_object(item));
  return document_text(json);
}

std::string shop_csv(const ShoppingList& list) {
  std::string csv =
      "taxon,name,grade_cm,label,pot,layer,need,own,spares,buy,pack,packs,price,kind,unit\r\n";
  for (const ShoppingItem& item : list.items) csv += item_rows(list, item);
  return csv;
}

}  // namespace bulbwright::report
