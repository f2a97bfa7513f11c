#pragma once

#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/detail.hpp"
#include "base/enum_words.hpp"
#include "catalogue/pest.hpp"

namespace bulbwright {

/// What a grower asks of the stacks that suggest() may find.

enum class Mouth { cats, dogs, horses, people };
constexpr auto enum_words(Mouth) {
  return words_to<Mouth::people>("cats", "dogs", "horses", "people");
}
/// As they are said.
Remark remark_of(Mouth mouth);
Remark remark_of(Pest pest);
template <class Word>
std::vector<Remark> remarks_of(const std::vector<Word>& words) {
  std::vector<Remark> remarks;
  for (const Word word : words) remarks.push_back(remark_of(word));
  return remarks;
}

struct SuggestionWish {
  DayWindow window;                  ///< in which flowers are wanted
  int most_layers = 3;               ///< 1 to most_suggested_layers
  bool no_storage = false;           ///< no refrigerator
  std::vector<Mouth> safe_for;       ///< only kinds with no known poison; unverified is poisonous
  std::vector<Pest> not_eaten_by;    ///< only kinds rarely eaten; unknown counts as eaten
  std::vector<std::string> with;     ///< ids that must be in it; at most most_layers
  std::vector<std::string> without;  ///< ids that must not be in it
  int count = 5;                     ///< how many are shown, 1 or more
};
inline constexpr int most_suggested_layers = 4;

}  // namespace bulbwright
