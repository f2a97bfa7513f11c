#include "report/shop_report.hpp"

#include <algorithm>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "base/csv.hpp"
#include "report/spreadsheet.hpp"
#include "report/text_layout.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {

ShoppingList two_pots() {
  PotNeeds steps;
  steps.pot = "south steps";
  steps.file = "steps.json";
  steps.layers = 2;
  steps.bulbs = {{"tulip-triumph", "Tulipa", "Triumph tulip", "12", "", 1, 14, false},
                 {"crocus-large", "Crocus", "Large Dutch crocus (Crocus vernus)", "9",
                  "=HYPERLINK(\"x\"), \"best\"", 2, 40, true}};
  steps.mix_loose = Litres{32.04};
  steps.mix = Litres{24.04};
  steps.perlite = Litres{8.0};
  steps.mesh = steps.mesh_width = Millimetres{370.0};
  steps.mesh_opening = Millimetres{13.0};
  steps.pins = 8;
  steps.labels = 2;
  PotNeeds door;
  door.file = "door.json";
  door.layers = 1;
  door.bulbs = {{"tulip-triumph", "Tulipa", "Triumph tulip", "12", "", 1, 7, false}};
  door.mix = Litres{10.0};
  door.labels = 1;
  PotNeeds bowl;
  bowl.pot = "bowl";
  bowl.ok = false;
  bowl.reason = Notice{
      NoticeCode::too_shallow, Severity::refusal, {}, {{DetailName::height, Millimetres{210.0}}}};
  return shopping_list({steps, door, bowl}, builtin_packs());
}

TextStyle plain(int width) {
  TextStyle style;
  style.width = width;
  return style;
}

}  // namespace

TEST_CASE("the CSV list is RFC 4180 under the documented header", "[shop_report]") {
  const std::string csv = shop_csv(two_pots());
  CHECK(csv.starts_with(
      "taxon,name,grade_cm,label,pot,layer,need,own,spares,buy,pack,packs,price,kind,unit\r\n"));
  CHECK(std::count(csv.begin(), csv.end(), '\n') == std::count(csv.begin(), csv.end(), '\r'));
  CHECK(csv.find("\r\ntulip-triumph,Triumph tulip,12,,,,21,0,3,24,25,1,,bulb,bulb\r\n") !=
        std::string::npos);
  CHECK(csv.find("\r\n,potting mix,,,,,34.0,0,0,34,40,1,,mix,l\r\n") != std::string::npos);
  CHECK(csv.find(",\"wire mesh 370 mm, openings at most 13 mm\",,,") != std::string::npos);
  const CsvTable table = read_csv(csv, "list");
  CHECK(table.records.size() == 7);
  CHECK(table.records[0].fields[0] == "crocus-large");
  CHECK(table.records[0].fields[3] == "'=HYPERLINK(\"x\"), \"best\"");
  CHECK(table.records[0].fields[9] == "0");
}

// OWASP, "CSV Injection": a cell that starts with = + - @, a tab or a carriage return.
TEST_CASE("a text is never a formula", "[spreadsheet][published]") {
  CHECK(text_cell("=1+1") == "'=1+1");
  CHECK(text_cell("+1") == "'+1");
  CHECK(text_cell("-1") == "'-1");
  CHECK(text_cell("@SUM(A1)") == "'@SUM(A1)");
  CHECK(text_cell("\t=1") == "\"'\t=1\"");
  CHECK(text_cell("a;=1+1") == "\"a;=1+1\"");
  CHECK(text_cell("=a,\"b\"") == "\"'=a,\"\"b\"\"\"");
  CHECK(text_cell("a=b") == "a=b");
  CHECK(text_cell("").empty());
}

TEST_CASE("the JSON list keeps the documented keys", "[shop_report]") {
  std::vector<Request> requests(3);
  requests[1].season = 2026;
  const auto json = nlohmann::json::parse(shop_json(two_pots(), requests));
  CHECK(json["program"]["name"] == "bulbwright");
  CHECK(json["request"].size() == 3);
  CHECK(json["request"][1]["season"] == 2026);
  CHECK(json["schema"] == "bulbwright.shop/1");
  CHECK(json["sure"].is_null());
  CHECK(json["pots"].size() == 3);
  CHECK(json["pots"][0]["layers"][1]["own"] == 40);
  CHECK(json["pots"][0]["layers"][0]["own"] == 0);
  CHECK(json["pots"][1]["number"] == 2);
  CHECK(json["pots"][0]["mix_loose_litres"] == 32.0);
  CHECK(json["pots"][2]["reason"] ==
        "the pot is too shallow for these layers; an inner height of 210 mm would do");
  const auto& tulips = json["items"][1];
  CHECK(tulips["item"] == "tulip-triumph");
  CHECK(tulips["kind"] == "bulb");
  CHECK(tulips["need"].is_number_integer());
  CHECK(tulips["need"] == 21);
  CHECK(tulips["spares"] == 3);
  CHECK(tulips["buy"] == 24);
  CHECK(tulips["loss_rate"] == 0.1);
  CHECK(tulips["loss_origin"] == "flat rate");
  CHECK(tulips["packs"] == nlohmann::json::parse(R"([{"size": 25, "count": 1}])"));
  CHECK(tulips["shares"] == nlohmann::json::parse(
                                R"([{"pot_number": 1, "layer": 1, "need": 14, "own": 0},
                {"pot_number": 2, "layer": 1, "need": 7, "own": 0}])"));
  CHECK(json["items"][2]["need"] == 34.0);
  CHECK_FALSE(json["items"][2].contains("loss_rate"));
}

TEST_CASE("the text list shows what each pot and layer takes", "[shop_report]") {
  const std::string text = shop_text(two_pots(), plain(80));
  INFO(text);
  CHECK(text.starts_with("Shopping list for 3 pots\n"));
  CHECK(text.find("Triumph tulip, 12 cm") != std::string::npos);
  CHECK(text.find("    14 south steps, bottom layer\n") != std::string::npos);
  CHECK(text.find("    7 door.json\n") != std::string::npos);
  CHECK(text.find("    40 south steps, top layer (your own)\n") != std::string::npos);
  CHECK(text.find("10 % of the bulbs to buy") != std::string::npos);
  CHECK(text.find("Nothing is listed for bowl, which cannot be planted as asked: The pot is") !=
        std::string::npos);
}

TEST_CASE("the text list keeps to the page", "[shop_report][law]") {
  for (int width = 40; width <= 99; ++width) {
    std::istringstream lines{shop_text(two_pots(), plain(width))};
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(width, line);
      CHECK(columns(line) <= width);
    }
  }
  TextStyle ascii = plain(80);
  ascii.utf8 = false;
  const std::string text = shop_text(two_pots(), ascii);
  CHECK(std::all_of(text.begin(), text.end(),
                    [](char c) { return static_cast<signed char>(c) > 0; }));
  CHECK(text.find("1 x 25") != std::string::npos);
}
