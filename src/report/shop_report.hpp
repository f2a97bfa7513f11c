#pragma once

#include <span>
#include <string>

#include "plan/request.hpp"
#include "report/text_style.hpp"
#include "shopping/shopping.hpp"

namespace bulbwright::report {

/// The list as the JSON document "bulbwright.shop/1" (docs/schema/shop.schema.json). Bulbs and
/// pieces are whole numbers, litres to 0.1. `sure` is null: a flat rate has no probability.
/// `requests`: what was asked of each pot, in the order of the list.
std::string shop_json(const ShoppingList& list, std::span<const Request> requests);

/// RFC 4180 with the header item,kind,unit,need,spares,buy,packs; packs as "2 x 25 + 1 x 10". Texts
/// of the grower are kept from being taken for formulas.
std::string shop_csv(const ShoppingList& list);

/// The list for people: what to buy, then which pot and layer takes what.
std::string shop_text(const ShoppingList& list, const TextStyle& style);

}  // namespace bulbwright::report
