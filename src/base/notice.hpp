#pragma once

#include <vector>

#include "base/detail.hpp"
#include "base/enum_words.hpp"

namespace bulbwright {

/// refusal: the plan cannot be carried out (exit 1). warning: it can, at a cost or a risk. note: an
/// assumption or a fact worth knowing.
enum class Severity { note, warning, refusal };
constexpr auto enum_words(Severity) {
  return words_to<Severity::refusal>("note", "warning", "refusal");
}

/// Everything that an answer may have to say about itself; report/notice_text has the sentence of
/// each and with it the figures it carries.
enum class NoticeCode {
  // cold
  never_refrigerate,
  storage_too_long,
  storage_long,
  storage_before_bulbs,
  storage_shortened,
  precooled_offered,
  under_chilled,
  less_than_recommended,
  weeks_would_help,
  chill_in_pot,
  storage_temperature,
  over_chilled,
  no_natural_cold,
  enough_winter,
  pot_freezes,
  // flowering
  no_flower,
  buds_blast,
  never_dated,
  one_kind_in_depths,
  // layers
  too_shallow,
  does_not_fit,
  no_room,
  close_together,
  thin_between,
  order_kept,
  flowers_before_layer_above,
  // companions
  hidden_by_leaves,
  leaf_mat,
  opposite_water,
  opposite_rest,
  opposite_light,
  // pot and place
  used_mix,
  hardiness,
  assumed,
  zone_alone,
  zone_stations,
  stations_blended,
  stations_far,
  offset_applied,
  record_offset,
  winter_wet,
  winter_dry,
  winter_assumed,
  normals_no_winter,
  gaps_filled,
  values_rejected,
  days_missing,
  // scheduling
  no_common_window,
  mix_warm,
  mix_too_warm,
  mix_frozen,
  wanted_day,
  wanted_day_off,
  wanted_day_missed,
  wanted_day_unreachable,
  wanted_window,
  wanted_window_part,
  spread,
  // suggest
  no_tulip_pot,
  none_known_safe,
  nothing_found,
};
/// The stable word of a code, for programs.
constexpr auto enum_words(NoticeCode) {
  return words_to<NoticeCode::nothing_found>(
      "never-refrigerate", "storage-too-long", "storage-long", "storage-before-bulbs",
      "storage-shortened", "precooled-offered", "under-chilled", "less-than-recommended",
      "weeks-would-help", "chill-in-pot", "storage-temperature", "over-chilled", "no-natural-cold",
      "enough-winter", "pot-freezes", "no-flower", "buds-blast", "never-dated",
      "one-kind-in-depths", "too-shallow", "does-not-fit", "no-room", "close-together",
      "thin-between", "order-kept", "flowers-before-layer-above", "hidden-by-leaves", "leaf-mat",
      "opposite-water", "opposite-rest", "opposite-light", "used-mix", "hardiness", "assumed",
      "zone-alone", "zone-stations", "stations-blended", "stations-far", "offset-applied",
      "record-offset", "winter-wet", "winter-dry", "winter-assumed", "normals-no-winter",
      "gaps-filled", "values-rejected", "days-missing", "no-common-window", "mix-warm",
      "mix-too-warm", "mix-frozen", "wanted-day", "wanted-day-off", "wanted-day-missed",
      "wanted-day-unreachable", "wanted-window", "wanted-window-part", "spread", "no-tulip-pot",
      "none-known-safe", "nothing-found");
}
inline constexpr std::size_t notice_codes = words_of<NoticeCode>().size();

/// Something an answer has to say about itself.
struct Notice {
  NoticeCode code = NoticeCode::assumed;
  Severity severity = Severity::note;
  std::vector<KindName> kinds{};  ///< that it is about; empty: the whole pot
  std::vector<Detail> details{};
  int layer = 0;  ///< 0: no layer alone

  bool operator==(const Notice&) const = default;
};

}  // namespace bulbwright
