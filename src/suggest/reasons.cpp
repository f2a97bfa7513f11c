#include "suggest/reasons.hpp"

#include <algorithm>
#include <cmath>

#include "flowering/display.hpp"
#include "plan/companions.hpp"

namespace bulbwright {
namespace {

using enum RemarkCode;

/// A window of this length is the whole season: flowers are wanted whenever they come.
constexpr int whole_season_days = 365;

/// A gap less likely than this is not told.
constexpr double least_gap_chance = 0.1;

/// The likeliest gap between two waves of the stretch that are predicted to meet.
double likeliest_gap(const Suggestion& suggestion) {
  double most = 0.0;
  for (const WaveJoint& joint : display_of(suggestion.waves).joints) {
    const Day meeting = suggestion.waves[joint.after].first;
    const bool within = suggestion.stretch.first <= meeting && meeting <= suggestion.stretch.last;
    if (within && joint.gap_days <= 0) most = std::max(most, joint.gap_chance);
  }
  return most;
}

Remark flower_reason(const Suggestion& suggestion, const SuggestionWish& wish) {
  Remark reason{
      flower_run,
      {},
      {{DetailName::days, suggestion.days_in_flower}, {DetailName::window, suggestion.stretch}}};
  const int wanted = wish.window.last - wish.window.first + 1;
  if (wanted < whole_season_days) reason.details.push_back({DetailName::wanted, wanted});
  if (const double chance = likeliest_gap(suggestion); chance >= least_gap_chance)
    reason.details.push_back({DetailName::chance, static_cast<int>(rounded(100.0 * chance, 1.0))});
  if (suggestion.gap_days > 0) reason.details.push_back({DetailName::gap, suggestion.gap_days});
  return reason;
}

bool any_need(const Suggestion& suggestion) {
  return std::any_of(suggestion.cold.begin(), suggestion.cold.end(),
                     [](const TaxonCold& cold) { return cold.need.least > 0.0; });
}

Remark storage_reason(const Suggestion& suggestion, const SuggestionWish& wish) {
  std::vector<Remark> stored;
  for (const TaxonCold& cold : suggestion.cold) {
    if (cold.storage_weeks <= 0.0) continue;
    stored.push_back({stored_from,
                      {{cold.taxon, cold.name}},
                      {{DetailName::given, Weeks{cold.storage_weeks}},
                       {DetailName::start, *cold.storage_start}}});
  }
  if (!stored.empty()) return {refrigerate, {}, {{DetailName::stored, std::move(stored)}}};
  if (!any_need(suggestion)) return {no_cold_needed};
  return {wish.no_storage ? no_refrigerator : winter_gives_all};
}

Remark planting_reason(const Suggestion& suggestion) {
  const DayWindow days = suggestion.planting;
  if (days.first == days.last) return {planting_day, {}, {{DetailName::day, days.first}}};
  return {planting_days, {}, {{DetailName::window, days}, {DetailName::planted, suggestion.plant}}};
}

Remark chance_reason(const Suggestion& suggestion) {
  const double in_hundred = std::floor(rounded(suggestion.chance * 100.0, 0.1));
  if (in_hundred >= 99.5) return {cold_every_winter};
  return {cold_most_winters, {}, {{DetailName::chance, static_cast<int>(in_hundred)}}};
}

}  // namespace

std::vector<Remark> reasons_for(const Suggestion& suggestion, const SuggestionWish& wish,
                                const std::vector<const Taxon*>& kinds) {
  std::vector<Remark> reasons{flower_reason(suggestion, wish), storage_reason(suggestion, wish),
                              planting_reason(suggestion)};
  if (any_need(suggestion)) reasons.push_back(chance_reason(suggestion));
  if (!wish.safe_for.empty())
    reasons.push_back({no_poison_known, {}, {{DetailName::mouths, remarks_of(wish.safe_for)}}});
  if (!wish.not_eaten_by.empty())
    reasons.push_back({rarely_eaten, {}, {{DetailName::eaters, remarks_of(wish.not_eaten_by)}}});
  if (kinds.size() == 1 && kinds.front()->genus == "Tulipa") reasons.push_back({one_tulip});
  return reasons;
}

std::vector<Notice> mind_for(const Suggestion& suggestion, const std::vector<const Taxon*>& kinds) {
  std::vector<Companion> companions;
  for (std::size_t i = 0; i < kinds.size(); ++i)
    companions.push_back({kinds[i], suggestion.waves[i]});
  return company_notices(companions);
}

}  // namespace bulbwright
