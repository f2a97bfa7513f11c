#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/quantity.hpp"
#include "season/bag.hpp"
#include "season/season_pot.hpp"

namespace bulbwright {

/// How to make everything fit into the drawer: the least change that alone removes the overflow, of
/// each sort, or several together where none alone does.

struct RoomChange {
  enum class Sort {
    plant_later,   ///< a pot, whose bags then go in later as well
    buy_precooled  ///< a kind, delivered for the day of planting
  };
  Sort sort = Sort::plant_later;
  std::vector<std::size_t> pots;  ///< one to be planted later, or all whose bag is bought precooled
  // plant_later
  Day plant_before, plant;
  int days_in_flower_before = 0, days_in_flower = 0;
  // buy_precooled
  std::string taxon, name;
  int bulbs = 0;

  [[nodiscard]] int days_later() const { return plant - plant_before; }
};

struct RoomAdvice {
  std::optional<RoomChange> later;      ///< the fewest weeks, then the fewest days of flower lost
  std::optional<RoomChange> precooled;  ///< the fewest bulbs
  /// Where neither of them is: changes that together remove it, the most helpful first; as far as
  /// they help where nothing does.
  std::vector<RoomChange> together;
  Litres still_lacking;  ///< after all of `together`; 0 where they are enough
};

/// A pot planned again for another day of planting; nothing where that cannot be.
using Replan = std::function<std::shared_ptr<const Plan>(std::size_t pot, Day plant)>;

/// No pot waits longer than this. common practice: bulbs planted two months late flower poorly
inline constexpr int most_weeks_later = 8;
/// No more changes than this are worth telling.
inline constexpr std::size_t most_changes = 8;

/// Every week up to most_weeks_later for every pot that has no wanted day, and every bag and every
/// kind bought precooled, are tried on the days of the refrigerator; what would fit is planned anew
/// for its day, and is taken where the new plan still fits, can be carried out and lets flower
/// whatever flowered. `bags` is what the pots' plans hold; what is the grower's own cannot be
/// bought otherwise. Nothing where all fits. Linear in bags but for the plans made anew, of which
/// there are at most a hundred.
RoomAdvice advise_room(std::span<const SeasonPot> pots, std::span<const Bag> bags, Litres capacity,
                       const Catalogue& catalogue, const Replan& replan);

}  // namespace bulbwright
