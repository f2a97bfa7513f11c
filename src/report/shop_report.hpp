#pragma once

#include <span>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "plan/request.hpp"
#include "report/text_style.hpp"
#include "shopping/shopping.hpp"

namespace bulbwright::report {

/// The list as the JSON document "bulbwright.shop/1" (docs/schema/shop.schema.json). Bulbs and
/// pieces are whole numbers, litres to 0.1. `sure` is null: a flat rate has no probability.
/// `requests`: what was asked of each pot, in the order of the list.
std::string shop_json(const ShoppingList& list, std::span<const Request> requests);

/// A line of the list, as in that document.
nlohmann::ordered_json shop_item_object(const ShoppingItem& item);

/// "Triumph tulip, 12 cm, TT26": as a shop assistant would look for it.
std::string shop_item_text(const ShoppingItem& item, const TextStyle& style);

/// RFC 4180 with the header
/// taxon,name,grade_cm,label,pot,layer,need,own,spares,buy,pack,packs,price,kind,unit; one fact a
/// column: a size of pack a row, amounts in the first row of an item; pot and layer where one alone
/// takes it; `price` is empty, since none is known. Texts are kept from being taken for formulas.
std::string shop_csv(const ShoppingList& list);

/// The list for people: what to buy, then which pot and layer takes what.
std::string shop_text(const ShoppingList& list, const TextStyle& style);

}  // namespace bulbwright::report
