#pragma once

#include <span>
#include <vector>

#include "base/notice.hpp"
#include "catalogue/taxon.hpp"
#include "plan/plan.hpp"

namespace bulbwright {

/// One kind in the pot with its predicted wave.
struct Companion {
  const Taxon* taxon = nullptr;
  PlannedWave wave;
};

/// What kinds in one pot do to each other: a later wave shorter than leaves that stand already, a
/// mat of leaves over later noses, opposite wishes for water or light. common practice
std::vector<Notice> company_notices(std::span<const Companion> companions);

/// True where two kinds want opposite water (dry against moist) or light (sun against part shade):
/// the one thing that suggestions rule out.
bool opposite_wishes(const Taxon& a, const Taxon& b);

}  // namespace bulbwright
