#pragma once

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/enum_words.hpp"
#include "base/quantity.hpp"

namespace bulbwright {

/// What is said to a person is data until report writes the sentence: a code, the kinds it is said
/// of, and figures with their units.

/// A kind of bulb that something is said of.
struct KindName {
  std::string taxon;  ///< id
  std::string name;   ///< as the catalogue writes it

  bool operator==(const KindName&) const = default;
};

/// What a detail means in its sentence.
enum class DetailName {
  advice,     ///< what to do
  air,        ///< temperature of the air
  all,        ///< of which `open`, or the whole
  available,  ///< first day bulbs can be had
  before,     ///< without the wish
  after,      ///< with the wish
  asked,      ///< by the grower
  chance,     ///< winters of a hundred
  changes,
  closed,  ///< kinds not open
  count,
  day,
  day_limit,
  daytimes,  ///< difference of the daily maxima
  days,
  distance,
  drop,  ///< kinds to leave out
  eaters,
  expect,
  flowers,  ///< height of the flowers
  gap,
  genus,
  given,  ///< weeks of cold
  height,
  highest,
  hour_limit,
  hours,
  hurtful,  ///< temperature below which harm is done
  january,  ///< difference in January
  july,     ///< difference in July
  lacking,  ///< weeks of cold
  last,
  least,
  leaves,  ///< height of the leaves
  limit,   ///< what keeps it from nearer
  lowest,
  material,
  mild,  ///< kinds that do least harm
  mix,   ///< temperature of the mix
  most,
  mouths,
  nearest,  ///< day
  needed,   ///< hardiness zone
  nights,   ///< difference of the daily minima
  off,      ///< days from what is wanted, negative before it
  open,
  other,  ///< the other kind
  over,   ///< mix over the noses
  place,
  planted,
  possible,  ///< weeks
  predicted,
  rain,  ///< a month
  region,
  share,
  start,
  stations,
  stored,
  usual,
  wanted,
  weather,  ///< difference that it alone makes
  why,
  window,
  windows,
  winter,
  winters,
  yearly,  ///< difference between years
  zone,
  zones,
};
/// The name as it stands in a sentence's pattern.
constexpr auto enum_words(DetailName) {
  return words_to<DetailName::zones>(
      "advice", "air", "all", "available", "before", "after", "asked", "chance", "changes",
      "closed", "count", "day", "day_limit", "daytimes", "days", "distance", "drop", "eaters",
      "expect", "flowers", "gap", "genus", "given", "height", "highest", "hour_limit", "hours",
      "hurtful", "january", "july", "lacking", "last", "least", "leaves", "limit", "lowest",
      "material", "mild", "mix", "most", "mouths", "nearest", "needed", "nights", "off", "open",
      "other", "over", "place", "planted", "possible", "predicted", "rain", "region", "share",
      "start", "stations", "stored", "usual", "wanted", "weather", "why", "window", "windows",
      "winter", "winters", "yearly", "zone", "zones");
}

struct Remark;

/// Counts and days are int, plain numbers double, names of things that have no words of their own
/// (a genus, a place) text.
using DetailValue =
    std::variant<int, double, Weeks, Millimetres, Celsius, Kelvins, Litres, Day, DayWindow,
                 std::string, std::vector<KindName>, std::vector<Remark>>;

struct Detail {
  DetailName name = DetailName::count;
  DetailValue value;

  /// Written out, here as for Remark: each holds the other, and clang 14 never ends at "= default".
  bool operator==(const Detail&) const;
};

/// The figure of that name, or nullptr.
const DetailValue* find_detail(std::span<const Detail> details, DetailName name);

/// Things said that are no notices: what bounds a window, why a kind is left out, how winters were
/// made, and parts of notices.
enum class RemarkCode {
  // a winter
  mild_winter,
  hard_winter,
  // what little cold does
  few_flowers,
  late_flowers,
  // how bulbs were treated
  treated_cold,
  treated_forced,
  treated_in_growth,
  // assumed of a pot
  base_share,
  height_share,
  half_depth,
  outer_sizes,
  usual_material,
  // a kind's planting days
  kind_days,
  kind_without_days,
  // what bounds planting days
  days_end,
  open_to_the_end,
  days_for_all,
  no_day_for_all,
  too_warm_to_root,
  too_little_cold,
  too_near_frost,
  not_to_be_had,
  // what to do about warm mix
  wait_for_day,
  keep_in_shade,
  treat_as_annuals,
  // what keeps flowers from a wanted day
  limit_bulbs,
  limit_mix,
  limit_frost,
  limit_room,
  limit_storage,
  limit_least,
  limit_season_end,
  limits_together_later,
  limits_together_earlier,
  winter_decides_later,
  winter_decides_earlier,
  // a display, and what differs from the usual
  longest_run,
  nothing_in_flower,
  planted_instead,
  stored_instead,
  kind_flowers,
  // who eats bulbs
  cats,
  dogs,
  horses,
  people,
  deer,
  gophers,
  voles,
  mice,
  squirrels,
  chipmunks,
  // why a kind is left out
  not_wanted,
  genus_in_mix,
  not_known_harmless,
  poisonous_eaten,
  not_known_eaten,
  eaten_by,
  killed_by_frost,
  no_planting_day,
  chilled_too_long,
  cold_without_refrigerator,
  cold_in_mild_winter,
  not_in_flower,
  // why no stack was found
  kind_left_out,
  all_left_out,
  too_shallow_for_all,
  no_common_day,
  too_narrow,
  // why a stack is suggested
  flower_run,
  refrigerate,
  stored_from,
  no_cold_needed,
  no_refrigerator,
  winter_gives_all,
  planting_day,
  planting_days,
  cold_every_winter,
  cold_most_winters,
  no_poison_known,
  rarely_eaten,
  one_tulip,
  // how winters were made
  from_normals,
  from_stations,
  from_blend,
  from_blend_assumed,
  from_this_season,
  from_records_and_normals,
  from_normals_beside_records,
  from_running_records,
  from_one_winter,
  from_winters,
  // one of the stations of a blend: its name, how far and how much higher it lies
  station_there,
  // how a zone's stations were found
  neighbours_taken,
  regions_taken,
  northern_taken,
};
inline constexpr std::size_t remark_codes =
    static_cast<std::size_t>(RemarkCode::northern_taken) + 1;

struct Remark {
  RemarkCode code = RemarkCode::mild_winter;
  std::vector<KindName> kinds{};
  std::vector<Detail> details{};

  bool operator==(const Remark&) const;
};

}  // namespace bulbwright
