#include "report/plan_text.hpp"

#include <cstdio>

#include <catch2/catch.hpp>

#include "plan_fixture.hpp"
#include "report/text_layout.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {

Lines lines_of(const std::string& text) {
  Lines lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the terrace plan is under 70 lines and 80 columns", "[plan_text]") {
  const Lines lines = lines_of(plan_text(fixture::terrace_plan(), {}));
  CHECK(lines.size() < 70);
  for (const std::string& line : lines) CHECK(columns(line) <= 80);
}

TEST_CASE("steps come from the bottom up with one ruler figure a level", "[plan_text]") {
  const std::string text = plan_text(fixture::terrace_plan(), {});
  const std::size_t bottom = text.find("Bottom layer: "), middle = text.find("Middle layer: "),
                    top = text.find("Top layer: ");
  REQUIRE(top != std::string::npos);
  CHECK(bottom < middle);
  CHECK(middle < top);
  CHECK(has(text, "275 mm"));
  CHECK(has(text, "204 mm"));
  CHECK(has(text, "117 mm"));
  CHECK(has(text, "19 Triumph tulips"));
  CHECK(has(text, "spring 2027"));
}

TEST_CASE("a refusal stands at the top in plain words", "[plan_text]") {
  Plan plan = fixture::terrace_plan();
  plan.ok = false;
  plan.notices.push_back({"too-shallow", Severity::refusal,
                          "a pot 400 mm deep would do, or leave out the middle layer"});
  const std::string text = plan_text(plan, {});
  CHECK(has(text, "No, it cannot be done as asked:\n"));
  CHECK(text.find("A pot 400 mm deep would do") < text.find("275 mm"));
}

// Prints plans for reading: bulbwright_tests "[show]".
TEST_CASE("show the terrace plan", "[.][show]") {
  std::fputs(plan_text(fixture::terrace_plan(), {}).c_str(), stdout);
}
