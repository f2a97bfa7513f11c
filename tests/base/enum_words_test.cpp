#include "base/enum_words.hpp"

#include <set>

#include <catch2/catch.hpp>

#include "base/origin.hpp"
#include "catalogue/pest.hpp"
#include "catalogue/use.hpp"
#include "caution/caution.hpp"
#include "climate/place.hpp"
#include "input/record_columns.hpp"
#include "layers/layer_request.hpp"
#include "materials/lifting.hpp"
#include "plan/task.hpp"
#include "pot/section.hpp"
#include "shopping/shopping.hpp"
#include "suggest/wish.hpp"

using namespace bulbwright;

namespace {

/// Words are told apart, none is empty, and each gives its enumerator again.
template <class Enum>
void check_words() {
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < words_of<Enum>().size(); ++i) {
    const std::string_view word = words_of<Enum>()[i];
    CAPTURE(word);
    CHECK_FALSE(word.empty());
    CHECK(seen.insert(word).second);
    CHECK(from_word<Enum>(word) == static_cast<Enum>(i));
    CHECK(word_of(static_cast<Enum>(i)) == word);
  }
  CHECK_FALSE(from_word<Enum>("no such word"));
  CHECK_FALSE(from_word<Enum>(""));
}

template <class... Enum>
void check_all() {
  (check_words<Enum>(), ...);
}

}  // namespace

TEST_CASE("every word of an enumeration names one enumerator", "[enum_words][law]") {
  check_all<Origin, ColdForm, RootingStart, Eaten, Toxicity, Light, Moisture, FoliageDensity,
            AfterFlowering, PlantBy, Pest, Use, Shape, Effort, Arrange, LayerOrder, Exposure,
            ZoneRegion, CautionSeverity, Task, ItemKind, LiftVerdict, Mouth, input::RecordFormat>();
}

TEST_CASE("words are taken as written", "[enum_words][input]") {
  CHECK(from_word<Shape>("half-round") == Shape::half_round);
  CHECK_FALSE(from_word<Shape>("Round"));
  CHECK_FALSE(from_word<Shape>("round "));
  CHECK(word_of(Exposure::warm_wall) == "warm-wall");
  CHECK(word_of(Task::after_flowering) == "after-flowering");
}
