// The sentences of notices: one table, read wherever a notice is shown. Words only; what a notice
// carries is decided where it is made.
#include "report/notice_text.hpp"

#include <algorithm>

#include "report/text_layout.hpp"
#include "report/wording.hpp"

namespace bulbwright::report {
namespace {

using enum NoticeCode;

constexpr WordRow<NoticeCode> sentences[] = {
    {never_refrigerate, "{kinds}: never put in a refrigerator; ask for 0 weeks of storage"},
    {storage_too_long,
     "{kinds}: {given} dry in the refrigerator costs flowers; {most} is the most, then plant"},
    {storage_long,
     "{kinds}: {wanted} in refrigerators by planting, with those they came with; past {most} "
     "flowers may be lost: plant them as soon as they come"},
    {storage_long,
     "{kinds}: {given} dry in the refrigerator, to reach the least cold; past {most} flowers may "
     "be lost"},
    {storage_long, "{kinds}: more than {most} dry in the refrigerator begins to cost flowers"},
    {storage_before_bulbs,
     "{kinds}: {given} of refrigeration before {planted} would start on {start}, before bulbs can "
     "be had ({available}); plant on {nearest} or later, or refrigerate for {possible}"},
    {storage_shortened,
     "{kinds}: {wanted} of refrigeration wanted, but bulbs come on {available}, {given} before "
     "{planted}; plant on {nearest} to give them all"},
    {precooled_offered,
     "{kinds}: too late to chill them for a planting on {planted}; bulbs sold precooled, sent to "
     "be planted at "
     "once, flower without it (cold_already in the pot file)"},
    {precooled_offered,
     "{kinds}: too late to chill them yourself for that day; bulbs sold precooled, sent to be "
     "planted at once, can be sooner (cold_already in the pot file)"},
    {under_chilled,
     "{kinds}: about {given} of cold in a {winter} winter where {least} is the least: expect "
     "{expect}; least reached in {chance} of 100 winters"},
    {less_than_recommended,
     "{kinds}: {lacking} less cold than recommended in a usual winter; somewhat late"},
    {weeks_would_help,
     "{kinds}: no refrigerator needed; up to {given} in one bring earlier and surer flowers"},
    {chill_in_pot,
     "{kinds}: dry storage dries them out; pot at once and give the potted pot its {given} of "
     "cold, or choose another kind or a pot of its own"},
    {storage_temperature,
     "{kinds}: {asked} is a freezer, and frozen dry bulbs die; keep the refrigerator between "
     "{lowest} and {highest}, never below {hurtful}"},
    {storage_temperature,
     "{kinds}: keep the refrigerator between {lowest} and {highest}, not {asked}"},
    {over_chilled,
     "{kinds}: {given} of storage are more than needed ({most}): leggy growth, and shoots in the "
     "bag"},
    {no_natural_cold,
     "the winter of {place} gives no cold worth counting: all of it comes from the refrigerator, "
     "and the bulbs flower once"},
    {no_natural_cold, "there is no natural cold here: all of it must come from the refrigerator"},
    {enough_winter, "the winter gives all the cold these bulbs need: no refrigerator"},
    {pot_freezes,
     "in a usual year's hardest frost (air {air}) the mix of this pot falls to about {lowest}; "
     "roots in pots are hurt below {hurtful}. Shelter it, or sink it in the ground"},
    {no_flower, "{kinds}: no flowers to be expected this season"},
    {buds_blast,
     "{kinds}: would open in such heat (above {highest} for ten days) that the buds dry up: no "
     "flowers to be expected"},
    {never_dated, "{kinds:many}[ {why}]: dates are a guess"},
    {one_kind_in_depths,
     "one kind in {count} depths, {kinds:many}: waves {least} to {most:days} apart, the top layer "
     "first; depth may do nothing, or twice as much"},
    {one_kind_in_depths,
     "one kind in {count} depths, {kinds:many}: waves {days:days} apart, the top layer first; "
     "depth "
     "may do nothing, or twice as much"},
    {one_kind_in_depths,
     "one kind in {count} depths, {kinds:many}: in flower together, or within a day"},
    {too_shallow,
     "the pot is too shallow for these layers; an inner height of {height:up} would do[; or set "
     "{kinds:many} mixed in one layer][; or leave out {drop:many}]"},
    {too_shallow,
     "kinds want depths that exclude one another, in a pot of any height[; leave out {drop:many}, "
     "or "
     "lay them in another order]"},
    {does_not_fit,
     "{count} {kinds:many} do not fit in one layer with {least} between them: there is room for "
     "about {most}. Plant fewer, or use a wider pot"},
    {does_not_fit,
     "{count} {kinds:many} do not fit in one layer with {least} between them; plant fewer, or use "
     "a wider pot"},
    {no_room,
     "this pot has no room for {kinds:many}[ together: only {most} {most:bulb fits|bulbs fit}]"},
    {close_together, "{count} {kinds:many} stand {gap} apart, closer than the usual {usual}"},
    {thin_between,
     "only {over} of mix fits over the noses of each lower layer, less than the usual {usual}"},
    {order_kept,
     "the latest kind lowest would not fit this pot: the layers lie as they were listed"},
    {flowers_before_layer_above,
     "{kinds:many} flower before {other:many} planted above them: their shoots push through "
     "standing flowers; swapping the two layers is usual"},
    {hidden_by_leaves,
     "{kinds}: its flowers, at about {flowers:tall}, may be hidden among leaves of {other}, "
     "{leaves:tall} high"},
    {leaf_mat, "{kinds}: makes a mat of leaves; part it where the noses of {other} come up"},
    {opposite_water, "{kinds} and {other} want opposite watering in growth"},
    {opposite_rest,
     "{kinds} and {other} want opposite watering at rest: lift one of them after flowering"},
    {opposite_light, "{kinds} and {other} want opposite light (sun, part shade)"},
    {used_mix,
     "the mix held {genus} last year: moulds and rots of that kind live on in it; use fresh mix, "
     "or another kind in this pot"},
    {hardiness,
     "{kinds:many} die here: in a usual year's hardest frost the mix falls to about {lowest}, and "
     "below {hurtful} they are killed. Grow them in a cool light room, or choose hardy kinds"},
    {hardiness,
     "{kinds}: rooted bulbs die in mix below {most}, and a usual year's hardest frost brings it to "
     "about {lowest}: into an unheated shed or garage for the hard frosts"},
    {assumed, "{why}"},
    {zone_alone,
     "a zone tells only the lowest temperature of a year: its stations differ by {january} (one "
     "standard deviation) in January and {july} in July beside the {yearly} from year to year. A "
     "site or your own normals narrow every figure"},
    {zone_stations, "about this zone: {why}"},
    {stations_blended,
     "climate blended from {stations:semi} and {count} farther stations, at {height:sea} above the "
     "sea, the stations' own height, for none is told; good to about {expect}"},
    {stations_blended,
     "climate blended from {stations:semi} and {count} farther stations; good to about {expect}"},
    {stations_far,
     "no height is told, and the stations around stand high and low or far off ({stations:semi}): "
     "taken at {height:sea} above the sea, the climate may be off by {expect}; tell the elevation"},
    {stations_far,
     "the stations around do not tell this place well ({stations:semi}): the climate may be off by "
     "{expect}, and the ranges are wider for it"},
    {offset_applied,
     "the normals are taken {nights:warmer} at night and {daytimes:warmer} by day, as the offset "
     "says"},
    {record_offset,
     "{days:days} of your records are {nights:warmer} at night and {daytimes:warmer} by day than "
     "the normals (medians; the weather alone may make {weather}); an offset carries that to "
     "seasons without records"},
    {winter_wet,
     "a wet winter ({rain:rain} of rain a month): a quarter of the mix is perlite, and long rain "
     "is "
     "kept off until shoots show (not so with winter \"ordinary\")"},
    {winter_dry,
     "a dry winter ({rain:rain} of rain a month, less than dries off): the pot needs watering "
     "(less "
     "with winter \"ordinary\")"},
    {winter_assumed, "winter taken as ordinary: its rain is not known"},
    {normals_no_winter,
     "normals hold no cold or warm spells of their own: hours between {lowest} and {highest}, and "
     "portions, can be wrong by a tenth, in warm places by more. Records of real winters do "
     "better"},
    {gaps_filled,
     "{hours} hours (gaps up to {hour_limit}) and {days} days (gaps up to {day_limit}) were filled "
     "by straight lines"},
    {values_rejected,
     "{count} values that failed the station's own checks, or cannot be, were left out"},
    {days_missing, "{count} of the days have no readings: the totals are too low"},
    {no_common_window,
     "no day suits every kind; {windows}; {planted} costs least; or use two pots, other kinds, or "
     "chill the whole planted pot"},
    {mix_warm, "{kinds}: the mix is at about {mix:half} when planted; {advice}"},
    {mix_too_warm, "{kinds}: the mix is at about {mix:half} when planted; {advice}"},
    {mix_frozen,
     "on {planted} the mix lies frozen in a usual winter: bulbs without roots die in it; plant by "
     "{last}, or keep them dry and cool until it thaws about {day}"},
    {mix_frozen,
     "on {planted} the mix lies frozen in a usual winter: bulbs without roots die in it; keep them "
     "dry and cool until it thaws about {day}"},
    {mix_frozen,
     "on {planted} the mix lies frozen in a usual winter: bulbs without roots die in it"},
    {wanted_day,
     "on {day} {open} of {all} kinds {open:is|are} in flower[; most are on {predicted}, {off:late}]"
     "[: {limit}][; not {closed}]"},
    {wanted_day, "full flower expected on {day} as wanted"},
    {wanted_day_off,
     "on {day} {open} of {all} kinds {open:is|are} in flower[; most are on {predicted}, {off:late}]"
     "[: {limit}][; not {closed}]"},
    {wanted_day_off,
     "full flower expected on {predicted}, {off:late}: {limit}; some are open on {day}"},
    {wanted_day_missed,
     "nothing can be in flower on {day}: the nearest is {predicted} when planted on {planted}, "
     "{off:late}; {limit}"},
    {wanted_day_missed,
     "nothing can be in flower from {window}: the nearest is {predicted} when planted on "
     "{planted}, {off:late}; {limit}"},
    {wanted_day_unreachable,
     "nothing can be in flower on {day}: the nearest is {predicted} when planted on {planted}, "
     "{off:late}; {limit}"},
    {wanted_day_unreachable,
     "nothing can be in flower from {window}: the nearest is {predicted} when planted on "
     "{planted}, {off:late}; {limit}"},
    {wanted_window, "in flower on every day from {window}: planting on {planted} does it"},
    {wanted_window_part,
     "in flower on {open} of the {all} days from {window}, the most that planting day and storage "
     "can do"},
    {spread, "spread out: {after}; as usually planted: {before}; {changes}"},
    {spread, "spread out: {after}; the ordinary plan does as well"},
    {no_tulip_pot, "no pot of a single tulip kind meets what is asked"},
    {none_known_safe,
     "no kind of the catalogue is known to be harmless to {mouths:and}[; the mildest are "
     "{mild:and}]; set a pot of bulbs where they cannot reach it, and ask a veterinarian or a "
     "poison centre"},
    {nothing_found, "no kind or stack meets what is asked; {why:semi}"},
};
static_assert(every_code_has_words(sentences, notice_codes));

/// The same said of one kind and of another.
bool differ_in_kind(const Notice& a, const Notice& b) {
  return a.code == b.code && a.severity == b.severity && a.details == b.details && a.layer == 0 &&
         b.layer == 0 && !a.kinds.empty() && b.kinds.size() == 1 &&
         find_detail(a.details, DetailName::other) == nullptr;
}

}  // namespace

std::string notice_text(const Notice& notice, const TextStyle& style) {
  return from_table<NoticeCode>(sentences, notice.code, {notice.kinds, notice.details}, style);
}

std::string plain_text(const Notice& notice) {
  return plain_spaces(notice_text(notice, TextStyle{}));
}

std::vector<Notice> merged(const std::vector<Notice>& notices) {
  std::vector<Notice> result;
  for (const Notice& notice : notices) {
    const auto same = std::ranges::find_if(result, [&](const Notice& other) {
      return other == notice || differ_in_kind(other, notice);
    });
    if (same == result.end()) {
      result.push_back(notice);
      continue;
    }
    for (const KindName& kind : notice.kinds) {
      if (std::ranges::find(same->kinds, kind) == same->kinds.end()) same->kinds.push_back(kind);
    }
  }
  return result;
}

}  // namespace bulbwright::report
