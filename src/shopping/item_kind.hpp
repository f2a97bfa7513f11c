#pragma once

#include "base/enum_words.hpp"

namespace bulbwright {

/// What a line of the shopping list is.
enum class ItemKind { bulb, mix, amendment, mesh, pin, label };
constexpr auto enum_words(ItemKind) {
  return words_to<ItemKind::label>("bulb", "mix", "amendment", "mesh", "pin", "label");
}

}  // namespace bulbwright
