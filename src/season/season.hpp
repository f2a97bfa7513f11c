#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/quantity.hpp"
#include "catalogue/catalogue.hpp"
#include "caution/caution.hpp"
#include "season/bag.hpp"
#include "season/calendar.hpp"
#include "season/filling.hpp"
#include "season/flowers.hpp"
#include "season/make_room.hpp"
#include "season/refrigerator.hpp"
#include "season/season_pot.hpp"
#include "shopping/shopping.hpp"

namespace bulbwright {

/// What is asked of a season beside its pots.
struct SeasonAsk {
  std::optional<Litres> drawer;       ///< room in the refrigerator, above 0
  std::optional<double> hours_a_day;  ///< for filling pots, above 0
};

struct Refrigerator {
  std::optional<Litres> capacity;
  std::vector<Bag> bags;  ///< by day in, pots in their order
  std::vector<FridgeWeek> weeks;
  std::vector<FridgeOverflow> overflow;  ///< none without a capacity
  Litres most;                           ///< on the fullest day
  RoomAdvice advice;
};

/// Many pots at once: the answer of `season`. Data only, nothing left to a renderer.
struct Season {
  SeasonAsk ask;
  std::vector<SeasonPot> pots;
  std::vector<SeasonJob> calendar;
  std::vector<JobDay> days;  ///< the calendar as people read it
  std::vector<JobWeek> weeks;
  Refrigerator refrigerator;
  Filling filling;
  Flowers flowers;
  std::vector<Flowers> groups;
  ShoppingList shopping;  ///< one list; its pots are those of the season, in their order
  std::vector<Caution> cautions;

  /// Every pot can be planted as asked.
  [[nodiscard]] bool ok() const;
};

/// What a season is a function of, besides its pots; all of it must outlive the call.
struct SeasonContext {
  const Catalogue& catalogue;
  std::span<const PackSizes> packs;
  std::span<const CautionRule> cautions;
  const Replan& replan;
};

/// Puts the plans of many pots together. Linear in the pots but for sorting.
Season make_season(std::vector<SeasonPot> pots, const SeasonAsk& ask, const SeasonContext& context);

}  // namespace bulbwright
