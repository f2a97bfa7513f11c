// Laws of reading and writing pot files, over whole families of them.
#include <array>
#include <cstdint>
#include <fstream>
#include <map>
#include <random>
#include <set>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "input/judged_pot_file.hpp"
#include "input/pot_file_keys.hpp"
#include "input/pot_file_writer.hpp"
#include "pot/pot_material.hpp"
#include "source_paths.hpp"

using namespace bulbwright;
using bulbwright::input::read_pot_file;
using bulbwright::input::write_pot_file;

namespace {

constexpr const char* full_file = R"({
  // every key there is
  "$schema": "../docs/schema/pot.schema.json",
  "pot": { "name": "sóuth stéps", "group": "south", "note": "chipped rim", "shape": "rectangle", "top": "60 cm x 20 cm",
           "base": "22 in x 180 mm", "height": "360 mm", "corner": "2 cm", "thickness": "0.5 in",
           "headspace": "1 in", "material": "terracotta", "last_crop": "Hyacinthus", "mix": "fresh" },
  "place": { "records": "terrace.csv", "latitude": 38.5, "exposure": "warm-wall",
             "normals": { "tmin": [4,5,6,7,9,11,12,12,12,10,7,4],
                          "tmax": [13,15,17,19,22,25,26,26,26,23,17,13], "unit": "C" } },
  "season": 2026, "flower": "2027-03-20..2027-04-02", "spread": false, "order": "by-flowering",
  "storage": { "temperature": "41 F", "method": "paper bag", "weeks": 10.5 },
  "pests": ["gopher", "squirrel"], "winter": "wet",
  "layers": [ { "taxon": "tulip-triumph", "grade": "12/14", "count": 20, "gap": "25 mm",
                "wall": "10 mm", "arrange": "drift", "label": "lot \u00e9", "note": "old bed", "received": "2026-09-20",
                "cold_already": 3, "use": "forcing", "storage_weeks": 7 },
              { "mix": [ { "taxon": "narcissus-jonquilla", "share": 2, "storage_weeks": 0 },
                         { "taxon": "muscari", "share": 1e0 } ], "gap": "forcing" },
              { "taxon": "crocus-large", "pattern": "rings" } ] })";

/// The same is asked, part by part.
void check_same(const Request& a, const Request& b) {
  CHECK(a.pot == b.pot);
  CHECK(a.place == b.place);
  CHECK(a.season == b.season);
  CHECK(a.plant == b.plant);
  CHECK(a.flower == b.flower);
  CHECK(a.spread == b.spread);
  CHECK(a.order == b.order);
  CHECK(a.storage == b.storage);
  CHECK(a.pests == b.pests);
  CHECK(a.winter == b.winter);
  CHECK(a.layers == b.layers);
  CHECK(a == b);  // and what the lines above forget
}

/// True where it is read, false where it is refused as input should be; anything else escapes.
bool reads(std::string_view text) {
  try {
    (void)read_pot_file(text, "a.json");
    return true;
  } catch (const InputError& error) {
    CHECK_FALSE(error.faults().empty());
    const std::string message = describe(error);
    CHECK(message.size() <= 2000);
    CHECK(message.starts_with("a.json:"));
    for (const InputFault& fault : error.faults()) CHECK_FALSE(fault.message.empty());
    return false;
  }
}

/// Engines are specified to the bit; distributions are not, so the draw is written out.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_{seed} {}
  std::size_t below(std::size_t n) { return engine_() % n; }
  bool chance() { return below(2) == 0; }
  /// A plain number with up to `decimals` decimals.
  double number(double low, double high, double step) {
    const auto steps = static_cast<std::size_t>((high - low) / step);
    return low + static_cast<double>(below(steps + 1)) * step;
  }

 private:
  std::mt19937_64 engine_;
};

/// Lengths as people write them: whole millimetres, tenths of an inch, or any double.
Millimetres some_length(Draw& draw, double low, double high) {
  switch (draw.below(3)) {
    case 0:
      return Millimetres{std::floor(draw.number(low, high, 1.0))};
    case 1:
      return Millimetres{std::floor(draw.number(low, high, 1.0) / 25.4 * 10.0) / 10.0 * 25.4};
    default:
      return Millimetres{draw.number(low, high, 0.0123456789)};
  }
}

Celsius some_temperature(Draw& draw) {
  return draw.chance() ? Celsius{draw.number(-4.0, 24.0, 0.5)}
                       : from_fahrenheit(draw.number(25.0, 75.0, 0.5));
}

PotRequest some_pot(Draw& draw) {
  PotRequest pot;
  if (draw.chance()) pot.name = "steps, the \"lower\" ones \xc3\xa9";
  pot.shape = static_cast<Shape>(draw.below(4));
  const Millimetres wide = some_length(draw, 300.0, 900.0);
  const Millimetres deep = some_length(draw, 300.0, 900.0);
  const bool pair = pot.shape != Shape::round && draw.chance();
  if (draw.chance()) {
    pot.top = LengthPair{wide, pair ? deep : wide, pair};
    if (draw.chance()) pot.base = LengthPair{0.7 * wide, pair ? 0.7 * deep : 0.7 * wide, pair};
    if (draw.chance()) pot.height = some_length(draw, 200.0, 600.0);
    if (draw.chance()) pot.thickness = some_length(draw, 5.0, 30.0);
  } else {
    for (const double height : {0.0, 123.4, 300.0}) {
      const Millimetres width = some_length(draw, 250.0, 400.0);
      const bool square = pot.shape == Shape::round;
      pot.profile.push_back(
          {Millimetres{height}, square ? width : some_length(draw, 250.0, 400.0), width});
    }
  }
  if (pot.shape == Shape::rectangle && draw.chance()) pot.corner = some_length(draw, 1.0, 40.0);
  if (draw.chance()) pot.headspace = some_length(draw, 0.0, 60.0);
  if (draw.chance()) pot.material = known_materials()[draw.below(known_materials().size())].name;
  if (draw.chance()) pot.last_crop = "tulipa";
  if (draw.chance()) pot.group = "south steps";
  if (draw.chance()) pot.note = "chipped \"rim\"";
  pot.used_mix = draw.chance();
  return pot;
}

PlaceRequest some_place(Draw& draw) {
  PlaceRequest place;
  switch (draw.below(5)) {
    case 0:
      place.zone = "9b";
      place.south = draw.chance();
      place.region = static_cast<ZoneRegion>(draw.below(words_of<ZoneRegion>().size()));
      break;
    case 1:
      place.site = "Aberdeen";
      break;
    case 2: {
      MonthlyNormals normals;
      for (std::size_t m = 0; m < 12; ++m) {
        normals.tmin_c[m] = some_temperature(draw).value();
        normals.tmax_c[m] = normals.tmin_c[m] + draw.number(0.1, 20.0, 0.1);
      }
      place.normals = normals;
      place.latitude = draw.number(-60.0, 60.0, 0.37);
      break;
    }
    case 3:
      place.near = GeoPoint{draw.number(-58.0, 72.0, 0.0123), draw.number(-180.0, 180.0, 0.37)};
      if (draw.chance()) place.elevation = some_length(draw, -400'000.0, 4'000'000.0);
      break;
    default:
      place.records_file = "terrace \xc3\xbc.csv";
      place.latitude = draw.number(-60.0, 60.0, 0.37);
  }
  if (!place.records_file && draw.chance()) {
    const Kelvins nights{draw.number(-3.0, 3.0, 0.1)};
    place.offset = TemperatureOffset{nights, draw.chance() ? nights : Kelvins{1.0 * 5.0 / 9.0}};
  }
  place.exposure = static_cast<Exposure>(draw.below(4));
  return place;
}

LayerRequest some_layer(Draw& draw) {
  LayerRequest layer;
  layer.parts.push_back({"tulip-triumph", 1.0});
  if (draw.chance()) {
    layer.parts[0].share = draw.number(0.5, 5.0, 0.37);
    layer.parts.push_back({"muscari", draw.number(0.5, 5.0, 0.37)});
  } else if (draw.chance()) {
    layer.grade_cm = draw.number(5.0, 30.0, 0.25);
  }
  for (LayerPart& part : layer.parts) {
    if (draw.chance()) part.storage_weeks = draw.number(0.0, 20.0, 0.1);
  }
  if (draw.chance()) layer.count = static_cast<int>(2 + draw.below(999));  // one of each kind
  layer.forcing_gap = draw.chance();
  if (!layer.forcing_gap && draw.chance()) layer.gap = some_length(draw, 0.0, 50.0);
  if (draw.chance()) layer.wall = some_length(draw, 0.0, 50.0);
  layer.arrange = static_cast<Arrange>(draw.below(2));
  if (layer.parts.size() == 1 && !layer.count) layer.pattern = static_cast<Pattern>(draw.below(3));
  if (draw.chance()) layer.label = "lot \\ 7";
  layer.own = draw.chance();
  if (draw.chance()) layer.note = "old bed";
  if (draw.chance()) layer.received = Day{2026, 9, 20};
  if (draw.chance()) layer.cold_already_weeks = draw.number(0.0, 10.0, 0.1);
  layer.use = static_cast<Use>(draw.below(2));
  const bool stored = std::any_of(layer.parts.begin(), layer.parts.end(), [](const auto& part) {
    return part.storage_weeks.value_or(0.0) > 0.0;
  });
  if (!stored) layer.state = static_cast<BulbState>(draw.below(3));
  return layer;
}

Request some_request(Draw& draw) {
  Request request;
  request.pot = some_pot(draw);
  request.place = some_place(draw);
  const Day day = Day{2026, 8, 1} + static_cast<int>(draw.below(120));  // one season north or south
  if (draw.chance()) request.season = 2026;
  if (draw.chance()) {
    request.plant = day;
  } else if (draw.chance()) {
    request.flower = DayWindow{day, day + static_cast<int>(draw.below(20))};
  }
  request.spread = !request.flower && draw.chance();
  request.order = static_cast<LayerOrder>(draw.below(2));
  if (draw.chance()) request.storage.temperature = some_temperature(draw);
  if (draw.chance()) request.storage.method = "damp vermiculite";
  if (draw.chance()) request.storage.weeks = draw.number(0.0, 20.0, 0.1);
  for (std::size_t i = 0; i < words_of<Pest>().size(); ++i) {
    if (draw.chance()) request.pests.push_back(static_cast<Pest>(i));
  }
  if (draw.chance()) request.winter = static_cast<WinterRain>(draw.below(3));
  for (std::size_t n = 1 + draw.below(4); n > 0; --n) request.layers.push_back(some_layer(draw));
  return request;
}

/// The keys of each object of a document by the path of KeyTable::path.
using KeysByPath = std::map<std::string, std::set<std::string>, std::less<>>;

void gather_keys(const nlohmann::json& value, const std::string& path, KeysByPath& keys) {
  if (value.is_array()) {
    for (const nlohmann::json& item : value) gather_keys(item, path, keys);
  } else if (value.is_object()) {
    for (const auto& [key, member] : value.items()) {
      keys[path].insert(key);
      gather_keys(member, fmt::format("{}/{}", path, key), keys);
    }
  }
}

}  // namespace

TEST_CASE("every key that is read occurs among written files", "[pot_file][law]") {
  Draw draw{20261120};
  KeysByPath written;
  for (int i = 0; i < 1000; ++i) {
    gather_keys(nlohmann::json::parse(write_pot_file(some_request(draw))), "", written);
  }
  std::size_t tables = 0;
  for (const input::KeyTable& table : input::key_tables) {
    std::set<std::string> known{table.keys.begin(), table.keys.end()};
    known.erase("$schema");  // for editors; it asks for nothing
    INFO("keys of " << table.where);
    CHECK(written[std::string{table.path}] == known);
    ++tables;
  }
  CHECK(written.size() == tables);
}

TEST_CASE("a written request reads back the same to the last bit", "[pot_file][law]") {
  Draw draw{20261120};
  for (int i = 0; i < 1000; ++i) {
    const Request request = some_request(draw);
    const std::string text = write_pot_file(request);
    INFO(text);
    const Request again = read_pot_file(text, "a.json").request;
    check_same(request, again);
    CHECK(write_pot_file(again) == text);
  }
}

TEST_CASE("a file with every key survives reading, writing and reading", "[pot_file][law]") {
  const Request first = read_pot_file(full_file, "a.json").request;
  check_same(first, read_pot_file(write_pot_file(first), "b.json").request);
}

TEST_CASE("a file cut at any byte is refused and never crashes", "[pot_file][law]") {
  const std::string whole = full_file;
  REQUIRE(reads(whole));
  for (std::size_t length = 0; length < whole.size(); ++length) {
    INFO("cut at " << length);
    CHECK_FALSE(reads(std::string_view{whole}.substr(0, length)));
  }
}

TEST_CASE("a file with bytes changed, doubled or lost is read or refused", "[pot_file][law]") {
  const std::string whole = full_file;
  constexpr std::string_view signs = "{}[]:,\"\\/*-+.eE0123456789 \n\ttrufalsn\x01\x7f\x80\xc3\xff";
  Draw draw{7};
  int read = 0;
  for (int i = 0; i < 4000; ++i) {
    std::string text = whole;
    for (std::size_t n = 1 + draw.below(3); n > 0; --n) {
      const std::size_t at = draw.below(text.size());
      switch (draw.below(4)) {
        case 0:
          text[at] = signs[draw.below(signs.size())];
          break;
        case 1:
          text.erase(at, 1 + draw.below(8));
          break;
        case 2:
          text.insert(at, text.substr(draw.below(text.size()), draw.below(30)));
          break;
        default:
          text[at] = static_cast<char>(draw.below(256));
      }
    }
    read += reads(text) ? 1 : 0;
  }
  // Some changes fall into comments and names: both outcomes must occur.
  CHECK(read > 100);
  CHECK(read < 2500);
}

TEST_CASE("every example is read, written and read again", "[pot_file][law]") {
  for (const char* name : {"steps.json"}) {
    std::ifstream file{bulbwright::fixture::source_path(fmt::format("examples/{}", name))};
    std::ostringstream text;
    text << file.rdbuf();
    const Request request = read_pot_file(text.str(), name).request;
    check_same(request, read_pot_file(write_pot_file(request), name).request);
  }
}

TEST_CASE("lengths and temperatures are written in the unit they were thought in", "[pot_file]") {
  Request request = read_pot_file(full_file, "a.json").request;
  const std::string text = write_pot_file(request);
  CHECK(text.find(R"("base": "22 in x 180 mm")") != std::string::npos);
  CHECK(text.find(R"("headspace": "1 in")") != std::string::npos);
  CHECK(text.find(R"("temperature": "5 C")") != std::string::npos);
  request.storage.temperature = from_fahrenheit(40.0);
  CHECK(write_pot_file(request).find(R"("temperature": "40 F")") != std::string::npos);
}
