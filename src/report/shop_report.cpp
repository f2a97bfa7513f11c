#include "report/shop_report.hpp"

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

void put_text(Json& json, const char* key, const std::string& text) {
  if (!text.empty()) json[key] = text;
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

Json item_json(const ShoppingItem& item) {
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

std::string amount_cell(const ShoppingItem& item, double amount) {
  return item.unit == "l" ? fmt::format("{:.1f}", rounded(amount, 0.1))
                          : fmt::format("{:.0f}", amount);
}

}  // namespace

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
  for (const ShoppingItem& item : list.items) json["items"].push_back(item_json(item));
  return document_text(json);
}

std::string shop_csv(const ShoppingList& list) {
  std::string csv = "item,kind,unit,need,spares,buy,packs\r\n";
  for (const ShoppingItem& item : list.items) {
    std::string packs;
    for (const Pack& pack : item.packs) {
      packs += fmt::format("{}{} x {}", packs.empty() ? "" : " + ", pack.count, pack.size);
    }
    csv += fmt::format("{},{},{},{},{},{},{}\r\n", text_cell(full_name(item)), word_of(item.kind),
                       item.unit, amount_cell(item, item.need), item.spares, item.buy, packs);
  }
  return csv;
}

}  // namespace bulbwright::report
