#pragma once

#include <string>
#include <vector>

#include "base/quantity.hpp"

namespace bulbwright {

/// Figures inside the sentences of notices, which are read with either ruler and either
/// thermometer.

/// "410 mm (16 1/8 in)", upwards to the millimetre, inches to the nearest eighth.
std::string both_rulers(Millimetres length);

/// "-4 degrees C (25 F)", to half a degree C and a whole degree F.
std::string both_scales(Celsius temperature);

/// "1 week", "8.5 weeks", to half a week.
std::string weeks_text(double weeks);

/// "1 day", "12 days".
std::string days_text(int days);

/// "a", "a or b", "a, b or c", with `last` between the last two.
std::string listed(const std::vector<std::string>& words, const char* last);

}  // namespace bulbwright
