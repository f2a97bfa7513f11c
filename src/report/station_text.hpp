#pragma once

#include <span>
#include <string>

#include "climate/place.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// The stations of a blend: "Davis, California (20 km away, 9 m higher, weight 0.61); ... and 18
/// farther ones".
std::string stations_text(std::span<const BlendedStation> stations, int farther,
                          const TextStyle& style);

}  // namespace bulbwright::report
