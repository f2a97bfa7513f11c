#include "plan/companions.hpp"

namespace bulbwright {
namespace {

bool opposite(Moisture a, Moisture b) {
  return (a == Moisture::dry && b == Moisture::moist) ||
         (a == Moisture::moist && b == Moisture::dry);
}

bool opposite(Light a, Light b) {
  return (a == Light::sun && b == Light::part_shade) || (a == Light::part_shade && b == Light::sun);
}

/// A notice about one kind beside another.
void say(NoticeCode code, Severity severity, const Taxon& kind, const Taxon& other,
         std::vector<Notice>& notices) {
  notices.push_back({code,
                     severity,
                     {{kind.id, kind.name}},
                     {{DetailName::other, std::vector<KindName>{{other.id, other.name}}}}});
}

/// Leaves of `early` stand at their full height when `late` flowers.
void compare_heights(const Companion& early, const Companion& late, std::vector<Notice>& notices) {
  const double leaves = early.taxon->foliage_height_cm.high, flowers = late.taxon->height_cm.value;
  if (flowers >= leaves) return;
  say(NoticeCode::hidden_by_leaves, Severity::note, *late.taxon, *early.taxon, notices);
  notices.back().details.push_back({DetailName::flowers, Millimetres{10.0 * flowers}});
  notices.back().details.push_back({DetailName::leaves, Millimetres{10.0 * leaves}});
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
        say(NoticeCode::leaf_mat, Severity::note, *early.taxon, *late.taxon, notices);
      }
    }
  }
  for (std::size_t i = 0; i < companions.size(); ++i) {
    for (std::size_t j = i + 1; j < companions.size(); ++j) {
      const Taxon& a = *companions[i].taxon;
      const Taxon& b = *companions[j].taxon;
      if (&a == &b) continue;
      if (opposite(a.moisture_growth, b.moisture_growth))
        say(NoticeCode::opposite_water, Severity::warning, a, b, notices);
      if (opposite(a.moisture_rest, b.moisture_rest))
        say(NoticeCode::opposite_rest, Severity::note, a, b, notices);
      if (opposite(a.light, b.light))
        say(NoticeCode::opposite_light, Severity::warning, a, b, notices);
    }
  }
  return notices;
}

}  // namespace bulbwright
