// The words of the year's tasks.
#include "report/date_text.hpp"

#include "report/sheet/words.hpp"
#include "report/text_layout.hpp"
#include "report/wording.hpp"

namespace bulbwright::report {
namespace {

using enum Task;

constexpr WordRow<Task> full[] = {
    {order_by, "have the bulbs ordered"},
    {bulbs_arrive,
     "have the bulbs in the house; look them over, keep them dry, airy[ and under {highest}]"},
    {storage_start, "refrigerate {kinds}"},
    {storage_check,
     "every week: toss rotten bulbs, wipe mouldy ones, note shrivelled and sprouted ones"},
    {pot_and_chill, "pot {kinds} and keep the pot cold and moist"},
    {soak, "soak {kinds} for {hours} hours in cool water before planting"},
    {plant, "plant, bottom layer first"},
    {water_in, "water in until it runs from the hole"},
    {top_up, "top up with mix where it has settled"},
    {keep_moist, "keep the mix moist, not wet; look once a week"},
    {keep_from_rain,
     "in long rain keep the pot under a roof edge while the mix is soaked; see that water runs "
     "out"},
    {shelter,
     "in a hard winter the pot freezes through: wrap it or move it to a cold, frost-free place"},
    {uncover, "lift the mesh when the first noses show"},
    {shoots, "first noses of {kinds}"},
    {flower, "{kinds} in flower"},
    {bring_in, "bring {kinds} in to a light, cool room"},
};

/// For what other parts of a sheet tell more of.
constexpr WordRow<Task> brief[] = {
    {bulbs_arrive, "have the bulbs in the house, airy and cool"},
    {storage_check, "look the stored bulbs over every week"},
    {plant, "plant"},
    {water_in, "water in"},
    {top_up, "top up the mix"},
    {keep_moist, "keep moist, not wet"},
};

constexpr const char* moist_in_wet =
    "rain waters the pot; look once a week, and water under a roof when the top of the mix is dry";
constexpr const char* moist_in_dry =
    "too little rain: look twice a week; water when the top of the mix is dry and not frozen";

const char* after_words(AfterFlowering after) {
  switch (after) {
    case AfterFlowering::discard:
      return "discard {kinds} (annuals here)";
    case AfterFlowering::keep:
      return "{kinds}: cut dead flowers, feed, and keep until the leaves are yellow";
    case AfterFlowering::dry_off:
      break;
  }
  return "{kinds}: let the pot dry off once the leaves yellow";
}

}  // namespace

std::string date_text(const PlannedDate& date, const TextStyle& style) {
  const Said said{date.kinds, date.details};
  if (date.task == keep_moist && date.winter != WinterRain::ordinary)
    return date.winter == WinterRain::wet ? moist_in_wet : moist_in_dry;
  if (date.task == after_flowering)
    return worded(after_words(date.after.value_or(AfterFlowering::keep)), said, style);
  return from_table<Task>(full, date.task, said, style);
}

std::string short_date_text(const PlannedDate& date, const TextStyle& style) {
  for (const WordRow<Task>& row : brief) {
    if (date.winter != WinterRain::ordinary) break;
    if (row.code == date.task) return row.pattern;
  }
  return date_text(date, style);
}

std::string plain_text(const PlannedDate& date) {
  return plain_spaces(date_text(date, TextStyle{}));
}

std::string first_noses_text(const PlannedDate& date) {
  if (date.kinds.empty()) return "first noses";
  return fmt::format("first noses, {} first", several(date.kinds.front().name));
}

}  // namespace bulbwright::report
