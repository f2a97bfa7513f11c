#pragma once

#include <optional>
#include <vector>

#include "base/notice.hpp"
#include "plan/context.hpp"
#include "plan/plan.hpp"
#include "plan/pot_case.hpp"
#include "plan/request.hpp"

namespace bulbwright {

/// Wishes about time and order, settled before a plan is made: what comes out is an ordinary
/// request, whose forward plan is the answer, and which can be saved.

/// True where a request leaves something to settle(): a wanted flowering day without a planting
/// day, waves to spread, or layers to put in the order of flowering.
bool has_wish(const Request& request);

struct Settled {
  PotCase
      pot_case;  ///< its request with plant, and storage_weeks where they are not the usual ones
  std::optional<WantedReport> wanted;
  std::optional<SpreadReport> spread;
  std::vector<Notice> notices;
};

/// Settles the order of the layers by their peaks, at their usual depths and on the day that the
/// list as given leads to: the latest kind of a layer counts. An order in which the stack does not
/// fit the pot is not taken, with a notice. Then the day, for the layers in that order.
Settled settle(PotCase asked, const PlanContext& context);

}  // namespace bulbwright
