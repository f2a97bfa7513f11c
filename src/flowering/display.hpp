#pragma once

#include <span>

#include "flowering/wave.hpp"

namespace bulbwright {

/// The show as a whole: from the first to the last open flower, the days on which something is
/// open, the longest run of them, and the gaps between. A day counts once however many waves are
/// open.
Display display_of(std::span<const PlannedWave> waves);

}  // namespace bulbwright
