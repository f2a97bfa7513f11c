#include "base/csv.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;

// Cases of RFC 4180, section 2, rules 1 to 7.
TEST_CASE("CSV is read as RFC 4180 says", "[csv][published]") {
  const CsvTable table = read_csv("a,b\r\n\"x,\"\"y\"\"\nz\",2\r\n,\n", "t.csv");
  REQUIRE(table.records.size() == 2);
  CHECK(table.records[0].fields[0] == "x,\"y\"\nz");
  CHECK(table.records[0].line == 2);
  CHECK(table.records[1].line == 4);
  CHECK(table.records[1].fields[1].empty());
}

TEST_CASE("a field is quoted only where it must be", "[csv]") {
  CHECK(csv_field("plain") == "plain");
  CHECK(csv_field("a,\"b\"") == "\"a,\"\"b\"\"\"");
}

TEST_CASE("faults name the line", "[csv][input]") {
  CHECK_THROWS_WITH(read_csv("a,b\n1\n", "t.csv"), "1 fields where the header has 2");
  CHECK_THROWS_WITH(read_csv("a\n\"open\n", "t.csv"), "a quoted field is never closed");
  CHECK_THROWS_WITH(read_csv("", "t.csv"), "empty; expected a header line");
  CHECK_THROWS_WITH(read_csv("alpha\n1\n", "t.csv").column("alhpa"),
                    R"(no column "alhpa"; did you mean "alpha"?)");
}
