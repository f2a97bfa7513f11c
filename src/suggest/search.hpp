#pragma once

#include <array>
#include <compare>
#include <map>
#include <vector>

#include "layers/layering.hpp"
#include "pot/pot.hpp"
#include "suggest/candidates.hpp"

namespace bulbwright {

/// What a stack is worth, best first, compared in the order of the members.
struct StackKey {
  int days_in_flower = 0;  ///< longest run in the window, negated
  double storage_weeks = 0.0;
  int days_open = 0;    ///< in the window, negated
  int flower_days = 0;  ///< sum over the waves of their days in the window, negated
  double cost = 0.0;    ///< of planting, to 0.1
  std::size_t day = 0;
  auto operator<=>(const StackKey&) const = default;
};

/// A set of kinds on its best planting day.
struct RankedStack {
  std::vector<std::size_t> kinds;  ///< indices of candidates, rising
  StackKey key;
};

/// How a set of kinds lies in the pot, bottom layer first.
struct PlacedStack {
  bool fits = false;
  std::size_t size = 0;
  std::array<std::size_t, most_suggested_layers> kinds{};  ///< candidates
  std::array<int, most_suggested_layers> deeper_cm{};      ///< than each is usually planted
};

/// Which ordered stacks fit a pot, and how deep their kinds then lie; remembered.
class DepthCheck {
 public:
  DepthCheck(const Candidates& candidates, const Catalogue& catalogue, const Pot& pot);
  /// `kinds`, at most most_suggested_layers, planted on a day, in the order of their peaks at the
  /// usual depth.
  const PlacedStack& placed(const std::vector<std::size_t>& kinds, std::size_t day);

 private:
  [[nodiscard]] PlacedStack ordered(const std::vector<std::size_t>& kinds, std::size_t day) const;

  const Candidates& candidates_;
  const Pot& pot_;
  std::vector<ResolvedLayer> layers_;  ///< by candidate
  std::map<std::array<std::size_t, most_suggested_layers>, PlacedStack> known_;
};

struct StackSearch {
  int looked_at = 0;
  std::vector<RankedStack> ranked;  ///< every set that meets the requirements, best first
};

/// All sets of 1 to wish.most_layers candidates on all their common days, each at the depth that it
/// has in the stack.
StackSearch search_stacks(const Candidates& candidates, DepthCheck& depth,
                          const PlantedDeeper& planted, const SuggestionWish& wish);

}  // namespace bulbwright
