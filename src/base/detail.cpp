#include "base/detail.hpp"

#include <algorithm>

namespace bulbwright {

bool Detail::operator==(const Detail& other) const {
  return name == other.name && value == other.value;
}

bool Remark::operator==(const Remark& other) const {
  return code == other.code && kinds == other.kinds && details == other.details;
}

const DetailValue* find_detail(std::span<const Detail> details, DetailName name) {
  const auto found = std::ranges::find(details, name, &Detail::name);
  return found == details.end() ? nullptr : &found->value;
}

}  // namespace bulbwright
