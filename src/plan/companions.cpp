#include "plan/companions.hpp"

#include <fmt/core.h>

namespace bulbwright {
namespace {

bool opposite(Moisture a, Moisture b) {
  return (a == Moisture::dry && b == Moisture::moist) ||
         (a == Moisture::moist && b == Moisture::dry);
}

bool opposite(Light a, Light b) {
  return (a == Light::sun && b == Light::part_shade) || (a == Light::part_shade && b == Light::sun);
}

/// Leaves of `early` stand at their full height when `late` flowers.
void compare_heights(const Companion& early, const Companion& late, std::vector<Notice>& notices) {
  const double leaves = early.taxon->foliage_height_cm.high, flowers = late.taxon->height_cm.value;
  if (flowers >= leaves) return;
  notices.push_back(
      {"hidden-by-leaves", Severity::note,
       fmt::format("{}: its flowers, at about {:g} cm, may be hidden among leaves of {}, {:g} cm "
                   "high",
                   plain_name(late.taxon->name), flowers, plain_name(early.taxon->name), leaves)});
}

}  // namespace

bool opposite_wishes(const Taxon& a, const Taxon& b) {
  return opposite(a.moisture_growth, b.moisture_growth) || opposite(a.light, b.light);
}

std::vector<Notice> company_notices(std::span<const Companion> companions) {
  std::vector<Notice> notices;
  for (const Companion& early : companions) {
    for (const Companion& late : companions) {
      if (early.taxon == late.taxon || early.wave.layer == late.wave.layer) continue;
      if (early.wave.peak >= late.wave.peak) continue;
      compare_heights(early, late, notices);
      if (early.taxon->foliage_density == FoliageDensity::mat) {
        notices.push_back(
            {"leaf-mat", Severity::note,
             fmt::format("{}: makes a mat of leaves; part it where the noses of {} come up",
                         plain_name(early.taxon->name), plain_name(late.taxon->name))});
      }
    }
  }
  for (std::size_t i = 0; i < companions.size(); ++i) {
    for (std::size_t j = i + 1; j < companions.size(); ++j) {
      const Taxon& a = *companions[i].taxon;
      const Taxon& b = *companions[j].taxon;
      if (&a == &b) continue;
      if (opposite(a.moisture_growth, b.moisture_growth)) {
        notices.push_back({"opposite-water", Severity::warning,
                           fmt::format("{} and {} want opposite watering in growth",
                                       plain_name(a.name), plain_name(b.name))});
      }
      if (opposite(a.moisture_rest, b.moisture_rest)) {
        notices.push_back(
            {"opposite-rest", Severity::note,
             fmt::format("{} and {} want opposite watering at rest: lift one of them after "
                         "flowering",
                         plain_name(a.name), plain_name(b.name))});
      }
      if (opposite(a.light, b.light)) {
        notices.push_back({"opposite-light", Severity::warning,
                           fmt::format("{} and {} want opposite light (sun, part shade)",
                                       plain_name(a.name), plain_name(b.name))});
      }
    }
  }
  return notices;
}

}  // namespace bulbwright
