#pragma once

#include "base/enum_words.hpp"

namespace bulbwright {

/// What a bulb is like when it goes into the pot. dry: roots come first, then the shoot grows.
/// rooted: potted for weeks, or lifted with its roots. in_growth: rooted with its nose up.
enum class BulbState { dry, rooted, in_growth };
constexpr auto enum_words(BulbState) {
  return words_to<BulbState::in_growth>("dry", "rooted", "in growth");
}

}  // namespace bulbwright
