#pragma once

#include "evidence.hpp"

namespace bulbwright::fit {

/// What growers know without a date: kinds that flower after others, and the months that the
/// catalogue gives for zones 6 and 7. Weak statements for the fit, none to judge it by.
void add_practice(Evidence& evidence, const Catalogue& catalogue);

}  // namespace bulbwright::fit
