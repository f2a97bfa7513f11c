#pragma once

#include "plan/planner.hpp"

/// All built-in facts, for tests of plans.
namespace bulbwright::fixture {

struct World {
  Catalogue catalogue = builtin_catalogue();
  BloomTable blooms = BloomTable::builtin();
  PlaceCatalogue places = PlaceCatalogue::builtin();
  PackingCache packings;
};

inline World& world() {
  static World known;
  return known;
}

}  // namespace bulbwright::fixture
