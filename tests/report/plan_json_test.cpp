#include "report/plan_json.hpp"

#include <limits>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/plan_fixture.hpp"

using namespace bulbwright;
using namespace bulbwright::report;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys(const Json& object, std::size_t most = 100) {
  std::vector<std::string> names;
  for (const auto& [key, value] : object.items()) {
    if (names.size() < most) names.push_back(key);
  }
  return names;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("plan JSON keeps the documented keys in the documented order", "[plan_json]") {
  const Json json = Json::parse(plan_json(fixture::terrace_plan()));
  CHECK(json["schema"] == "bulbwright.plan/1");
  CHECK(keys(json, 13) == Names{"schema", "program", "request", "pot", "layers", "cold", "dates",
                                "waves", "display", "materials", "shopping", "notices",
                                "cautions"});
  CHECK(keys(json["layers"][0], 10) == Names{"level", "depth_mm", "below_rim_mm",
                                             "fill_below_rim_mm", "section", "gap_mm", "count",
                                             "upper_bound", "bulbs", "positions"});
  CHECK(keys(json["layers"][0]["positions"][0]) == Names{"taxon", "x_mm", "y_mm", "diameter_mm"});
  CHECK(keys(json["layers"][0]["section"]) == Names{"shape", "diameter_mm"});
  CHECK(keys(json["cold"]) == Names{"place", "storage_temperature_c", "taxa"});
  CHECK(keys(json["cold"]["taxa"][0], 6) == Names{"taxon", "need_weeks", "natural_weeks",
                                                  "storage_weeks", "storage_start", "storage_end"});
  CHECK(keys(json["cold"]["taxa"][0]["natural_weeks"]) == Names{"normal", "mild", "cold"});
  CHECK(keys(json["waves"][0], 6) == Names{"taxon", "layer", "first", "peak", "last", "range"});
  CHECK(keys(json["display"]) ==
        Names{"first", "last", "days_in_flower", "gaps", "longest_run", "between"});
  CHECK_FALSE(json.contains("wanted"));
  CHECK_FALSE(json.contains("spread"));
  CHECK(keys(json["materials"], 5) ==
        Names{"mix_litres", "perlite_litres", "mesh_mm", "pins", "filled_weight_kg"});
  CHECK(keys(json["shopping"][0], 5) == Names{"item", "need", "spares", "buy", "unit"});
}

TEST_CASE("plan JSON tells what was wished and what an ordinary plan gives", "[plan_json]") {
  Plan plan = fixture::terrace_plan();
  const DayWindow asked{Day{2027, 3, 20}, Day{2027, 3, 20}};
  plan.wanted = WantedReport{
      asked, Day{2027, 3, 24}, 1, 4, false, Remark{RemarkCode::winter_decides_earlier}};
  plan.spread = SpreadReport{Day{2026, 12, 1}, {8.0, 0.0, 4.0}, plan.display};
  const Json json = Json::parse(plan_json(plan));
  CHECK(json["wanted"]["window"] == Json{{"from", "2027-03-20"}, {"to", "2027-03-20"}});
  CHECK(json["wanted"]["predicted"] == "2027-03-24");
  CHECK(json["wanted"]["days_off"] == 4);
  CHECK(json["wanted"]["limit"].get<std::string>().starts_with("the winter there decides"));
  CHECK(json["spread"]["plant_before"] == "2026-12-01");
  CHECK(json["spread"]["storage_weeks_before"] == Json{8.0, 0.0, 4.0});
  auto display = json["display"];
  CHECK(display["between"].size() == 2);
  display["between"] = nlohmann::ordered_json::array();  // its waves are not in the document
  CHECK(json["spread"]["display_before"] == display);
}

TEST_CASE("plan JSON tells who answered and what was asked", "[plan_json]") {
  Plan plan = fixture::terrace_plan();
  plan.request.pot.top = LengthPair{380_mm, 380_mm, false};
  plan.request.plant = Day{2027, 1, 8};
  const Json json = Json::parse(plan_json(plan));
  CHECK(json["program"]["name"] == "bulbwright");
  CHECK_FALSE(json["program"]["version"].get<std::string>().empty());
  CHECK(json["request"]["pot"]["top"] == "380 mm");
  CHECK(json["request"]["plant"] == "2027-01-08");
  CHECK_FALSE(json["request"].contains("layers"));
}

TEST_CASE("between bulbs of which there is one, nothing is measured", "[plan_json]") {
  Plan plan = fixture::terrace_plan();
  plan.layers[0].least_gap = Millimetres{std::numeric_limits<double>::infinity()};
  const Json json = Json::parse(plan_json(plan));
  CHECK(json["layers"][0].contains("least_gap_mm"));
  CHECK(json["layers"][0]["least_gap_mm"].is_null());
}

TEST_CASE("plan JSON carries the plan's own figures", "[plan_json]") {
  const Plan plan = fixture::terrace_plan();
  const Json json = Json::parse(plan_json(plan));
  REQUIRE(json["layers"].size() == plan.layers.size());
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    const PlannedLayer& layer = plan.layers[i];
    CHECK(json["layers"][i]["depth_mm"] == layer.depth.value());
    CHECK(json["layers"][i]["below_rim_mm"] == layer.below_rim.value());
    CHECK(json["layers"][i]["count"] == layer.count);
    CHECK(json["layers"][i]["positions"].size() == layer.positions.size());
  }
  CHECK(json["waves"][2]["range"]["latest_last"] == "2027-04-21");
  CHECK(json["cold"]["taxa"][1]["storage_start"] == to_iso(*plan.cold[1].storage_start));
}

TEST_CASE("plan JSON is rounded, without -0, and ends with a newline", "[plan_json]") {
  Plan plan = fixture::terrace_plan();
  plan.layers[0].positions[0].x_mm = -1e-7;
  plan.layers[0].positions[0].y_mm = 0.1 + 0.2;
  plan.materials.mix_settled = Litres{26.449999};
  plan.cold[0].storage_weeks = 9.0999999;
  plan.place.mix_mean_c[0] = std::nan("");
  const std::string text = plan_json(plan);
  CHECK(text.ends_with("}\n"));
  CHECK(text.starts_with("{\n  \"schema\": \"bulbwright.plan/1\",\n"));
  CHECK(text.find("-0.0") == std::string::npos);
  CHECK(text.find("00000") == std::string::npos);
  CHECK(text.find("99999") == std::string::npos);
  const Json json = Json::parse(text);
  CHECK(json["layers"][0]["positions"][0]["y_mm"] == 0.3);
  CHECK(json["materials"]["mix_litres"] == 26.4);
  CHECK(json["climate"]["mix_mean_c"][0].is_null());
}

TEST_CASE("each shape of section has its own keys", "[plan_json]") {
  Plan plan = fixture::terrace_plan();
  const auto section_keys = [&](Shape shape) {
    plan.layers[0].section.shape = shape;
    return keys(Json::parse(plan_json(plan))["layers"][0]["section"]);
  };
  CHECK(section_keys(Shape::oval) == Names{"shape", "length_mm", "width_mm"});
  CHECK(section_keys(Shape::rectangle) ==
        Names{"shape", "length_mm", "width_mm", "corner_radius_mm"});
  CHECK(section_keys(Shape::half_round) == Names{"shape", "width_mm", "depth_mm"});
}

TEST_CASE("a plan that cannot be carried out prints the same object", "[plan_json]") {
  Plan plan;
  plan.ok = false;
  plan.notices = {{NoticeCode::too_shallow, Severity::refusal}};
  const Json json = Json::parse(plan_json(plan));
  CHECK(json["ok"] == false);
  CHECK(json["notices"][0]["severity"] == "refusal");
  for (const char* list : {"layers", "dates", "waves", "cautions"}) CHECK(json[list].is_array());
  CHECK(json["cold"]["taxa"].is_array());
}

TEST_CASE("names that are not UTF-8 cannot break the document", "[plan_json][input]") {
  Plan plan = fixture::terrace_plan();
  plan.pot.name = "steps \xff";
  CHECK_NOTHROW(Json::parse(plan_json(plan)));
}
