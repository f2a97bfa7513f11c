#pragma once

#include <optional>

#include "base/notice.hpp"
#include "climate/frost_climate.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright {

struct Taxon;

/// Hard frost of the mix against what bulbs stand.

/// Lowest temperature that the mix reaches in an average year's hardest frost, in whole degrees:
/// five days with the annual low at night and the coldest month's daily range above it, after that
/// month's mean; sunk in the ground three tenths of it. Normals hold no spells, so their own lowest
/// says nothing about frost. `cold`, `plan` and `suggest` all go by it.
Celsius lowest_in_frost(const FrostClimate& climate, const PotThermal& pot, Exposure exposure);

/// Where `lowest_mix`, the result of lowest_in_frost(), hurts roots: the notice that says so.
std::optional<Notice> frost_notice(const FrostClimate& climate, Celsius lowest_mix);

/// What that frost does to a kind planted in autumn and rooted. Kinds hardy from zone 8 or warmer
/// alone are tender: they grow through the winter, and nothing is gained by letting them freeze a
/// little.
enum class FrostHarm {
  none,
  hurt,  ///< bulbs die unless they are sheltered
  dies   ///< a tender kind where none lives
};

/// The mix below frost_lethal_temp of the kind (data/SOURCES.md): hurt below its value, and a
/// tender kind dies below its low.
FrostHarm frost_harm(const Taxon& taxon, Celsius lowest_mix);

/// Below this rooted bulbs of the kind begin to die.
Celsius frost_lethal(const Taxon& taxon);

}  // namespace bulbwright
