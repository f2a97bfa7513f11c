#pragma once

#include <vector>

#include "base/detail.hpp"

namespace bulbwright {

/// refusal: the plan cannot be carried out (exit 1). warning: it can, at a cost or a risk. note: an
/// assumption or a fact worth knowing.
enum class Severity { note, warning, refusal };
const char* to_string(Severity severity);

/// Everything that an answer may have to say about itself; report/notice_text has the sentence of
/// each and with it the figures it carries.
enum class NoticeCode {
  // cold
  never_refrigerate,
  storage_too_long,
  storage_long,
  storage_before_bulbs,
  storage_shortened,
  under_chilled,
  less_than_recommended,
  chill_in_pot,
  storage_temperature,
  over_chilled,
  no_natural_cold,
  enough_winter,
  pot_freezes,
  // flowering
  no_flower,
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
  normals_no_winter,
  gaps_filled,
  values_rejected,
  days_missing,
  // scheduling
  no_common_window,
  mix_warm,
  mix_too_warm,
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
inline constexpr std::size_t notice_codes = static_cast<std::size_t>(NoticeCode::nothing_found) + 1;
/// The stable word of a code, for programs: "no-flower".
const char* to_string(NoticeCode code);

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
