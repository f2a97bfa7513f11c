#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "cli/judged_options.hpp"
#include "input/judged_pot_file.hpp"

using namespace bulbwright;
using namespace bulbwright::cli;

namespace {

constexpr const char* steps = R"({
  "pot": { "name": "south steps", "top": "380 mm", "base": "290 mm", "height": "360 mm" },
  "place": { "site": "Aberdeen", "records": "old.csv", "exposure": "sheltered" },
  "season": 2026, "plant": "2027-01-08", "pests": ["deer"],
  "layers": [ { "taxon": "tulip-triumph", "grade": "12" }, { "taxon": "crocus-large" } ] })";

Request file_with(const PotOptions& options) {
  return merged(input::read_pot_file(steps, "a.json", input::Extent::partial), options).request;
}

std::string fault_of(const PotOptions& options, bool with_file = false) {
  try {
    (void)(with_file ? file_with(options) : merged(std::nullopt, options).request);
    return "";
  } catch (const InputError& error) {
    return describe(error);
  }
}

std::string error(const std::string& text) {
  return "bulbwright: error: " + text + "\n";
}

/// Enough flags for a plan.
PotOptions enough() {
  PotOptions options;
  options.top = "15 in";
  options.zone = "9b";
  options.layers = {"tulip-triumph"};
  return options;
}

}  // namespace

TEST_CASE("flags alone make a request", "[pot_options]") {
  PotOptions options = enough();
  options.base = "12 in";
  options.height = "14 in";
  options.season = "2026";
  options.plant = "2027-01-08";
  options.layers = {"tulip-triumph = 20, own, rooted",
                    "2 narcissus-jonquilla + 1 muscari = 30 , in growth", "crocus-large"};
  options.gap = "1 in";
  options.storage_temperature = "41 F";
  options.storage_weeks = "0";
  options.pests = {"deer, vole", "deer"};
  options.last_crop = " Tulipa";
  const Request request = merged(std::nullopt, options).request;
  CHECK(request.pot.top->first == 381_mm);
  CHECK(request.pot.last_crop == "tulipa");
  CHECK(request.pot.used_mix);
  CHECK(request.place->zone == "9b");
  CHECK(request.season == 2026);
  CHECK(request.plant == Day{2027, 1, 8});
  REQUIRE(request.layers.size() == 3);
  CHECK(request.layers[0].count == 20);
  CHECK(request.layers[0].own);
  CHECK_FALSE(request.layers[1].own);
  CHECK(request.layers[1].parts ==
        std::vector<LayerPart>{{"narcissus-jonquilla", 2.0}, {"muscari", 1.0}});
  CHECK(request.layers[1].count == 30);
  CHECK(request.layers[0].state == BulbState::rooted);
  CHECK(request.layers[1].state == BulbState::in_growth);
  CHECK(request.layers[2].state == BulbState::dry);
  CHECK_FALSE(request.layers[2].count.has_value());
  CHECK(request.layers[2].gap == Millimetres{25.4});
  CHECK(request.storage.temperature == 5_degc);
  CHECK(request.storage.weeks == 0.0);
  CHECK(request.pests == std::vector{Pest::deer, Pest::vole});
}

TEST_CASE("weeks of storage by flag hold for every kind of the file", "[pot_options]") {
  input::LocatedRequest file = input::read_pot_file(steps, "a.json", input::Extent::partial);
  file.request.layers[0].parts[0].storage_weeks = 7.0;
  CHECK(merged(file, {}).request.layers[0].parts[0].storage_weeks == 7.0);
  PotOptions options;
  options.storage_weeks = "3";
  const Request request = merged(file, options).request;
  CHECK(request.storage.weeks == 3.0);
  CHECK_FALSE(request.layers[0].parts[0].storage_weeks);
}

TEST_CASE("flags win over the file", "[pot_options]") {
  PotOptions options;
  options.top = "400 mm";
  options.layers = {"muscari"};
  options.pests = {"vole"};
  const Request request = file_with(options);
  CHECK(request.pot.top->first == 400_mm);
  CHECK(request.pot.name == "south steps");
  CHECK(request.pot.base->first == 290_mm);
  REQUIRE(request.layers.size() == 1);
  CHECK(request.layers[0].parts[0].taxon == "muscari");
  CHECK(request.pests == std::vector{Pest::vole});
}

TEST_CASE("a place flag replaces the kind of place of the file", "[pot_options]") {
  PotOptions options;
  options.zone = "9B";
  Request request = file_with(options);
  CHECK(request.place->zone == "9b");
  CHECK_FALSE(request.place->site.has_value());
  CHECK_FALSE(request.place->records_file.has_value());
  CHECK(request.place->exposure == Exposure::sheltered);
  options = {};
  options.records = "new.csv";
  request = file_with(options);
  CHECK(request.place->records_file == "new.csv");
  CHECK(request.place->site == "Aberdeen");
}

TEST_CASE("a date flag replaces the dates of the file", "[pot_options]") {
  PotOptions options;
  options.flower = "2028-03-20";
  Request request = file_with(options);
  CHECK_FALSE(request.plant.has_value());
  CHECK_FALSE(request.season.has_value());
  CHECK(request.flower->first == Day{2028, 3, 20});
  options = {};
  options.season = "2026";
  CHECK_FALSE(file_with(options).plant.has_value());  // until it is put into that season
}

TEST_CASE("sizes by flag replace a profile", "[pot_options]") {
  const std::string urn =
      R"({ "pot": { "profile": [ { "height": "0 mm", "width": "200 mm" },
                                  { "height": "300 mm", "width": "200 mm" } ] },
           "place": { "zone": "9b" }, "layers": [ { "taxon": "muscari" } ] })";
  PotOptions options;
  options.top = "300 mm";
  const Request request =
      merged(input::read_pot_file(urn, "a.json", input::Extent::partial), options).request;
  CHECK(request.pot.profile.empty());
  CHECK(request.pot.top->first == 300_mm);
}

TEST_CASE("a wrong flag is named as it was typed", "[pot_options][input]") {
  PotOptions options = enough();
  options.top = "15";
  CHECK(fault_of(options) == error(R"(--top: "15" has no unit; did you mean "15 cm" or "15 in"?)"));
  options.top = "";
  CHECK(fault_of(options) ==
        error(R"(--top: empty; expected a value with a unit such as "380 mm" or "15 in")"));
  options = enough();
  options.base = "20 in";
  CHECK(fault_of(options).starts_with("bulbwright: error: --base: 508 mm is too wide"));
  options = enough();
  options.zone = "9";
  CHECK(fault_of(options) == error(R"(--zone: "9" lacks its half; did you mean "9a" or "9b"?)"));
  options = enough();
  options.site = "Aberdeen";
  CHECK(fault_of(options).starts_with("bulbwright: error: --site: more than one kind of place"));
  options = enough();
  options.season = "2026.5";
  CHECK(fault_of(options) ==
        error("--season: 2026.5 is no whole number; expected one from 1900 to 2200"));
  options = enough();
  options.season = "2025";
  options.plant = "2027-01-08";
  CHECK(fault_of(options) ==
        error("--plant: 2027-01-08 does not lie in the season; season 2025 is 2025-07-01 to "
              "2026-06-30"));
  options = enough();
  options.material = "steal";
  CHECK(fault_of(options) == error(R"(--material: "steal" is no material; did you mean "steel"?)"));
  options = enough();
  options.pests = {"dear"};
  CHECK(fault_of(options) == error(R"(--pest: "dear" is no known pest; did you mean "deer"?)"));
}

TEST_CASE("a file's fault that a flag brings out is told at the file's line",
          "[pot_options][input]") {
  PotOptions options;
  options.top = "200 mm";
  CHECK(fault_of(options, true).starts_with("a.json:2:60: error: pot.base: 290 mm is too wide"));
}

TEST_CASE("what flags leave out is asked for by flag", "[pot_options][input]") {
  CHECK(
      fault_of({}) ==
      error(R"(--top: missing; expected the width at the rim, such as "380 mm")") +
          error("--zone: missing; expected where the pot stands, by one of zone, site, near, "
                "normals and "
                "records") +
          error(
              R"(--layer: missing; expected what to plant, bottom layer first, such as "tulip-triumph")"));
}

TEST_CASE("a layer that cannot be read says how one is written", "[pot_options][input]") {
  const auto layer = [](const std::string& text) {
    PotOptions options = enough();
    options.layers = {text};
    return fault_of(options);
  };
  CHECK(layer("").starts_with("bulbwright: error: --layer: \"\" is no layer; expected something"));
  CHECK(layer("a = 0") == error(R"(--layer: "0" is not a whole number from 1 to 1000)"));
  CHECK(layer("a =") == error(R"(--layer: "" is not a whole number from 1 to 1000)"));
  CHECK(layer("a = 2 = 3").starts_with("bulbwright: error: --layer: \"a = 2 = 3\" is no layer"));
  CHECK(layer("a + b") == error(R"(--layer: "a" has no share; did you mean "1 a"?)"));
  CHECK(layer("20 a") ==
        error(R"(--layer: "20 a" has a share but is alone; for a number of bulbs write "a = 20")"));
  CHECK(layer("2 a + -1 b") == error(R"(--layer: "-1" is no number from 0.001 to 1000)"));
  CHECK(layer("2 a + 1 a") == error(R"(--layer: "a" stands twice in one mix)"));
  CHECK(layer("2 a +").starts_with("bulbwright: error: --layer: \"\" is no kind to plant"));
  CHECK(layer("2 a b + 1 c").empty());
  CHECK(layer("grape hyacinth").empty());
  CHECK(
      layer("grape hyacinth 20") ==
      error(
          R"(--layer: "grape hyacinth 20" ends in a number; for a number of bulbs write "grape hyacinth = 20")"));
  CHECK(layer("a, roted").starts_with("bulbwright: error: --layer: \"roted\" is no"));
  CHECK(
      layer("a, dry, rooted").starts_with("bulbwright: error: --layer: \"rooted\" after \"dry\""));
  CHECK(layer("a, own, own").starts_with("bulbwright: error: --layer: \"own\" after \"own\""));
  CHECK(layer("a = 5, own").empty());
  CHECK(layer("a, rooted").empty());
  CHECK(layer(" 2 a+1 b=30 ").empty());
  CHECK(layer("a=5").empty());
}
