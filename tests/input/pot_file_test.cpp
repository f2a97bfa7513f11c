#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "input/judged_pot_file.hpp"

using namespace bulbwright;
using bulbwright::input::read_pot_file;

namespace {

constexpr const char* steps = R"({
  "pot": { "name": "south steps", "shape": "round", "top": "380 mm", "base": "290 mm", "height": "360 mm",
           "material": "terracotta", "last_crop": "Hyacinth" },
  "place": { "zone": "9B" },   // the mild winter of the terrace
  "season": 2026,
  "plant": "2027-01-08",
  "storage": { "temperature": "41 F", "method": "paper bag" },
  "pests": ["gopher", "squirrel"],
  "layers": [ { "taxon": "tulip-triumph", "grade": "12/14" },
              { "mix": [ { "taxon": "narcissus-jonquilla", "share": 2 },
                         { "taxon": "muscari", "share": 1 } ] },
              { "taxon": "crocus-large", "count": 40, "gap": "forcing" } ]
})";

}  // namespace

TEST_CASE("a pot file is read with every value in inside units", "[pot_file]") {
  const input::LocatedRequest asked = read_pot_file(steps, "steps.json");
  const Request& file = asked.request;
  CHECK(file.pot.name == "south steps");
  CHECK(file.pot.shape == Shape::round);
  CHECK(file.pot.top->first == 380_mm);
  CHECK(file.pot.base->first == 290_mm);
  CHECK(*file.pot.height == 360_mm);
  CHECK(file.pot.material == "terracotta");
  CHECK(file.pot.last_crop == "hyacinth");
  CHECK(file.pot.used_mix);
  CHECK(file.place->zone == "9b");
  CHECK_FALSE(file.place->south);
  CHECK(file.season == 2026);
  CHECK(file.plant == Day{2027, 1, 8});
  CHECK(file.storage.temperature == 5_degc);
  CHECK(file.pests == std::vector{Pest::gopher, Pest::squirrel});
  REQUIRE(file.layers.size() == 3);
  CHECK(file.layers[0].parts[0].taxon == "tulip-triumph");
  CHECK(file.layers[0].grade_cm == 13.0);
  CHECK(file.layers[1].parts[0].share == 2.0);
  CHECK(file.layers[1].parts[1].taxon == "muscari");
  CHECK(file.layers[2].count == 40);
  CHECK(file.layers[2].forcing_gap);
  CHECK(asked.written_at.at("layers[1].mix[1].taxon").line == 11);
}
