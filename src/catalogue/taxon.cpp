#include "catalogue/taxon.hpp"

#include <numbers>

namespace bulbwright {
std::string plain_name(std::string_view name) {
  std::string out{name};
  for (std::size_t open = out.find(" ("); open != std::string::npos; open = out.find(" (")) {
    const std::size_t close = out.find(')', open);
    if (close == std::string::npos) {
      out.erase(open);
    } else {
      out.erase(open, close - open + 1);
    }
  }
  if (const std::size_t comma = out.find(','); comma != std::string::npos) out.erase(comma);
  return out.empty() ? std::string{name} : out;
}

Millimetres diameter_of_circumference(double circumference_cm) {
  return Millimetres{10.0 * circumference_cm / std::numbers::pi};
}

}  // namespace bulbwright
