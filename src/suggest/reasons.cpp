#include "suggest/reasons.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "base/notice_words.hpp"
#include "plan/companions.hpp"
#include "suggest/exclusion.hpp"

namespace bulbwright {
namespace {

/// A window of this length is the whole season: flowers are wanted whenever they come.
constexpr int whole_season_days = 365;

std::string flower_reason(const Suggestion& suggestion, const SuggestionWish& wish) {
  const int wanted = wish.window.last - wish.window.first + 1;
  const std::string of_wanted =
      wanted >= whole_season_days ? "" : fmt::format(" of the {} wanted", wanted);
  std::string text =
      fmt::format("in flower without a gap on {}{}, {} to {}", days_text(suggestion.days_in_flower),
                  of_wanted, to_words(suggestion.stretch.first), to_words(suggestion.stretch.last));
  if (suggestion.gap_days > 0)
    text += fmt::format("; {} without a flower beside that", days_text(suggestion.gap_days));
  return text;
}

std::string storage_reason(const Suggestion& suggestion, const SuggestionWish& wish) {
  std::vector<std::string> stored;
  for (const TaxonCold& cold : suggestion.cold) {
    if (cold.storage_weeks <= 0.0) continue;
    stored.push_back(fmt::format("{} for {} from {}", plain_name(cold.name),
                                 weeks_text(cold.storage_weeks), to_words(*cold.storage_start)));
  }
  if (!stored.empty()) return "refrigerate " + listed(stored, "and");
  const bool any_need = std::any_of(suggestion.cold.begin(), suggestion.cold.end(),
                                    [](const TaxonCold& cold) { return cold.need.least > 0.0; });
  if (!any_need) return "no cold needed";
  return wish.no_storage ? "no refrigerator, as asked"
                         : "the winter gives all the cold: no refrigerator";
}

std::string planting_reason(const Suggestion& suggestion) {
  const DayWindow days = suggestion.planting;
  if (days.first == days.last)
    return fmt::format("{} suits every kind for planting", to_words(days.first));
  return fmt::format("every kind can be planted from {} to {}; these dates are for {}",
                     to_words(days.first), to_words(days.last), to_words(suggestion.plant));
}

}  // namespace

std::vector<std::string> reasons_for(const Suggestion& suggestion, const SuggestionWish& wish,
                                     const std::vector<const Taxon*>& kinds) {
  std::vector<std::string> reasons{flower_reason(suggestion, wish),
                                   storage_reason(suggestion, wish), planting_reason(suggestion)};
  const bool any_need = std::any_of(suggestion.cold.begin(), suggestion.cold.end(),
                                    [](const TaxonCold& cold) { return cold.need.least > 0.0; });
  if (any_need) {
    const double in_hundred = std::floor(rounded(suggestion.chance * 100.0, 0.1));
    reasons.push_back(
        in_hundred >= 99.5
            ? std::string{"enough cold to flower in nearly every winter"}
            : fmt::format("enough cold to flower in at least {:.0f} of 100 winters", in_hundred));
  }
  if (!wish.safe_for.empty()) {
    reasons.push_back(fmt::format("no poison known for {}; that is no promise",
                                  listed(names_of(wish.safe_for), "or")));
  }
  if (!wish.not_eaten_by.empty()) {
    reasons.push_back(fmt::format("rarely eaten by {}", listed(names_of(wish.not_eaten_by), "or")));
  }
  if (kinds.size() == 1 && kinds.front()->genus == "Tulipa")
    reasons.emplace_back("one kind of tulip: the simplest pot, all in flower at once");
  std::vector<Companion> companions;
  for (std::size_t i = 0; i < kinds.size(); ++i)
    companions.push_back({kinds[i], suggestion.waves[i]});
  for (const Notice& notice : company_notices(companions))
    reasons.push_back("mind: " + notice.text);
  return reasons;
}

}  // namespace bulbwright
