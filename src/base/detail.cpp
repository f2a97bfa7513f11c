#include "base/detail.hpp"

#include <algorithm>
#include <array>

namespace bulbwright {
namespace {

/// In the order of DetailName.
constexpr std::array<const char*, detail_names> words{
    "advice",    "air",     "all",      "available", "before",    "after",  "asked",   "chance",
    "changes",   "closed",  "count",    "day",       "day_limit", "days",   "drop",    "eaters",
    "expect",    "flowers", "gap",      "genus",     "given",     "height", "highest", "hour_limit",
    "hours",     "hurtful", "january",  "july",      "lacking",   "last",   "least",   "leaves",
    "limit",     "lowest",  "material", "mild",      "mix",       "most",   "mouths",  "nearest",
    "needed",    "off",     "open",     "other",     "over",      "place",  "planted", "possible",
    "predicted", "region",  "share",    "start",     "stations",  "stored", "usual",   "wanted",
    "why",       "window",  "windows",  "winter",    "winters",   "yearly", "zone",    "zones"};
static_assert(words.back() != nullptr, "a word for every detail");

}  // namespace

const char* to_string(DetailName name) {
  return words[static_cast<std::size_t>(name)];
}

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
