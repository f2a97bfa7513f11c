#pragma once

#include <string>

#include "plan/plan.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// A plan for a person at a potting bench with a ruler: whether it can be done, the steps in the
/// order one fills the pot, a side view to scale, what to buy, the refrigerator, dates, a bloom
/// chart by week, materials, notices and cautions. Parts with nothing to say are left out. At most
/// 99 columns (style.width where that is less). Under 70 lines for up to three layers of the usual
/// amount of advice: the more there is to say, the closer it is set.
std::string plan_text(const Plan& plan, const TextStyle& style);

}  // namespace bulbwright::report
