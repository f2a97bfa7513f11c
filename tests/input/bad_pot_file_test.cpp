// Every kind of wrong pot file: the exact message, with line and column.
#include <string>

#include <catch2/catch.hpp>

#include "base/error.hpp"
#include "input/judged_pot_file.hpp"

using namespace bulbwright;
using bulbwright::input::read_pot_file;

namespace {

/// All that describe() prints for the file "a.json", or "" where it is read.
std::string faults_of(const std::string& text) {
  try {
    (void)read_pot_file(text, "a.json");
    return "";
  } catch (const InputError& error) {
    return describe(error);
  }
}

/// A good file with one line put in the place of its pot, place, season or layers.
struct Parts {
  std::string pot = R"({ "top": "380 mm" })";
  std::string place = R"({ "zone": "9b" })";
  std::string season = R"("season": 2026)";
  std::string layers = R"([ { "taxon": "tulip-triumph" } ])";
};

std::string text_of(const Parts& parts) {
  return "{\n\"pot\": " + parts.pot + ",\n\"place\": " + parts.place + ",\n" + parts.season +
         ",\n\"layers\": " + parts.layers + "\n}\n";
}
std::string pot(const std::string& value) {
  Parts parts;
  parts.pot = value;
  return faults_of(text_of(parts));
}
std::string place(const std::string& value) {
  Parts parts;
  parts.place = value;
  return faults_of(text_of(parts));
}
std::string season(const std::string& value) {
  Parts parts;
  parts.season = value;
  return faults_of(text_of(parts));
}
std::string layers(const std::string& value) {
  Parts parts;
  parts.layers = value;
  return faults_of(text_of(parts));
}

std::string at(int line, int column, const std::string& message) {
  return "a.json:" + std::to_string(line) + ":" + std::to_string(column) + ": error: " + message +
         "\n";
}

}  // namespace

TEST_CASE("the good file that the wrong ones are made from is read", "[pot_file][input]") {
  CHECK(faults_of(text_of({})).empty());
}

TEST_CASE("a key that is not known names the near one or its right place", "[pot_file][input]") {
  CHECK(pot(R"({ "top": "380 mm", "headspase": "20 mm" })") ==
        at(2, 27, R"(unknown key "headspase"; did you mean "headspace"?)"));
  CHECK(pot(R"({ "top": "380 mm", "latitude": 50 })") ==
        at(2, 27, R"(unknown key "latitude"; it belongs in "place")"));
  CHECK(layers(R"([ { "taxn": "crocus-large" } ])") ==
        at(5, 15, R"(unknown key "taxn"; did you mean "taxon"?)"));
  CHECK(layers(R"([ { "mix": [ { "taxon": "a", "share": 1 }, { "taxon": "b", "zzz": 1 } ] } ])") ==
        at(5, 70, R"(unknown key "zzz"; expected taxon, share, storage_weeks)"));
}

TEST_CASE("a length needs a unit and a sensible size", "[pot_file][input]") {
  CHECK(pot(R"({ "top": 15 })") ==
        at(2, 17, R"(pot.top: 15 has no unit; did you mean "15 cm" or "15 in"?)"));
  CHECK(pot(R"({ "top": "15" })") ==
        at(2, 17, R"(pot.top: "15" has no unit; did you mean "15 cm" or "15 in"?)"));
  CHECK(pot(R"({ "top": "-380 mm" })") ==
        at(2, 17, R"(pot.top: "-380 mm" is out of range; expected 1 mm to 5 m)"));
  CHECK(pot(R"({ "top": "380 mm", "height": "0 mm" })") ==
        at(2, 37, R"(pot.height: "0 mm" is out of range; expected 1 mm to 5 m)"));
  CHECK(pot(R"({ "top": "5.1 m" })") ==
        at(2, 17, R"(pot.top: "5.1 m" is out of range; expected 1 mm to 5 m)"));
  CHECK(pot(R"({ "top": "0.5 mm" })") ==
        at(2, 17, R"(pot.top: "0.5 mm" is out of range; expected 1 mm to 5 m)"));
  CHECK(pot(R"({ "top": "12,5 cm" })") ==
        at(2, 17, R"(pot.top: "12,5 cm" has a decimal comma; write it with a point, like 12.5)"));
  CHECK(
      pot(R"({ "top": "wide" })") ==
      at(2, 17,
         R"(pot.top: "wide" is not a number with a unit; expected something like "380 mm" or "15 in")"));
  CHECK(pot(R"({ "top": true })") ==
        at(2, 17, R"(pot.top: true or false where text was expected, such as "380 mm")"));
  CHECK(layers(R"([ { "taxon": "a", "gap": 25 } ])") ==
        at(5, 36, R"(layers[0].gap: 25 has no unit; did you mean "25 mm"?)"));
  CHECK(layers(R"([ { "taxon": "a", "wall": "-1 mm" } ])") ==
        at(5, 37, R"(layers[0].wall: "-1 mm" is out of range; expected 0 mm to 5 m)"));
  CHECK(
      layers(R"([ { "taxon": "a", "gap": "forsing" } ])") ==
      at(5, 36,
         R"(layers[0].gap: "forsing" is no gap, which is a length or the word; did you mean "forcing"?)"));
}

TEST_CASE("a pot that cannot be is refused by its field", "[pot_file][input]") {
  CHECK(pot(R"({ "top": "380 mm", "base": "480 mm" })") ==
        at(2, 35,
           "pot.base: 480 mm is too wide for a rim of 380 mm; expected at most 1.25 times the rim "
           "(an urn or a belly is given by its profile)"));
  CHECK(pot(R"({ "top": "380 mm", "base": "470 mm" })").empty());
  CHECK(pot(R"({ "top": "38 mm", "thickness": "20 mm" })") ==
        at(2, 17, "pot.top: 38 mm outside leaves no room between walls of 40 mm in all"));
  CHECK(pot(R"({ "top": "380 mm", "corner": "20 mm" })") ==
        at(2, 37, "pot.corner: only a rectangle has a corner radius"));
  CHECK(pot(R"({ "top": "60 cm x 20 cm", "shape": "rectangle", "corner": "101 mm" })") ==
        at(2, 66, "pot.corner: 101 mm is more than half the shorter side, 100 mm"));
  CHECK(pot(R"({ "top": "380 mm", "height": "360 mm", "headspace": "360 mm" })") ==
        at(2, 60, "pot.headspace: expected less than the inner height, 360 mm"));
  CHECK(pot(R"({ "top": "60 cm x 20 cm" })") ==
        at(2, 17,
           "pot.top: expected one width for a round outline; two lengths need the shape oval, "
           "rectangle "
           "or half-round"));
  CHECK(pot(R"({ "top": "380 mm", "shape": "rund" })") ==
        at(2, 36, R"(pot.shape: "rund" is no shape; did you mean "round"?)"));
  CHECK(pot(R"({ "top": "380 mm", "shape": "heart" })") ==
        at(2, 36,
           R"(pot.shape: "heart" is no shape; expected round, oval, rectangle or half-round)"));
  CHECK(pot(R"({ "top": "380 mm", "material": "teracotta" })") ==
        at(2, 39, R"(pot.material: "teracotta" is no material; did you mean "terracotta"?)"));
  CHECK(pot(R"({ "height": "380 mm" })") ==
        at(2, 8, R"(pot.top: missing; expected the width at the rim, such as "380 mm")"));
}

TEST_CASE("a profile goes up from the floor in two levels or more", "[pot_file][input]") {
  CHECK(pot(R"({ "profile": [ { "height": "0 mm", "width": "200 mm" } ] })") ==
        at(2, 21, "pot.profile: expected two levels or more, from the inner floor up"));
  CHECK(pot(R"({ "profile": [ { "height": "10 mm", "width": "200 mm" },
                               { "height": "300 mm", "width": "200 mm" } ] })") ==
        at(2, 35, "pot.profile[0].height: expected 0 mm, the inner floor"));
  CHECK(pot(R"({ "profile": [ { "height": "0 mm", "width": "200 mm" },
{ "height": "0 mm", "width": "200 mm" } ] })") ==
        at(3, 13, "pot.profile[1].height: expected a length above 0 mm"));
  CHECK(
      pot(R"({ "profile": [ { "height": "0 mm", "width": "200 mm" }, { "height": "300 mm" } ] })") ==
      at(2, 64,
         R"(pot.profile[1].width: missing; expected the inner width at this height, such as "290 mm")"));
  CHECK(pot(R"({ "top": "380 mm", "profile": [ { "height": "0 mm", "width": "200 mm" },
                                                { "height": "300 mm", "width": "200 mm" } ] })") ==
        at(2, 38, "pot.profile: expected instead of top, base and height, not together with them"));
  CHECK(pot(R"({ "profile": [ { "height": "0 mm", "width": "200 mm", "length": "300 mm" },
                               { "height": "300 mm", "width": "200 mm" } ] })") ==
        at(2, 72, "pot.profile[0].length: only an oval or a rectangle has a length"));
}

TEST_CASE("there is one kind of place, and it is well formed", "[pot_file][input]") {
  CHECK(place("{ }") ==
        at(3, 10,
           "place: says no kind of place; expected one of zone, site, near, normals and records"));
  CHECK(place(R"({ "zone": "9b", "site": "Aberdeen" })") ==
        at(3, 34,
           "place.site: more than one kind of place; expected one of zone, site, near and normals "
           "(records may stand beside it)"));
  CHECK(place(R"({ "zone": 9 })") ==
        at(3, 20, R"(place.zone: 9 is a bare number; did you mean "9a" or "9b"?)"));
  CHECK(place(R"({ "zone": "9" })") ==
        at(3, 20, R"(place.zone: "9" lacks its half; did you mean "9a" or "9b"?)"));
  for (const char* zone : {"0a", "14a", "9c", "09b", "9.0b", "b", "", "-9b", "9b9b", "1e0b"}) {
    CHECK(place(std::string{R"({ "zone": ")"} + zone + "\" }") ==
          at(3, 20,
             std::string{"place.zone: \""} + zone +
                 R"(" is no hardiness zone; expected "1a" to "13b", for instance "9b")"));
  }
  CHECK(place(R"({ "zone": "9b", "latitude": -35 })") ==
        at(3, 38, R"(place.latitude: is south of the equator; expected "south": true)"));
  CHECK(place(R"({ "zone": "9b", "south": true, "latitude": -35 })").empty());
  CHECK(place(R"({ "site": "Aberdeen", "south": true })") ==
        at(3, 41,
           "place.south: goes with a zone only; a site or a latitude tells the hemisphere itself"));
  CHECK(place(R"({ "site": "Aberdeen", "latitude": 57 })") ==
        at(3, 44, "place.latitude: given beside a site, which has its own; leave it out"));
  CHECK(place(R"({ "records": "winter.csv" })").empty());  // a NOAA file tells its latitude
  CHECK(place(R"({ "records": "winter.csv", "latitude": 91 })") ==
        at(3, 49, "place.latitude: 91 is out of range; expected a number from -90 to 90"));
  CHECK(place(R"({ "records": "winter.csv", "site": "Aberdeen" })").empty());
  CHECK(place(R"({ "zone": "9b", "exposure": "shelterd" })") ==
        at(3, 38, R"(place.exposure: "shelterd" is no exposure; did you mean "sheltered"?)"));
}

TEST_CASE("normals are twelve pairs that a climate could have", "[pot_file][input]") {
  const std::string night = "[1,2,3,4,5,6,7,8,9,10,11,12]";
  const std::string day = "[11,12,13,14,15,16,17,18,19,20,21,22]";
  const auto normals = [](const std::string& tmin, const std::string& tmax,
                          const std::string& unit) {
    return place("{ \"normals\": {\n\"tmin\": " + tmin + ",\n\"tmax\": " + tmax +
                 ",\n\"unit\": " + unit + " }, \"latitude\": 50 }");
  };
  CHECK(normals(night, day, "\"C\"").empty());
  CHECK(normals("[1,2]", day, "\"C\"") ==
        at(4, 9, "place.normals.tmin: 2 values; expected twelve, January first"));
  CHECK(normals(night, "[11,12,13,14,15,16,17,18,19,20,21,\"12 C\"]", "\"C\"") ==
        at(5, 43, "place.normals.tmax[11]: a text where a number was expected, without unit"));
  CHECK(normals(night, "[11,12,13,14,15,16,17,18,19,20,21,112]", "\"C\"") ==
        at(5, 43, "place.normals.tmax[11]: 112 C is no monthly mean; expected -70 C to 60 C"));
  // In the unit that was written.
  CHECK(
      normals("[50,2,3,4,5,6,7,8,9,10,11,-95]", "[38,12,13,14,15,16,17,18,19,20,21,22]", "\"F\"") ==
      at(4, 10, "place.normals.tmin[0]: 50 F is not below tmax[0], 38 F") +
          at(4, 35, "place.normals.tmin[11]: -95 F is no monthly mean; expected -94 F to 140 F"));
  CHECK(normals(night, "[51,52,53,54,55,56,57,58,59,60,61,112]", "\"F\"").empty());
  CHECK(normals("[1,2,3,4,5,6,7,8,9,10,11,22.5]", day, "\"C\"") ==
        at(4, 34, "place.normals.tmin[11]: 22.5 C is not below tmax[11], 22 C"));
  CHECK(normals(night, day, "\"K\"") ==
        at(6, 9, R"(place.normals.unit: "K" is no unit of temperature; did you mean "C" or "F"?)"));
  CHECK(place("{ \"normals\": { \"tmin\": " + night + ", \"tmax\": " + day +
              ", \"unit\": \"C\" } }") ==
        at(3, 23, "place.normals: needs a latitude beside it, in degrees, south negative"));
}

TEST_CASE("dates exist and lie in the season", "[pot_file][input]") {
  CHECK(season(R"("plant": "2027-02-30")") ==
        at(4, 10, R"(plant: "2027-02-30": February 2027 has 28 days)"));
  CHECK(season(R"("plant": "8 Jan 2027")") ==
        at(4, 10,
           R"(plant: "8 Jan 2027" is no date; expected YYYY-MM-DD, for instance "2027-01-08")"));
  CHECK(season(R"("season": 2025, "plant": "2027-01-08")") ==
        at(4, 26,
           "plant: 2027-01-08 does not lie in the season; season 2025 is 2025-07-01 to "
           "2026-06-30"));
  CHECK(season(R"("season": 2026, "flower": "2027-06-20..2027-07-02")") ==
        at(4, 27,
           "flower: 2027-07-02 does not lie in the season; season 2026 is 2026-07-01 to "
           "2027-06-30"));
  CHECK(
      season(R"("flower": "2027-06-20..2027-07-02")") ==
      at(4, 11, "flower: the window lies in two seasons; season 2026 is 2026-07-01 to 2027-06-30"));
  CHECK(season(R"("plant": "2027-01-08", "flower": "2027-03-20")") ==
        at(4, 34,
           "flower: given beside plant; expected one of the two, the planting day or the wanted "
           "flowering time"));
  CHECK(season(R"("season": "2026")") ==
        at(4, 11, R"(season: the text "2026" where a number was expected, without quotes)"));
  CHECK(season(R"("season": 2026.5)") ==
        at(4, 11, "season: 2026.5 is no whole number; expected one from 1900 to 2200"));
  CHECK(season(R"("season": 1899)") ==
        at(4, 11, "season: 1899 is out of range; expected a whole number from 1900 to 2200"));
}

TEST_CASE("layers hold a kind or a mix, and a count that can be", "[pot_file][input]") {
  CHECK(layers("[]") ==
        at(5, 11, "layers: empty; expected at least one layer, the bottom one first"));
  CHECK(layers("{}") == at(5, 11, "layers: an object where an array was expected, [ … ]"));
  CHECK(layers(R"([ { "taxon": "a", "count": 0 } ])") ==
        at(5, 38, "layers[0].count: 0 is out of range; expected a whole number from 1 to 1000"));
  CHECK(layers(R"([ { "taxon": "a", "count": 1001 } ])") ==
        at(5, 38, "layers[0].count: 1001 is out of range; expected a whole number from 1 to 1000"));
  CHECK(layers(R"([ { "taxon": "a", "count": 2.5 } ])") ==
        at(5, 38, "layers[0].count: 2.5 is no whole number; expected one from 1 to 1000"));
  CHECK(layers(R"([ { "mix": [ { "taxon": "a", "share": -1 }, { "taxon": "b" } ] } ])") ==
        at(5, 49,
           "layers[0].mix[0].share: -1 is out of range; expected a number above 0 such as 2, at "
           "most 1000") +
            at(5, 55,
               "layers[0].mix[1].share: missing; expected how many parts of this kind, such as 2"));
  CHECK(layers(R"([ { "mix": [ { "taxon": "a", "share": 1 } ] } ])") ==
        at(5, 22, R"(layers[0].mix: expected two kinds or more; for one kind write "taxon")"));
  CHECK(
      layers(R"([ { "mix": [ { "taxon": "a", "share": 1 }, { "taxon": "a", "share": 2 } ] } ])") ==
      at(5, 65, R"(layers[0].mix[1].taxon: "a" stands twice in this mix)"));
  CHECK(
      layers(R"([ { "taxon": "a", "grade": "12 cmm" } ])") ==
      at(5, 38,
         R"(layers[0].grade: "12 cmm" is no grade; expected a circumference such as "12" or "12/14" (cm))"));
  CHECK(layers(R"([ { "taxon": "a", "grade": 12 } ])") ==
        at(5, 38,
           R"(layers[0].grade: 12 is a bare number; expected text such as "12" or "12/14" (cm))"));
  CHECK(
      layers(R"([ { } ])") ==
      at(5, 13,
         R"(layers[0]: has neither taxon nor mix; expected what to plant, such as "taxon": "tulip-triumph")"));
  CHECK(layers(R"([ { "taxon": "a", "cold_already": -1 } ])") ==
        at(5, 45, "layers[0].cold_already: -1 is out of range; expected a number from 0 to 60"));
  CHECK(
      layers(R"([ { "taxon": "a", "storage_weeks": 6, "state": "rooted" } ])") ==
      at(5, 58,
         R"(layers[0].state: "rooted" beside storage_weeks; expected "dry", or the weeks of cold they have had in cold_already: only dry bulbs are refrigerated)"));
  CHECK(layers(R"([ { "taxon": "a", "storage_weeks": 0, "state": "rooted" } ])").empty());
  CHECK(layers(R"([ { "taxon": "a", "storage_weeks": 61 } ])") ==
        at(5, 46, "layers[0].storage_weeks: 61 is out of range; expected a number from 0 to 60"));
  CHECK(
      layers(
          R"([ { "mix": [ { "taxon": "a", "share": 1 }, { "taxon": "b", "share": 1 } ], "storage_weeks": 6 } ])") ==
      at(5, 103,
         "layers[0].storage_weeks: given beside mix; expected in the entries of the mix, each kind "
         "its own"));
}

TEST_CASE("storage, pests and winter are known words and figures", "[pot_file][input]") {
  CHECK(season(R"("storage": { "temperature": 5 })") ==
        at(4, 29, R"(storage.temperature: 5 has no unit; did you mean "5 C" or "5 F"?)"));
  CHECK(season(R"("storage": { "temperature": "41 C" })") ==
        at(4, 29,
           R"(storage.temperature: "41 C" is out of range; expected -5 C to 25 C (23 F to 77 F))"));
  CHECK(season(R"("storage": { "weeks": 61 })") ==
        at(4, 23, "storage.weeks: 61 is out of range; expected a number from 0 to 60"));
  CHECK(
      season(R"("pests": ["squirel", "lion"])") ==
      at(4, 11, R"(pests[0]: "squirel" is no known pest; did you mean "squirrel"?)") +
          at(4, 22,
             R"(pests[1]: "lion" is no known pest; expected gopher, vole, mouse, squirrel, chipmunk or deer)"));
  CHECK(season(R"("winter": "stormy")") ==
        at(4, 11, R"(winter: "stormy" is no kind of winter; expected dry, ordinary or wet)"));
}

TEST_CASE("all faults are told at once, in the order of their places", "[pot_file][input]") {
  CHECK(faults_of(R"({ "layers": [],
"pot": { "top": "380" },
"season": 1 })") ==
        at(1, 1,
           "place: missing; expected where the pot stands, by one of zone, site, near, normals and "
           "records") +
            at(1, 13, "layers: empty; expected at least one layer, the bottom one first") +
            at(2, 17, R"(pot.top: "380" has no unit; did you mean "380 mm"?)") +
            at(3, 11, "season: 1 is out of range; expected a whole number from 1900 to 2200"));
  CHECK(
      faults_of("{}") ==
      at(1, 1, R"(pot.top: missing; expected the width at the rim, such as "380 mm")") +
          at(1, 1,
             "place: missing; expected where the pot stands, by one of zone, site, near, normals "
             "and "
             "records") +
          at(1, 1,
             R"(layers: missing; expected what to plant, bottom layer first, such as "tulip-triumph")"));
}

TEST_CASE("names are plain text of a readable length", "[pot_file][input]") {
  CHECK(pot(R"({ "top": "380 mm", "name": "a\u001b[31m" })") ==
        at(2, 35, R"(pot.name: "a\x1b[31m" holds a control character; expected plain text)"));
  CHECK(pot(R"({ "top": "380 mm", "name": ")" + std::string(100, 'x') + "\" }").empty());
  CHECK(pot(R"({ "top": "380 mm", "name": ")" + std::string(101, 'x') + "\" }") ==
        at(2, 35,
           "pot.name: \"" + std::string(60, 'x') +
               "…\" is too long; expected at most 100 characters"));
}
