#pragma once

#include <optional>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/detail.hpp"
#include "base/enum_words.hpp"
#include "catalogue/taxon.hpp"
#include "climate/winter_rain.hpp"

namespace bulbwright {

/// What is to be done or seen on a day. The words are stable, for JSON.
enum class Task {
  order_by,       ///< have ordered
  bulbs_arrive,   ///< have them in the house, a week before they are needed
  storage_start,  ///< into the refrigerator
  storage_check,  ///< look over: firm, shrivelled, mouldy, rotten, sprouted
  pot_and_chill,  ///< moist-only kinds are potted and the pot chilled
  soak,           ///< hours before planting
  plant,
  water_in,
  top_up,  ///< mix has settled
  keep_moist,
  keep_from_rain,   ///< until the first noses, in a wet winter
  shelter,          ///< from hard frost
  uncover,          ///< lift mesh or cover at the first noses
  shoots,           ///< expected
  flower,           ///< a wave, first to last
  bring_in,         ///< forcing: from the cold to a light room
  after_flowering,  ///< discard, keep and feed, or dry off
};
constexpr auto enum_words(Task) {
  return words_to<Task::after_flowering>("order", "bulbs-arrive", "storage-start", "storage-check",
                                         "pot-and-chill", "soak", "plant", "water-in", "top-up",
                                         "keep-moist", "keep-from-rain", "shelter", "uncover",
                                         "shoots", "flower", "bring-in", "after-flowering");
}

struct PlannedDate {
  Day date;
  std::optional<Day> until;
  Task task = Task::plant;
  std::vector<KindName> kinds{};  ///< one, or none for the whole pot
  int layer = 0;                  ///< 0: the whole pot
  std::optional<AfterFlowering> after{};
  WinterRain winter = WinterRain::ordinary;  ///< of keep_moist
  std::vector<Detail> details{};
};

}  // namespace bulbwright
