#include "packing/round_table.hpp"

#include <cmath>
#include <fstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "packing/certificate.hpp"
#include "packing/packing.hpp"
#include "packing/polish.hpp"
#include "packing/seeds.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

/// Ratios of the records of circles in a circle; 0 where the file has none.
std::vector<double> record_ratios() {
  std::ifstream file{fixture::source_path("tests/vectors/packing_records.csv")};
  std::vector<double> ratios(301, 0.0);
  for (std::string line; std::getline(file, line);) {
    if (line.rfind("circle,,", 0) != 0) continue;
    ratios.at(std::stoul(line.substr(8))) = std::stod(line.substr(line.find(',', 8) + 1));
  }
  return ratios;
}

}  // namespace

TEST_CASE("every row of the table of round layouts holds at its ratio", "[packing][law]") {
  REQUIRE(packing::round_table_size() == 200);
  const packing::Outline outline{{Shape::round, 2000_mm, 2000_mm, {}}};
  for (std::size_t n = 2; n <= packing::round_table_size(); ++n) {
    CAPTURE(n);
    const double spacing = 2000.0 / (packing::round_table_ratio(n) * (1.0 + 1e-9) - 1.0);
    std::vector<packing::Point> points = packing::round_table_layout(n);
    REQUIRE(points.size() == n);
    for (packing::Point& p : points) p = {1000.0 * p.x, 1000.0 * p.y};
    packing::Coordinates x = packing::to_coordinates(points);
    const packing::Discs discs = packing::equal_discs(n, spacing, 0.0);
    CHECK(packing::polish(outline, discs, 0.8e-9 * spacing, x));
    CHECK(packing::violation(outline, discs, x) <= 1e-9);
    CHECK(packing::round_table_ratio(n) >= packing::round_table_ratio(n - 1));
  }
}

// Source: E. Specht's tables of best known packings, as named in tests/vectors/packing_records.csv.
// A millionth is 0.001 mm in a pot a metre wide.
TEST_CASE("the table of round layouts is at the records to a millionth", "[packing][published]") {
  const std::vector<double> records = record_ratios();
  int compared = 0;
  for (std::size_t n = 1; n <= packing::round_table_size(); ++n) {
    if (records[n] <= 0.0) continue;
    CAPTURE(n);
    CHECK(packing::round_table_ratio(n) <= records[n] * (1.0 + 1e-6));
    CHECK(packing::round_table_ratio(n) >= records[n] * (1.0 - 1e-9));
    ++compared;
  }
  CHECK(compared > 80);
}

// Source: as above.
TEST_CASE("printed answers hold the record in pots a thousandth wider at every effort",
          "[packing][published]") {
  const std::vector<double> records = record_ratios();
  for (std::size_t n = 2; n <= packing::round_table_size(); ++n) {
    if (records[n] <= 0.0) continue;
    const Millimetres width{100.0 * records[n] * 1.001};
    const std::vector<PackKind> kinds{{100_mm, 1.0, 0}};
    for (const Effort effort : {Effort::quick, Effort::normal, Effort::thorough}) {
      CAPTURE(n, static_cast<int>(effort));
      const Packing p = pack_most({Shape::round, width, width, {}}, kinds, 0_mm, 0_mm, effort);
      CHECK(p.bulbs.size() >= n);
    }
  }
}

TEST_CASE("a wider round pot or a smaller gap never holds fewer", "[packing][law]") {
  const auto count = [](double width, double bulb, double gap) {
    const std::vector<PackKind> kinds{{Millimetres{bulb}, 1.0, 0}};
    return pack_most({Shape::round, Millimetres{width}, Millimetres{width}, {}}, kinds,
                     Millimetres{gap}, 10_mm, Effort::quick)
        .bulbs.size();
  };
  std::size_t before = 0;
  for (int width = 200; width <= 600; ++width) {
    CAPTURE(width);
    const std::size_t now = count(width, 40.0, 25.0);
    CHECK(now >= before);
    before = now;
  }
  before = 0;
  for (int width = 300; width <= 500; ++width) {
    CAPTURE(width);
    const std::size_t now = count(width, 30.0, 10.0);
    CHECK(now >= before);
    before = now;
  }
  before = 0;
  for (int tenths = 450; tenths >= 50; tenths -= 2) {
    CAPTURE(tenths);
    const std::size_t now = count(450.0, 40.0, tenths / 10.0);
    CHECK(now >= before);
    before = now;
  }
}
