#include "suggest/search.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

#include "flowering/open_days.hpp"
#include "layers/planting_depth.hpp"
#include "plan/companions.hpp"

namespace bulbwright {
namespace {

/// The answers of PlantedDeeper, remembered.
class PlantedMemo {
 public:
  PlantedMemo(const Candidates& candidates, const PlantedDeeper& planted)
      : candidates_{candidates}, planted_{planted}, known_(candidates.kinds.size()) {}

  /// nullptr where the kind fails there what is asked of it.
  const PlantedKind* at(std::size_t kind, std::size_t day, int deeper_cm) {
    const Candidate& candidate = candidates_.kinds[kind];
    std::vector<Entry>& days = known_[kind][deeper_cm];
    if (days.empty()) days.resize(candidate.planted.size());
    Entry& entry = days[day];
    if (!entry.known) entry = {true, planted_(candidate, day, deeper_cm)};
    return entry.planted ? &*entry.planted : nullptr;
  }

 private:
  struct Entry {
    bool known = false;
    std::optional<PlantedKind> planted;
  };
  const Candidates& candidates_;
  const PlantedDeeper& planted_;
  std::vector<std::map<int, std::vector<Entry>>> known_;  ///< by kind, centimetre and day
};

class Search {
 public:
  Search(const Candidates& candidates, DepthCheck& depth, const PlantedDeeper& planted,
         const SuggestionWish& wish)
      : candidates_{candidates},
        depth_{depth},
        planted_{candidates, planted},
        wish_{wish},
        window_{wish.window} {
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
      const PlacedStack& stack = depth_.placed(chosen_, day);
      const std::optional<StackKey> key = stack.fits ? key_of(stack, day) : std::nullopt;
      if (key && (!best || *key < *best)) best = key;
    }
    if (best) result_.ranked.push_back({chosen_, *best});
  }

  /// Nothing where a kind fails at its depth what it met at the usual one.
  std::optional<StackKey> key_of(const PlacedStack& stack, std::size_t day) {
    StackKey key;
    std::array<DayWindow, most_suggested_layers> waves;
    double cost = 0.0;
    for (std::size_t i = 0; i < stack.size; ++i) {
      const PlantedKind* planted = planted_.at(stack.kinds[i], day, stack.deeper_cm[i]);
      if (planted == nullptr) return std::nullopt;
      waves[i] = {planted->first, planted->last};
      key.storage_weeks += planted->storage_weeks;
      key.flower_days -=
          std::min(planted->last, window_.last) - std::max(planted->first, window_.first) + 1;
      cost += planted->cost;
    }
    const OpenDays coverage = open_days_of({waves.data(), stack.size}, window_);
    key.days_in_flower = -coverage.longest_days;
    key.days_open = -coverage.days;
    key.cost = rounded(cost, 0.1);
    key.day = day;
    return key;
  }

  const Candidates& candidates_;
  DepthCheck& depth_;
  PlantedMemo planted_;
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

PlacedStack DepthCheck::ordered(const std::vector<std::size_t>& kinds, std::size_t day) const {
  std::array<OrderKey, most_suggested_layers> keys;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const Candidate& candidate = candidates_.kinds[kinds[i]];
    keys[i] = {candidate.planted[day].peak, candidate.kind.ask.taxon->season_class,
               candidate.bulb_height};
  }
  PlacedStack stack;
  stack.kinds.fill(candidates_.kinds.size());
  for (const std::size_t i : order_layers({keys.data(), kinds.size()}))
    stack.kinds[stack.size++] = kinds[i];
  return stack;
}

const PlacedStack& DepthCheck::placed(const std::vector<std::size_t>& kinds, std::size_t day) {
  PlacedStack stack = ordered(kinds, day);
  const auto known = known_.find(stack.kinds);
  if (known != known_.end()) return known->second;
  std::vector<ResolvedLayer> layers;
  for (std::size_t i = 0; i < stack.size; ++i) layers.push_back(layers_[stack.kinds[i]]);
  const Stack at = stack_of(layers, pot_);
  stack.fits = at.feasible;
  const std::vector<std::vector<int>> deeper = deeper_than_usual_cm(layers, at);
  for (std::size_t i = 0; i < stack.size; ++i) stack.deeper_cm[i] = deeper[i].front();
  return known_.emplace(stack.kinds, stack).first->second;
}

StackSearch search_stacks(const Candidates& candidates, DepthCheck& depth,
                          const PlantedDeeper& planted, const SuggestionWish& wish) {
  return Search{candidates, depth, planted, wish}.run();
}

}  // namespace bulbwright
