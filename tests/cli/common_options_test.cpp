#include "cli/common_options.hpp"

#include <catch2/catch.hpp>

namespace bulbwright::cli {
namespace {

std::string form(const std::string& out, const std::string& asked,
                 std::vector<std::string> formats) {
  CommonOptions options;
  std::vector<Option> all;
  declare_common(all, options, std::move(formats));
  options.out = out;
  options.format = asked;
  return format_of(options);
}

}  // namespace

TEST_CASE("the ending of --out tells the form unless --format does", "[cli]") {
  const std::vector<std::string> three{"text", "json", "csv"};
  CHECK(form("-", "", three) == "text");
  CHECK(form("list.csv", "", three) == "csv");
  CHECK(form("a.b/plan.json", "", three) == "json");
  CHECK(form("LIST.CSV", "", three) == "csv");
  CHECK(form("list.csv", "text", three) == "text");
  CHECK(form("list.txt", "json", three) == "json");
  for (const char* other : {"plan.txt", "plan", "plan.md", "a.json/plan", "/dev/stdout", ".json"}) {
    CAPTURE(other);
    CHECK(form(other, "", three) == "text");
  }
}

TEST_CASE("an ending that the command has no form for gets text", "[cli]") {
  CHECK(form("plan.csv", "", {"text", "json"}) == "text");
  CHECK(form("plan.csv", "json", {"text", "json"}) == "json");
}

}  // namespace bulbwright::cli
