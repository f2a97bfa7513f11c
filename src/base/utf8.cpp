#include "base/utf8.hpp"

#include <array>

namespace bulbwright {

CodePoint code_point_at(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[i + k]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return {lead, 1, true};
  const std::size_t bytes = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || text.size() - i < bytes) return {};
  char32_t value = lead & (0xffU >> (bytes + 1));
  for (std::size_t k = 1; k < bytes; ++k) {
    if ((byte(k) & 0xc0U) != 0x80U) return {};
    value = (value << 6U) | (byte(k) & 0x3fU);
  }
  constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = value >= 0xd800 && value <= 0xdfff;
  if (value < least[bytes] || value > 0x10ffff || surrogate) return {};
  return {value, bytes, true};
}

std::size_t code_points(std::string_view text) {
  std::size_t points = 0;
  for (std::size_t i = 0; i < text.size(); ++points) i += code_point_at(text, i).bytes;
  return points;
}

bool is_control(char32_t value) {
  return value < 0x20 || (value >= 0x7f && value <= 0x9f) || value == 0x061c ||
         (value >= 0x2028 && value <= 0x202e) || (value >= 0x2066 && value <= 0x2069);
}

}  // namespace bulbwright
