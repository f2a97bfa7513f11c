#include "suggest/search.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

#include "flowering/open_days.hpp"
#include "plan/companions.hpp"

namespace bulbwright {
namespace {

class Search {
 public:
  Search(const Candidates& candidates, DepthCheck& depth, const SuggestionWish& wish)
      : candidates_{candidates}, depth_{depth}, wish_{wish}, window_{wish.window} {
    const std::size_t n = candidates.kinds.size();
    apart_.assign(n, std::vector<bool>(n, false));
    for (std::size_t a = 0; a < n; ++a) {
      for (std::size_t b = 0; b < n; ++b) {
        apart_[a][b] = opposite_wishes(*candidates.kinds[a].kind.ask.taxon,
                                       *candidates.kinds[b].kind.ask.taxon);
      }
    }
  }

  StackSearch run() && {
    extend(0, PlantingDays{}.set());
    std::sort(result_.ranked.begin(), result_.ranked.end(),
              [](const RankedStack& a, const RankedStack& b) {
                return std::tie(a.key, a.kinds) < std::tie(b.key, b.kinds);
              });
    return std::move(result_);
  }

 private:
  /// Adds each later kind that goes with those chosen; a common day gone is gone for good.
  void extend(std::size_t from, const PlantingDays& days) {
    if (static_cast<int>(chosen_.size()) == wish_.most_layers) return;
    for (std::size_t next = from; next < candidates_.kinds.size(); ++next) {
      const PlantingDays common = days & candidates_.kinds[next].days;
      const bool apart = std::any_of(chosen_.begin(), chosen_.end(),
                                     [&](std::size_t other) { return apart_[other][next]; });
      if (apart || common.none()) continue;
      chosen_.push_back(next);
      ++result_.looked_at;
      if (has_all_wanted()) rank(common);
      extend(next + 1, common);
      chosen_.pop_back();
    }
  }

  bool has_all_wanted() const {
    return std::all_of(wish_.with.begin(), wish_.with.end(), [&](const std::string& id) {
      return std::any_of(chosen_.begin(), chosen_.end(), [&](std::size_t kind) {
        return candidates_.kinds[kind].kind.ask.taxon->id == id;
      });
    });
  }

  void rank(const PlantingDays& days) {
    std::optional<StackKey> best;
    for (std::size_t day = 0; day < days.size(); ++day) {
      if (!days[day]) continue;
      const StackKey key = key_of(day);
      if ((!best || key < *best) && depth_.fits(chosen_, day)) best = key;
    }
    if (best) result_.ranked.push_back({chosen_, *best});
  }

  StackKey key_of(std::size_t day) {
    StackKey key;
    std::array<DayWindow, most_suggested_layers> waves;
    double cost = 0.0;
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
      const PlantedKind& planted = candidates_.kinds[chosen_[i]].planted[day];
      waves[i] = {planted.first, planted.last};
      key.storage_weeks += planted.storage_weeks;
      key.flower_days -=
          std::min(planted.last, window_.last) - std::max(planted.first, window_.first) + 1;
      cost += planted.cost;
    }
    const OpenDays coverage = open_days_of({waves.data(), chosen_.size()}, window_);
    key.days_in_flower = -coverage.longest_days;
    key.days_open = -coverage.days;
    key.cost = rounded(cost, 0.1);
    key.day = day;
    return key;
  }

  const Candidates& candidates_;
  DepthCheck& depth_;
  const SuggestionWish& wish_;
  DayWindow window_;
  std::vector<std::vector<bool>> apart_;
  std::vector<std::size_t> chosen_;
  StackSearch result_;
};

}  // namespace

DepthCheck::DepthCheck(const Candidates& candidates, const Catalogue& catalogue, const Pot& pot)
    : candidates_{candidates}, pot_{pot} {
  std::vector<LayerRequest> requests;
  for (const Candidate& candidate : candidates.kinds) {
    LayerRequest layer;
    layer.parts.push_back({candidate.kind.ask.taxon->id, 1.0});
    requests.push_back(std::move(layer));
  }
  layers_ = resolve_layers(requests, catalogue);
}

std::vector<std::size_t> DepthCheck::ordered(const std::vector<std::size_t>& kinds,
                                             std::size_t day) const {
  std::vector<OrderKey> keys;
  for (const std::size_t kind : kinds) {
    const Candidate& candidate = candidates_.kinds[kind];
    keys.push_back({candidate.planted[day].peak, candidate.kind.ask.taxon->season_class,
                    candidate.bulb_height});
  }
  std::vector<std::size_t> result;
  for (const std::size_t i : order_layers(keys)) result.push_back(kinds[i]);
  return result;
}

bool DepthCheck::fits(const std::vector<std::size_t>& kinds, std::size_t day) {
  std::vector<std::size_t> order = ordered(kinds, day);
  const auto known = known_.find(order);
  if (known != known_.end()) return known->second;
  std::vector<ResolvedLayer> layers;
  for (const std::size_t kind : order) layers.push_back(layers_[kind]);
  const bool feasible = stack_of(layers, pot_).feasible;
  known_.emplace(std::move(order), feasible);
  return feasible;
}

StackSearch search_stacks(const Candidates& candidates, DepthCheck& depth,
                          const SuggestionWish& wish) {
  return Search{candidates, depth, wish}.run();
}

}  // namespace bulbwright
