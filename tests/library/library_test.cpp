// The installed headers, used as a stranger would: no header of src/ in sight.
#include <cmath>

#include <catch2/catch.hpp>

#include "bulbwright/bad_input.hpp"
#include "bulbwright/catalogue.hpp"
#include "bulbwright/packing.hpp"
#include "bulbwright/planner.hpp"

namespace {

namespace library = bulbwright::library;

constexpr const char* steps = R"({
  "pot": { "name": "south steps", "top": "380 mm", "base": "290 mm", "height": "360 mm" },
  "place": { "zone": "9b" },
  "season": 2026,
  "layers": [ { "taxon": "tulip-triumph" }, { "taxon": "crocus-large" } ]
})";

}  // namespace

TEST_CASE("text of a pot file goes in and a plan comes out", "[library]") {
  library::Planner planner;
  const auto answer = planner.plan(steps);
  CHECK(answer.can_be_carried_out);
  CHECK(answer.json.find("\"bulbwright.plan/1\"") != std::string::npos);
  CHECK(answer.json.back() == '\n');
  CHECK(planner.plan(steps).json == answer.json);  // remembered packings change nothing
  CHECK(library::Planner{}.plan(steps).json == answer.json);
}

TEST_CASE("the sheet is the one of the command line, in either ruler", "[library]") {
  library::Planner planner;
  CHECK(planner.sheet(steps, {}).find("380 mm across the rim") != std::string::npos);
  library::Planner::SheetStyle inches;
  inches.inches = true;
  CHECK(planner.sheet(steps, inches).find("15 in across the rim") != std::string::npos);
}

TEST_CASE("a pot too low for its layers is an answer and no exception", "[library]") {
  library::Planner planner;
  const auto answer = planner.plan(
      R"({ "pot": { "top": "200 mm", "height": "120 mm" }, "place": { "zone": "8a" },
           "season": 2026, "layers": [ { "taxon": "tulip-triumph" }, { "taxon": "muscari" },
                                       { "taxon": "crocus-large" } ] })");
  CHECK_FALSE(answer.can_be_carried_out);
  CHECK(answer.json.find("refusal") != std::string::npos);
}

TEST_CASE("wrong text is told with its line, column and near miss", "[library][input]") {
  library::Planner planner;
  try {
    planner.plan("{\n  \"pott\": {}\n}", "mine.json");
    FAIL("no exception");
  } catch (const library::BadInput& bad) {
    REQUIRE_FALSE(bad.faults().empty());
    CHECK(bad.faults()[0].file == "mine.json");
    CHECK(bad.faults()[0].line == 2);
    CHECK(bad.faults()[0].column == 3);
    CHECK(bad.faults()[0].message.find("did you mean \"pot\"") != std::string::npos);
    CHECK(std::string{bad.what()}.find("mine.json:2:3: error: ") != std::string::npos);
  }
}

// Graham, Lubachevsky, Nurmela and Ostergard (1998): seven equal discs, one in the middle of six,
// need a circle of three diameters; proven. Places are whole hundredths of a millimetre, hence the
// one millimetre of play.
TEST_CASE("seven coins fill a circle of three diameters", "[library][published]") {
  library::Outline outline;
  outline.length_mm = 301.0;
  const library::Layout layout = library::pack(outline, 100.0, 0.0, 0.0);
  REQUIRE(layout.points.size() == 7);
  CHECK(layout.upper_bound == 7);
  CHECK(layout.least_gap_mm >= 0.0);
  for (const library::Point& point : layout.points)
    CHECK(std::hypot(point.x_mm, point.y_mm) <= 100.5 + 1e-6);
}

TEST_CASE("an outline that cannot be is refused by the name of its field", "[library][input]") {
  library::Outline outline;
  outline.shape = library::Shape::rectangle;
  outline.length_mm = 300.0;
  CHECK_THROWS_WITH(library::pack(outline, 40.0, 3.0, 10.0), Catch::Contains("width_mm"));
  outline.width_mm = 200.0;
  outline.corner_mm = 120.0;
  CHECK_THROWS_WITH(library::pack(outline, 40.0, 3.0, 10.0), Catch::Contains("corner_mm"));
  outline.corner_mm = 0.0;
  CHECK_THROWS_WITH(library::pack(outline, std::nan(""), 3.0, 10.0),
                    Catch::Contains("diameter_mm"));
}

TEST_CASE("every kind that is listed can be asked for", "[library]") {
  for (const library::Kind& kind : library::kinds())
    CHECK(library::kind_json(kind.id).find("\"" + kind.id + "\"") != std::string::npos);
  CHECK_THROWS_WITH(library::kind_json("tulip-trimph"), Catch::Contains("tulip-triumph"));
}
