#pragma once

#include "base/enum_words.hpp"

namespace bulbwright {

/// outdoors: the pot stands out; forcing: brought indoors to flower.
enum class Use { outdoors, forcing };
constexpr auto enum_words(Use) {
  return words_to<Use::forcing>("outdoors", "forcing");
}

}  // namespace bulbwright
