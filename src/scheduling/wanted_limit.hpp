#pragma once

#include "scheduling/timing_options.hpp"
#include "scheduling/wanted_day.hpp"

namespace bulbwright {

/// find_wanted_day() with some limits lifted, the limit left out.
WantedAnswer answer_within(TimingMemo& memo, Day ordinary, DayWindow wanted, LimitSet lifted);

/// What keeps an answer from being nearer: each limit is lifted alone, and the one whose absence
/// brings the flowers nearest is told; where only all of them together help, that is told; where
/// nothing helps, the winter decides.
Remark binding_limit(TimingMemo& memo, const WantedAnswer& answer);

}  // namespace bulbwright
