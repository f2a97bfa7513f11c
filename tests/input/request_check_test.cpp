#include "input/request_check.hpp"

#include <catch2/catch.hpp>

#include "input/judged_pot_file.hpp"

using namespace bulbwright;
using input::fault_at;
using input::hemisphere_of;

namespace {

input::LocatedRequest south_steps(const std::string& dates) {
  return input::read_pot_file(
      "{ \"pot\": { \"top\": \"380 mm\" },\n\"place\": { \"site\": \"X\" },\n" + dates +
          ",\n\"layers\": [ { \"taxon\": \"tulip-trimph\" },\n" +
          "{ \"mix\": [ { \"taxon\": \"muscari\", \"share\": 1 },\n" +
          "{ \"taxon\": \"zzz\", \"share\": 1 } ] } ] }",
      "a.json");
}

std::string season_fault(const std::string& dates, Hemisphere hemisphere) {
  const std::vector<InputFault> faults = input::season_faults(south_steps(dates), hemisphere);
  return faults.empty() ? "" : describe(InputError{faults});
}

}  // namespace

TEST_CASE("unknown taxa are told at their place with the near miss", "[request][input]") {
  input::LocatedRequest asked = south_steps("\"season\": 2026");
  CHECK(describe(InputError{input::settle_kinds(asked, builtin_catalogue())}) ==
        "a.json:4:24: error: layers[0].taxon: unknown taxon \"tulip-trimph\"; did you mean "
        "\"tulip-triumph\"?\n"
        "a.json:6:12: error: layers[1].mix[1].taxon: unknown taxon \"zzz\"; `bulbwright bulbs` "
        "lists them\n");
}

TEST_CASE("names give way to the ids that they mean", "[request]") {
  input::LocatedRequest asked = input::read_pot_file(
      R"({ "pot": { "top": "380 mm" }, "place": { "zone": "9b" }, "season": 2026,
           "layers": [ { "taxon": "Triumph tulips" },
           { "mix": [ { "taxon": "snowdrop", "share": 1 },
                      { "taxon": "Grape hyacinth", "share": 1 },
                      { "taxon": "muscari", "share": 1 } ] },
           { "taxon": "crocus" } ] })",
      "a.json");
  CHECK(describe(InputError{input::settle_kinds(asked, builtin_catalogue())}) ==
        "a.json:5:34: error: layers[1].mix[2].taxon: \"muscari\" is muscari, which its mix has "
        "already\n"
        "a.json:6:23: error: layers[2].taxon: \"crocus\" fits 3 kinds; expected one of "
        "crocus-large (Large Dutch crocus), crocus-species (Snow crocus), crocus-tommasinianus "
        "(Tommasini's crocus)\n");
  CHECK(asked.request.layers[0].parts[0].taxon == "tulip-triumph");
  CHECK(asked.request.layers[1].parts[0].taxon == "galanthus");
}

TEST_CASE("the season is judged once the hemisphere is known", "[request][input]") {
  const std::string dates = "\"season\": 2026, \"plant\": \"2027-01-08\"";
  CHECK(season_fault(dates, Hemisphere::north).empty());
  CHECK(season_fault(dates, Hemisphere::south) ==
        "a.json:3:26: error: plant: 2027-01-08 does not lie in the season; season 2026 is "
        "2026-01-01 to 2026-12-31\n");
  const std::string window = "\"flower\": \"2026-06-25..2026-07-05\"";
  CHECK(season_fault(window, Hemisphere::south).empty());
  CHECK(season_fault(window, Hemisphere::north) ==
        "a.json:3:11: error: flower: the window lies in two seasons; season 2025 is 2025-07-01 to "
        "2026-06-30\n");
}

TEST_CASE("a place tells its hemisphere where it can", "[request]") {
  PlaceRequest place;
  CHECK_FALSE(hemisphere_of(place).has_value());
  place.latitude = -35.0;
  CHECK(hemisphere_of(place) == Hemisphere::south);
  place.latitude = 0.0;
  CHECK(hemisphere_of(place) == Hemisphere::north);
  place = {};
  place.zone = "9b";
  CHECK(hemisphere_of(place) == Hemisphere::north);
  place.south = true;
  CHECK(hemisphere_of(place) == Hemisphere::south);
}

TEST_CASE("a fault stands at its field, else at what would hold it", "[request]") {
  input::LocatedRequest asked;
  asked.file = "a.json";
  CHECK(describe(InputError{{fault_at(asked, "pot.top", "no")}}) == "a.json: error: pot.top: no\n");
  asked.written_at[""] = {"a.json", 1, 2};
  CHECK(describe(InputError{{fault_at(asked, "pot.top", "no")}}) ==
        "a.json:1:2: error: pot.top: no\n");
  asked.written_at["layers[1]"] = {"a.json", 5, 6};
  CHECK(describe(InputError{{fault_at(asked, "layers[1].mix[0].taxon", "no")}}) ==
        "a.json:5:6: error: layers[1].mix[0].taxon: no\n");
  asked.written_at["layers"] = {"--layer", 0, 0};
  CHECK(describe(InputError{{fault_at(asked, "layers[2].taxon", "no")}}) ==
        "bulbwright: error: --layer: no\n");
}
