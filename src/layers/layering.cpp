#include "layers/layering.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/core.h>

#include "base/apportion.hpp"
#include "base/error.hpp"

namespace bulbwright {
namespace {

std::vector<KindName> names_of(const ResolvedLayer& layer) {
  std::vector<KindName> names;
  for (const LayerKind& kind : layer.kinds) names.push_back({kind.taxon->id, kind.taxon->name});
  return names;
}

LayerKind measured(const LayerPart& part, const LayerRequest& layer, const Catalogue& catalogue) {
  const Taxon& taxon = catalogue.at(part.taxon);
  LayerKind kind;
  kind.taxon = &taxon;
  kind.share = part.share;
  kind.grade_cm = layer.grade_cm.value_or(taxon.circumference_cm.value);
  kind.diameter = diameter_of_circumference(kind.grade_cm);
  kind.height = kind.diameter * taxon.height_to_diameter.value;
  return kind;
}

/// Kinds of several layers that would fit mixed in one; empty where they would not.
std::vector<KindName> fit_mixed(std::span<const ResolvedLayer> layers, const Pot& pot) {
  if (layers.size() < 2) return {};
  std::vector<ResolvedLayer> one{layers.front()};
  std::vector<KindName> names;
  for (const ResolvedLayer& layer : layers) {
    if (layer.request.use != one.front().request.use) return {};
    if (&layer != &layers.front())
      one.front().kinds.insert(one.front().kinds.end(), layer.kinds.begin(), layer.kinds.end());
    for (KindName& name : names_of(layer)) {
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
  }
  return names.size() > 1 && stack_of(one, pot).feasible ? names : std::vector<KindName>{};
}

void infeasible_notice(const Stack& stack, std::span<const ResolvedLayer> layers, const Pot& pot,
                       Layering& result) {
  std::vector<Detail> details;
  if (stack.least_surface) {
    details.push_back({DetailName::height, *stack.least_surface + pot.headspace});
  }
  std::vector<KindName> drop;
  for (const std::size_t i : stack.drop) {
    for (KindName& kind : names_of(layers[i])) drop.push_back(std::move(kind));
  }
  if (!drop.empty()) details.push_back({DetailName::drop, std::move(drop)});
  result.ok = false;
  result.notices.push_back(
      {NoticeCode::too_shallow, Severity::refusal, fit_mixed(layers, pot), std::move(details)});
}

/// Depths that a kind is content with. Bulbs forced indoors sit as high as may be: big ones on top
/// with their tips out of the mix.
StackLayer stack_layer(const LayerKind& kind, Use use, bool on_top) {
  const Figure& depth = kind.taxon->depth_mm;
  const Millimetres least{depth.low}, most{depth.high};
  if (use == Use::outdoors) return {kind.height, Millimetres{depth.value}, least, most, 1.0};
  Millimetres cover = std::min(kind.height, usual_cover);
  std::optional<Millimetres> least_cover;
  if (on_top) {
    cover = kind.height < exposed_from_height ? forcing_cover : 0_mm - forcing_exposed;
    least_cover = cover;
  }
  const Millimetres high = kind.height + cover;
  return {kind.height, high, std::min(high, least), std::max(high, most), 1.0, least_cover};
}

PackKind pack_kind(const LayerKind& kind) {
  return {kind.diameter, kind.share, 0};
}

/// A gap narrower than asked by less is not told: nobody sets bulbs so exactly.
constexpr Millimetres worth_saying = 1_mm;

/// How many surely fit with so much between, on a lattice for the widest kind: a figure to think
/// by, which is not worth a second search.
int set_close(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
              Millimetres wall) {
  Millimetres widest;
  for (const PackKind& kind : kinds) widest = std::max(widest, kind.diameter);
  return static_cast<int>(lattice_count(section, widest + gap, wall + widest / 2.0));
}

void pack(const ResolvedLayer& layer, Effort effort, PackingCache& cache, PlannedLayer& planned,
          Layering& result) {
  std::vector<PackKind> kinds;
  for (const LayerKind& kind : layer.kinds) kinds.push_back(pack_kind(kind));
  const auto say = [&](NoticeCode code, Severity severity, std::vector<Detail> details) {
    result.ok = result.ok && severity != Severity::refusal;
    result.notices.push_back({code, severity, names_of(layer), std::move(details), planned.level});
  };
  const Arrange arrange = layer.request.arrange;
  Packing packing;
  if (layer.request.count) {
    std::vector<double> shares;
    for (const LayerKind& kind : layer.kinds) shares.push_back(kind.share);
    const std::vector<int> counts = apportion(*layer.request.count, shares);
    for (std::size_t i = 0; i < kinds.size(); ++i) kinds[i].count = counts[i];
    packing = cache.count(planned.section, kinds, least_gap, layer.wall, effort, arrange);
    planned.count_given = true;
    if (packing.bulbs.empty()) {
      say(NoticeCode::does_not_fit, Severity::refusal,
          {{DetailName::count, *layer.request.count}, {DetailName::least, least_gap}});
      if (const int most = set_close(planned.section, kinds, least_gap, layer.wall); most > 0)
        result.notices.back().details.push_back({DetailName::most, most});
    } else if (packing.gap <= layer.gap - worth_saying) {
      const Millimetres gap{std::floor(packing.gap.value() * 10.0 + 1e-6) / 10.0};
      say(NoticeCode::close_together, Severity::note,
          {{DetailName::count, *layer.request.count},
           {DetailName::gap, gap},
           {DetailName::usual, layer.gap}});
    }
  } else {
    packing = cache.most(planned.section, kinds, layer.gap, layer.wall, effort, arrange);
    if (layer.request.pattern != Pattern::dense && kinds.size() == 1) {
      planned.dense_count = static_cast<int>(packing.bulbs.size());
      PatternLayout laid =
          lay_pattern(planned.section, kinds.front(), layer.gap, layer.wall, layer.request.pattern);
      packing = std::move(laid.packing);
      planned.pattern = layer.request.pattern;
      planned.sets = std::move(laid.sets);
    }
    if (packing.bulbs.empty()) {
      say(NoticeCode::no_room, Severity::refusal, {});
    } else if (packing.bulbs.size() < kinds.size()) {
      say(NoticeCode::no_room, Severity::refusal,
          {{DetailName::most, static_cast<int>(packing.bulbs.size())}});
      packing.bulbs.clear();
    }
    if (layer.gap > close_gap) {
      planned.count_set_close = set_close(planned.section, kinds, close_gap, layer.wall);
    }
  }
  planned.arrange = arrange;
  planned.own = layer.request.own;
  planned.gap = packing.bulbs.empty() ? layer.gap : packing.gap;
  planned.least_gap = packing.least_gap;
  planned.count = static_cast<int>(packing.bulbs.size());
  planned.upper_bound = static_cast<int>(packing.upper_bound);
  planned.bound_name = packing.bound_name;
  for (const PlacedBulb& bulb : packing.bulbs) {
    const LayerKind& kind = layer.kinds[bulb.kind];
    planned.positions.push_back({kind.taxon->id, bulb.x_mm, bulb.y_mm, kind.diameter});
  }
}

void count_bulbs(const ResolvedLayer& layer, PlannedLayer& planned) {
  for (const LayerKind& kind : layer.kinds) {
    const auto is_kind = [&](const BulbPosition& at) { return at.taxon == kind.taxon->id; };
    const auto count = std::count_if(planned.positions.begin(), planned.positions.end(), is_kind);
    planned.bulbs.push_back({kind.taxon->id, kind.taxon->name, layer.request.label,
                             fmt::format("{:g}", kind.grade_cm), static_cast<int>(count),
                             kind.diameter});
  }
}

/// Before any work: a layer of more bulbs than are ever packed has a wrong size somewhere.
void refuse_too_many(const ResolvedLayer& layer, const Section& section) {
  if (layer.request.count) return;
  std::vector<PackKind> kinds;
  for (const LayerKind& kind : layer.kinds) kinds.push_back(pack_kind(kind));
  const std::size_t most = upper_bound(section, kinds, layer.gap, layer.wall).most;
  if (most <= most_bulbs_of_a_layer) return;
  throw InvalidValue{fmt::format("layers[{}]", layer.request.listed_at),
                     fmt::format("up to {} bulbs would fit; expected at most {} in one layer: a "
                                 "wider gap or a smaller pot",
                                 most, most_bulbs_of_a_layer)};
}

}  // namespace

Millimetres usual_gap(const Taxon& taxon, bool single_layer) {
  const Millimetres diameter = diameter_of_circumference(taxon.circumference_cm.value);
  const Millimetres gap{
      std::max(close_gap.value(), rounded(taxon.spacing_mm.value - diameter.value(), 5.0))};
  return single_layer && gap <= Millimetres{25.0} ? std::min(gap, single_layer_gap) : gap;
}

std::vector<ResolvedLayer> resolve_layers(std::span<const LayerRequest> layers,
                                          const Catalogue& catalogue) {
  std::vector<ResolvedLayer> resolved;
  for (const LayerRequest& request : layers) {
    ResolvedLayer layer;
    layer.request = request;
    for (const LayerPart& part : request.parts)
      layer.kinds.push_back(measured(part, request, catalogue));
    layer.wall = request.wall.value_or(request.use == Use::forcing ? forcing_wall : default_wall);
    if (request.gap) {
      layer.gap = *request.gap;
    } else if (request.forcing_gap || request.use == Use::forcing) {
      layer.gap = forcing_gap;
    } else {
      for (const LayerKind& kind : layer.kinds) {
        layer.gap = std::max(layer.gap, usual_gap(*kind.taxon, layers.size() == 1));
      }
    }
    resolved.push_back(std::move(layer));
  }
  return resolved;
}

Stack stack_of(std::span<const ResolvedLayer> layers, const Pot& pot) {
  StackRequest request;
  request.mix_surface = mix_surface(pot);
  if (!layers.empty() && layers.front().request.use == Use::forcing)
    request.floor_margin = forcing_floor_margin;
  for (const ResolvedLayer& layer : layers) {
    std::vector<StackLayer> kinds;
    for (const LayerKind& kind : layer.kinds) {
      kinds.push_back(stack_layer(kind, layer.request.use, &layer == &layers.back()));
    }
    const std::optional<StackLayer> common = common_layer(kinds);
    if (!common) return {};
    request.layers.push_back(*common);
  }
  return stack_layers(request);
}

Layering plan_layers(std::span<const ResolvedLayer> layers, const Pot& pot, Effort effort,
                     PackingCache& cache) {
  Layering result;
  const Stack stack = stack_of(layers, pot);
  if (!stack.feasible) {
    infeasible_notice(stack, layers, pot, result);
    return result;
  }
  if (stack.over_nose_reduced) {
    result.notices.push_back(
        {NoticeCode::thin_between,
         Severity::note,
         {},
         {{DetailName::over, stack.over_nose}, {DetailName::usual, wanted_over_nose}}});
  }
  const auto section_of = [&](const StackedLayer& at) {
    return smallest_section(pot, at.base, at.nose - at.base);
  };
  for (std::size_t i = 0; i < layers.size(); ++i) {
    refuse_too_many(layers[i], section_of(stack.layers[i]));
  }
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const StackedLayer& at = stack.layers[i];
    PlannedLayer planned;
    planned.level = static_cast<int>(i) + 1;
    planned.depth = at.depth;
    planned.below_rim = at.depth + pot.headspace;
    planned.fill_below_rim = planned.below_rim;
    planned.above_floor = at.base;
    planned.bulb_height = at.nose - at.base;
    planned.cover = at.cover;
    planned.section = section_of(at);
    planned.wall = layers[i].wall;
    pack(layers[i], effort, cache, planned, result);
    count_bulbs(layers[i], planned);
    result.layers.push_back(std::move(planned));
  }
  return result;
}

}  // namespace bulbwright
