#include "base/origin.hpp"

#include <array>
#include <cstddef>

namespace bulbwright {

const char* to_string(Origin origin) {
  constexpr std::array words{"published", "common practice", "from memory"};
  return words[static_cast<std::size_t>(origin)];
}

}  // namespace bulbwright
