#include "base/utf8.hpp"

namespace bulbwright {

std::size_t utf8_sequence_length(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
  const unsigned char lead = byte(i);
  std::size_t length = 0;
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead < 0xe0) length = 2;
  if (lead >= 0xe0 && lead < 0xf0) length = 3;
  if (lead >= 0xf0 && lead < 0xf5) length = 4;
  if (length == 0 || i + length > text.size()) return 0;
  for (std::size_t k = 1; k < length; ++k) {
    if ((byte(i + k) & 0xc0U) != 0x80U) return 0;
  }
  // Overlong forms, surrogates and values above U+10FFFF.
  if (lead == 0xe0 && byte(i + 1) < 0xa0) return 0;
  if (lead == 0xed && byte(i + 1) >= 0xa0) return 0;
  if (lead == 0xf0 && byte(i + 1) < 0x90) return 0;
  if (lead == 0xf4 && byte(i + 1) >= 0x90) return 0;
  return length;
}

std::size_t code_points(std::string_view text) {
  std::size_t points = 0;
  for (std::size_t i = 0; i < text.size(); ++points) {
    const std::size_t length = utf8_sequence_length(text, i);
    i += length == 0 ? 1 : length;
  }
  return points;
}

}  // namespace bulbwright
