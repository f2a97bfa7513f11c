#include "base/notice.hpp"

#include <array>

namespace bulbwright {
namespace {

/// In the order of NoticeCode.
constexpr std::array<const char*, notice_codes> words{
    "never-refrigerate",
    "storage-too-long",
    "storage-long",
    "storage-before-bulbs",
    "storage-shortened",
    "under-chilled",
    "less-than-recommended",
    "chill-in-pot",
    "storage-temperature",
    "over-chilled",
    "no-natural-cold",
    "enough-winter",
    "pot-freezes",
    "no-flower",
    "too-shallow",
    "does-not-fit",
    "no-room",
    "close-together",
    "thin-between",
    "order-kept",
    "flowers-before-layer-above",
    "hidden-by-leaves",
    "leaf-mat",
    "opposite-water",
    "opposite-rest",
    "opposite-light",
    "used-mix",
    "hardiness",
    "assumed",
    "zone-alone",
    "zone-stations",
    "normals-no-winter",
    "gaps-filled",
    "values-rejected",
    "days-missing",
    "no-common-window",
    "mix-warm",
    "mix-too-warm",
    "wanted-day",
    "wanted-day-off",
    "wanted-day-missed",
    "wanted-day-unreachable",
    "wanted-window",
    "wanted-window-part",
    "spread",
    "no-tulip-pot",
    "none-known-safe",
    "nothing-found",
};
static_assert(words.back() != nullptr, "a word for every code");

}  // namespace

const char* to_string(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::warning:
      return "warning";
    case Severity::refusal:
      return "refusal";
  }
  return "";
}

const char* to_string(NoticeCode code) {
  return words[static_cast<std::size_t>(code)];
}

}  // namespace bulbwright
