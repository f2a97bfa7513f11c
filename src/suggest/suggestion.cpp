#include "suggest/suggestion.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

#include "cold/hard_frost.hpp"
#include "flowering/open_days.hpp"
#include "flowering/timing.hpp"
#include "layers/layering.hpp"
#include "plan/pot_case.hpp"
#include "suggest/candidates.hpp"
#include "suggest/exclusion.hpp"
#include "suggest/reasons.hpp"
#include "suggest/search.hpp"

namespace bulbwright {
namespace {

/// More than one kind differs: neither is the other with one kind changed, added or left out.
bool differ(const std::vector<std::size_t>& a, const std::vector<std::size_t>& b) {
  std::vector<std::size_t> common;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(common));
  return std::max(a.size(), b.size()) - common.size() > 1;
}

/// A ranked stack as it is shown.
class Presenter {
 public:
  Presenter(const Request& request, const SuggestionWish& wish, const PlanContext& context,
            const PotSeason& season, const Candidates& candidates, DepthCheck& depth)
      : request_{request},
        wish_{wish},
        context_{context},
        season_{season},
        candidates_{candidates},
        depth_{depth} {}

  /// Nothing where its bulbs find no room in the width of the pot.
  [[nodiscard]] std::optional<Suggestion> shown(const RankedStack& stack, const Pot& pot) const {
    Suggestion suggestion;
    suggestion.plant = candidates_.first_day + static_cast<int>(stack.key.day);
    suggestion.planting = planting_window(stack);
    suggestion.request = planted_on(suggestion.plant);
    std::vector<const Taxon*> kinds;
    const PlacedStack& placed = depth_.placed(stack.kinds, stack.key.day);
    for (std::size_t i = 0; i < placed.size; ++i) {
      TimedKind kind = candidates_.kinds[placed.kinds[i]].kind;
      kind.deeper_cm = placed.deeper_cm[i];
      kinds.push_back(kind.ask.taxon);
      add(std::move(kind), suggestion);
    }
    if (!pack(pot, suggestion)) return std::nullopt;
    count_days(suggestion);
    suggestion.reasons = reasons_for(suggestion, wish_, kinds);
    suggestion.mind = mind_for(suggestion, kinds);
    return suggestion;
  }

 private:
  [[nodiscard]] Request planted_on(Day plant) const {
    Request planted = request_;
    planted.season = context_.place_season.season;
    planted.plant = plant;
    planted.flower.reset();
    planted.spread = false;
    planted.order = LayerOrder::given;
    if (wish_.no_storage) planted.storage.weeks = 0.0;
    planted.layers.clear();
    return planted;
  }

  void add(TimedKind kind, Suggestion& suggestion) const {
    kind.layer = static_cast<int>(suggestion.waves.size()) + 1;
    const KindTiming timing = time_kind(kind, season_, suggestion.plant);
    suggestion.waves.push_back(timing.wave);
    suggestion.cold.push_back(timing.cold.cold);
    suggestion.storage_weeks += timing.cold.cold.storage_weeks;
    suggestion.chance = std::min(suggestion.chance, timing.cold.cold.chance_least_met);
    LayerRequest layer;
    layer.parts.push_back({kind.ask.taxon->id, 1.0});
    suggestion.request.layers.push_back(std::move(layer));
  }

  /// The run of common good days around the chosen one.
  [[nodiscard]] DayWindow planting_window(const RankedStack& stack) const {
    PlantingDays days = PlantingDays{}.set();
    for (const std::size_t kind : stack.kinds) days &= candidates_.kinds[kind].days;
    std::size_t first = stack.key.day, last = stack.key.day;
    while (first > 0 && days[first - 1]) --first;
    while (last + 1 < days.size() && days[last + 1]) ++last;
    return {candidates_.first_day + static_cast<int>(first),
            candidates_.first_day + static_cast<int>(last)};
  }

  bool pack(const Pot& pot, Suggestion& suggestion) const {
    const std::vector<ResolvedLayer> layers =
        resolve_layers(suggestion.request.layers, context_.catalogue);
    const Layering layering = plan_layers(layers, pot, context_.effort, context_.packings);
    if (!layering.ok) return false;
    for (const PlannedLayer& layer : layering.layers) suggestion.bulbs.push_back(layer.count);
    return true;
  }

  void count_days(Suggestion& suggestion) const {
    const DayWindow window = wish_.window;
    std::vector<DayWindow> waves = wave_windows(suggestion.waves);
    const OpenDays coverage = open_days_of(waves, window);
    suggestion.days_in_flower = coverage.longest_days;
    suggestion.stretch = *coverage.longest;
    Day first = window.last, last = window.first;
    for (const DayWindow& wave : waves) {
      if (wave.last < window.first || wave.first > window.last) continue;
      first = std::min(first, std::max(wave.first, window.first));
      last = std::max(last, std::min(wave.last, window.last));
    }
    suggestion.gap_days = last - first + 1 - coverage.days;
  }

  const Request& request_;
  const SuggestionWish& wish_;
  const PlanContext& context_;
  const PotSeason& season_;
  const Candidates& candidates_;
  DepthCheck& depth_;
};

bool single_tulip(const RankedStack& stack, const Candidates& candidates) {
  return stack.kinds.size() == 1 &&
         candidates.kinds[stack.kinds.front()].kind.ask.taxon->genus == "Tulipa";
}

/// The best few that differ, then the best single tulip kind where none of them is one.
void show(const StackSearch& search, const Candidates& candidates, const Presenter& presenter,
          const Pot& pot, int count, Suggestions& result) {
  std::vector<std::vector<std::size_t>> shown;
  bool tulip = false;
  for (const RankedStack& stack : search.ranked) {
    if (static_cast<int>(shown.size()) == count) break;
    const bool new_enough = std::all_of(
        shown.begin(), shown.end(), [&](const auto& other) { return differ(other, stack.kinds); });
    if (!new_enough) continue;
    std::optional<Suggestion> suggestion = presenter.shown(stack, pot);
    if (!suggestion) continue;
    shown.push_back(stack.kinds);
    tulip = tulip || single_tulip(stack, candidates);
    result.found.push_back(std::move(*suggestion));
  }
  for (const RankedStack& stack : search.ranked) {
    if (tulip) break;
    if (!single_tulip(stack, candidates)) continue;
    std::optional<Suggestion> suggestion = presenter.shown(stack, pot);
    if (!suggestion) continue;
    tulip = true;
    result.found.push_back(std::move(*suggestion));
  }
  if (!tulip && !result.found.empty()) {
    result.notices.push_back({NoticeCode::no_tulip_pot, Severity::note});
  }
}

/// Where nothing is known to be harmless, what does least harm.
void say_none_known_safe(const Catalogue& catalogue, const SuggestionWish& wish,
                         Suggestions& result) {
  if (wish.safe_for.empty()) return;
  std::vector<KindName> mild;
  for (const Taxon& taxon : catalogue.taxa()) {
    const Toxicity worst = worst_for(taxon, wish.safe_for);
    if (worst == Toxicity::none_known) return;
    if (worst == Toxicity::mild) mild.push_back({taxon.id, taxon.name});
  }
  Notice notice{NoticeCode::none_known_safe,
                Severity::warning,
                {},
                {{DetailName::mouths, remarks_of(wish.safe_for)}}};
  if (!mild.empty()) notice.details.push_back({DetailName::mild, std::move(mild)});
  result.notices.push_back(std::move(notice));
}

void say_nothing_found(const StackSearch& search, const SuggestionWish& wish, Suggestions& result) {
  using enum RemarkCode;
  if (!result.found.empty()) return;
  std::vector<Remark> why;
  for (const LeftOut& out : result.left_out) {
    if (std::find(wish.with.begin(), wish.with.end(), out.taxon) == wish.with.end()) continue;
    why.push_back({kind_left_out,
                   {{out.taxon, out.name}},
                   {{DetailName::why, std::vector<Remark>{out.reason}}}});
  }
  if (static_cast<int>(result.left_out.size()) == result.kinds) {
    why.push_back({all_left_out});
  } else if (search.ranked.empty()) {
    why.push_back({wish.with.empty() ? too_shallow_for_all : no_common_day});
  } else {
    why.push_back({too_narrow});
  }
  result.notices.push_back(
      {NoticeCode::nothing_found, Severity::refusal, {}, {{DetailName::why, std::move(why)}}});
}

}  // namespace

Suggestions suggest(const Request& request, const SuggestionWish& wish,
                    const PlanContext& context) {
  const PotCase all = make_case(request_of_all(request, wish, context.catalogue), context);
  Candidates candidates =
      find_candidates(all, wish,
                      lowest_in_frost(context.place_season.frost, pot_thermal(all.pot),
                                      context.place_season.exposure));
  DepthCheck depth{candidates, context.catalogue, all.pot};
  const StackSearch search = search_stacks(
      candidates, depth, planted_deeper(candidates.first_day, all.season, wish), wish);
  Suggestions result;
  result.request = request;
  result.wish = wish;
  result.place = context.place_season.label;
  result.window = wish.window;
  result.kinds = static_cast<int>(context.catalogue.taxa().size());
  result.stacks = search.looked_at;
  result.fitting = static_cast<int>(search.ranked.size());
  const Presenter presenter{request, wish, context, all.season, candidates, depth};
  show(search, candidates, presenter, all.pot, wish.count, result);
  result.left_out = std::move(candidates.left_out);
  say_nothing_found(search, wish, result);
  say_none_known_safe(context.catalogue, wish, result);
  return result;
}

}  // namespace bulbwright
