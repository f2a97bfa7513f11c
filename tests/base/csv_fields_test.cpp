#include "base/csv_fields.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;
using Fields = std::vector<std::string_view>;
using Fault = CsvFields::Fault;

// RFC 4180, section 2, rules 1, 2 and 5 to 7, with its own examples.
TEST_CASE("records are cut as RFC 4180 says", "[csv_fields][published]") {
  CsvFields fields;
  CHECK(fields.read("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", 0) == 13);
  CHECK(fields.fields() == Fields{"aaa", "bbb", "ccc"});
  CHECK(fields.read("aaa,bbb,ccc\r\nzzz,yyy,xxx", 13) == 24);
  CHECK(fields.fields() == Fields{"zzz", "yyy", "xxx"});
  const std::string_view breaks = "\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx";
  CHECK(fields.read(breaks, 0) == 21);
  CHECK(fields.fields() == Fields{"aaa", "b\r\nbb", "ccc"});
  fields.read("\"aaa\",\"b\"\"bb\",\"ccc\"", 0);
  CHECK(fields.fields() == Fields{"aaa", "b\"bb", "ccc"});
}

TEST_CASE("a lone carriage return ends a record, and an empty field is one", "[csv_fields]") {
  CsvFields fields;
  CHECK(fields.read("a,b\rc", 0) == 4);
  CHECK(fields.fields() == Fields{"a", "b"});
  fields.read(",,", 0);
  CHECK(fields.fields() == Fields{"", "", ""});
  fields.read("\"\",x", 0);
  CHECK(fields.fields() == Fields{"", "x"});
}

TEST_CASE("a quote that goes wrong is told by its place", "[csv_fields]") {
  CsvFields fields;
  fields.read("a,\"bc", 0);
  CHECK(fields.fault() == Fault::never_closed);
  CHECK(fields.fault_at() == 2);
  fields.read("a,\"b\"c,d", 0);
  CHECK(fields.fault() == Fault::text_after_quote);
  CHECK(fields.fault_at() == 5);
  fields.read("a", 0);
  CHECK(fields.fault() == Fault::none);
}
