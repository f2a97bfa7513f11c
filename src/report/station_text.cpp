#include "report/station_text.hpp"

#include <fmt/core.h>

#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {

std::string stations_text(std::span<const BlendedStation> stations, int farther,
                          const TextStyle& style) {
  std::string text;
  for (const BlendedStation& station : stations) {
    text += fmt::format(
        "{}{} ({} away, {}, weight {:.2f})", text.empty() ? "" : "; ", printable(station.name),
        distance_text(Millimetres{1e6 * station.distance_km}, style),
        higher_text(Millimetres{1e3 * station.higher_m}, style), rounded(station.weight, 0.01));
  }
  return fmt::format("{}; and {} farther ones", text, farther);
}

}  // namespace bulbwright::report
