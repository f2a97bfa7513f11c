#pragma once

#include "base/enum_words.hpp"

namespace bulbwright {

/// Where a figure comes from. published: seen in the named source; common_practice: a trade grade
/// or rule of thumb; from_memory: general knowledge, not checked.
enum class Origin { published, common_practice, from_memory };
constexpr auto enum_words(Origin) {
  return words_to<Origin::from_memory>("published", "common practice", "from memory");
}

}  // namespace bulbwright
