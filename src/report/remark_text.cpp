// The words of remarks: what bounds a window, why a kind is left out, how winters were made.
#include "report/notice_text.hpp"
#include "report/text_layout.hpp"
#include "report/wording.hpp"

namespace bulbwright::report {
namespace {

using enum RemarkCode;

constexpr WordRow<RemarkCode> remarks[] = {
    {mild_winter, "mild"},
    {hard_winter, "hard"},
    {few_flowers, "few flowers or none, late and on short stems"},
    {late_flowers, "late flowers on short stems, and blind buds"},
    {treated_cold, "refrigerated"},
    {treated_forced, "brought indoors"},
    {treated_in_growth, "planted in growth"},
    {base_share, "base assumed at {share} of the rim (common practice)"},
    {height_share, "height assumed at {share} of the rim (common practice)"},
    {half_depth, "depth of the half-round assumed at half its width"},
    {outer_sizes, "outer sizes less the wall on all sides and the floor"},
    {usual_material, "material assumed to be {material}"},
    {kind_days, "{kinds}: {window}"},
    {kind_without_days, "{kinds}: {why}"},
    {days_end, "ends: {why}"},
    {open_to_the_end, "open to the end of planting time"},
    {days_for_all, "days that suit every kind"},
    {no_day_for_all, "no day suits every kind"},
    {too_warm_to_root, "mix too warm to root"},
    {too_little_cold, "too little cold, even with storage"},
    {too_near_frost, "too near hard frost to root"},
    {not_to_be_had, "bulbs not to be had, or too long dry"},
    {wait_for_day, "wait for {day}"},
    {keep_in_shade, "roots are poor and stems short in warm mix: keep the pot in shade"},
    {treat_as_annuals, "plant straight from the refrigerator, in shade, and treat them as annuals"},
    {limit_bulbs, "bulbs are not to be had before {available}"},
    {limit_mix, "the mix is too warm to plant on {planted} (above {highest})"},
    {limit_frost, "planted after {planted}, the bulbs would not root before hard frost"},
    {limit_room, "{kinds}: bulbs keep dry for {most} at the most"},
    {limit_storage, "{kinds}: bulbs take {most} in the refrigerator at the most"},
    {limit_least, "{kinds}: bulbs need {least} of cold at the least"},
    {limit_season_end, "planting time ends on {last}"},
    {limits_together_later,
     "no single limit: the day when bulbs can be had, the warmth of the mix and the weeks of "
     "storage together keep the flowers from being later"},
    {limits_together_earlier,
     "no single limit: the day when bulbs can be had, the warmth of the mix and the weeks of "
     "storage together keep the flowers from being earlier"},
    {winter_decides_later,
     "the winter there decides: no planting day and no storage makes them later"},
    {winter_decides_earlier,
     "the winter there decides: no planting day and no storage makes them earlier"},
    {longest_run, "{days:days} without a gap, {window}[ ({all} days in all)]"},
    {nothing_in_flower, "nothing in flower"},
    {planted_instead, "planted on {planted} instead of {usual}"},
    {stored_instead, "{kinds} stored for {given} instead of {usual}"},
    {kind_flowers, "{kinds} {window}"},
    {cats, "cats"},
    {dogs, "dogs"},
    {horses, "horses"},
    {people, "people"},
    {deer, "deer"},
    {gophers, "gophers"},
    {squirrels, "squirrels"},
    {voles, "voles"},
    {mice, "mice"},
    {chipmunks, "chipmunks"},
    {not_wanted, "not wanted"},
    {genus_in_mix, "the mix held its genus last year"},
    {not_known_harmless, "not known to be harmless to {mouths}"},
    {poisonous_eaten, "poisonous to {mouths} when eaten"},
    {not_known_eaten, "not known whether {eaters} eat it"},
    {eaten_by, "eaten by {eaters}"},
    {killed_by_frost, "killed by frost: in a usual year the mix falls to about {lowest}"},
    {no_planting_day, "no good planting day in this pot and winter"},
    {chilled_too_long, "would have to be chilled potted, or longer than it takes"},
    {cold_without_refrigerator, "too little cold without a refrigerator"},
    {cold_in_mild_winter, "too little cold in a mild winter"},
    {not_in_flower, "not in flower from {window}"},
    {kind_left_out, "{kinds}: {why}"},
    {all_left_out, "every kind is left out, for the reasons given"},
    {too_shallow_for_all, "the pot is too shallow for any of the kinds left"},
    {no_common_day, "the kinds asked for share no good day, or do not fit together"},
    {too_narrow, "the pot is too narrow for a bulb of the kinds left"},
    {flower_run,
     "in flower without a gap on {days:days}[ of the {wanted} wanted], {window}"
     "[; where two waves only just meet a gap comes in {chance} of 100 years]"
     "[; {gap:days} without a flower beside that]"},
    {refrigerate, "refrigerate {stored:and}"},
    {stored_from, "{kinds} for {given} from {start}"},
    {no_cold_needed, "no cold needed"},
    {no_refrigerator, "no refrigerator, as asked"},
    {winter_gives_all, "the winter gives all the cold: no refrigerator"},
    {planting_day, "{day} suits every kind for planting"},
    {planting_days, "every kind can be planted from {window}; these dates are for {planted}"},
    {cold_every_winter, "enough cold to flower in nearly every winter"},
    {cold_most_winters, "enough cold to flower in at least {chance} of 100 winters"},
    {no_poison_known, "no poison known for {mouths:or}; that is no promise"},
    {rarely_eaten, "rarely eaten by {eaters:or}"},
    {one_tulip, "one kind of tulip: the simplest pot, all in flower at once"},
    {from_normals,
     "monthly normals; the mild and the cold winter lie {yearly} apart from the normal one"},
    {from_stations,
     "the mean of {stations} stations of the zone; places within one zone differ, so the mild and "
     "the cold winter lie {yearly} apart from the normal one"},
    {from_blend,
     "monthly normals blended from {stations:semi} and others; the mild and the cold winter lie "
     "{yearly} "
     "apart from the normal one"},
    {from_blend_assumed,
     "monthly normals blended from {stations:semi} and others at their own height, for no "
     "elevation is "
     "given; the mild and the cold winter lie {yearly} apart from the normal one"},
    {from_this_season, "your records of this very season"},
    {from_records_and_normals, "your records up to {last}, then the normals of {place}"},
    {from_normals_beside_records,
     "the normals of {place}; your records, {start} to {last}, hold no whole winter and are only "
     "compared with them"},
    {from_running_records, "your records up to {last}, then each of {count} recorded winters"},
    {from_one_winter, "your records of one winter, {winter}; the next will differ"},
    {from_winters, "your records of {count} winters, {start} to {last}"},
    {station_there, "{place} ({distance:far} away, {height:higher})"},
    {neighbours_taken, "few stations in this half zone: the two beside it are taken in"},
    {regions_taken,
     "too few {region} stations in or beside this half zone: those of all regions are taken"},
    {northern_taken, "no southern stations: northern ones with the months moved by six"},
};
static_assert(every_code_has_words(remarks, remark_codes));

}  // namespace

std::string remark_text(const Remark& remark, const TextStyle& style) {
  return from_table<RemarkCode>(remarks, remark.code, {remark.kinds, remark.details}, style);
}

std::string plain_text(const Remark& remark) {
  return plain_spaces(remark_text(remark, TextStyle{}));
}

}  // namespace bulbwright::report
