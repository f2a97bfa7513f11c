// What is told of a request before anything is planned: everything at once, each at its place.
#include "input/resolve.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "input/faults.hpp"
#include "input/judged_pot_file.hpp"
#include "input/request_check.hpp"

using namespace bulbwright;

namespace {

/// All that is told of a pot file.
std::string faults_of(const std::string& text) {
  static input::InputFiles inputs;
  static const input::Facts facts = input::load_facts("", inputs);
  try {
    input::Faults faults;
    input::LocatedRequest asked = input::read_pot_file(text, "a.json", faults);
    faults.add(input::contradictions(asked));
    faults.add(input::omissions(asked));
    (void)input::resolve(asked, facts, inputs, std::move(faults));
    return "";
  } catch (const InputError& error) {
    return describe(error);
  }
}

}  // namespace

TEST_CASE("faults of form, of the catalogue and of the place are told at once",
          "[resolve][input]") {
  CHECK(faults_of("{ \"pot\": { \"top\": \"380 mm\", \"base\": \"900 mm\" },\n"
                  "\"place\": { \"site\": \"Londn\" },\n"
                  "\"season\": 2026, \"plant\": \"2028-01-08\",\n"
                  "\"layers\": [ { \"taxon\": \"hyacinthx\", \"count\": 1e9 },\n"
                  "{ \"mix\": [ { \"taxon\": \"\", \"share\": 1 },\n"
                  "{ \"taxon\": \"muscarii\", \"share\": 1 } ] } ] }") ==
        "a.json:1:37: error: pot.base: 900 mm is too wide for a rim of 380 mm; expected at most "
        "1.25 times the rim (an urn or a belly is given by its profile)\n"
        "a.json:2:20: error: place.site: no place is named \"Londn\"; did you mean \"London\"?\n"
        "a.json:4:24: error: layers[0].taxon: unknown taxon \"hyacinthx\"; did you mean "
        "\"hyacinth\"?\n"
        "a.json:4:46: error: layers[0].count: 1e9 is out of range; expected a whole number from 1 "
        "to 1000\n"
        "a.json:5:23: error: layers[1].mix[0].taxon: empty; expected one of `bulbwright bulbs`, "
        "such as \"tulip-triumph\"\n"
        "a.json:6:12: error: layers[1].mix[1].taxon: unknown taxon \"muscarii\"; did you mean "
        "\"muscari\"?\n");
}

TEST_CASE("the season is judged where the place is sound, and told once", "[resolve][input]") {
  const std::string pot = R"({ "pot": { "top": "380 mm" }, "layers": [ { "taxon": "muscari" } ],)";
  const std::string late = R"("season": 2026, "plant": "2028-01-08" })";
  const std::string message =
      ": error: plant: 2028-01-08 does not lie in the season; season 2026 is 2026-07-01 to "
      "2027-06-30\n";
  CHECK(faults_of(pot + "\n\"place\": { \"zone\": \"9b\" },\n" + late) == "a.json:3:26" + message);
  CHECK(faults_of(pot + "\n\"place\": { \"site\": \"London\" },\n" + late) ==
        "a.json:3:26" + message);
  CHECK(faults_of(pot + R"("place": { "site": "London" } })")
            .find("season: missing; say which autumn") != std::string::npos);
}

TEST_CASE("records that cannot be read are told where they are named", "[resolve][input]") {
  const std::string text =
      "{ \"pot\": { \"top\": \"380 mm\" }, \"season\": 2026,\n"
      "\"place\": { \"records\": \"/none/winter.csv\", \"latitude\": 47 },\n"
      "\"layers\": [ { \"taxon\": \"muscarii\" } ] }";
  CHECK(faults_of(text) ==
        "a.json:2:23: error: place.records: cannot read \"/none/winter.csv\": No such file or "
        "directory\n"
        "a.json:3:24: error: layers[0].taxon: unknown taxon \"muscarii\"; did you mean "
        "\"muscari\"?\n");
}

TEST_CASE("a misspelt key is not also told as a missing one", "[resolve][input]") {
  CHECK(
      faults_of("{ \"pot\": { \"top\": \"380 mm\" }, \"season\": 2026,\n"
                "\"plase\": { \"zone\": \"9b\" }, \"layers\": [ { \"taxon\": \"muscari\" } ] }") ==
      "a.json:2:1: error: unknown key \"plase\"; did you mean \"place\"?\n");
}
