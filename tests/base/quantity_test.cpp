#include "base/quantity.hpp"

#include <catch2/catch.hpp>

#include "base/error.hpp"

using namespace bulbwright;

// International yard and pound agreement, 1959: one inch is exactly 25.4 mm, one foot 12 inches.
TEST_CASE("lengths are read in the units growers use", "[quantity][published]") {
  CHECK(parse_length("15 in") == 381_mm);
  CHECK(parse_length("1 ft") == 304.8_mm);
  CHECK(parse_length("38cm") == 380_mm);
  CHECK(parse_length(" 0.38 m ") == 380_mm);
  CHECK(parse_length("15\"") == 381_mm);
}

// A foot is exactly 304.8 mm, so that a cubic foot is 28.316846592 litres.
TEST_CASE("volumes are read in litres and cubic feet", "[quantity][published]") {
  CHECK(parse_volume("12 l") == Litres{12.0});
  CHECK(parse_volume("12 litres") == Litres{12.0});
  CHECK(parse_volume(" 900ml ").value() == Approx(0.9));
  CHECK(parse_volume("0.5 cu ft").value() == Approx(14.158423296));
  CHECK_THROWS_WITH(parse_volume("12"), R"("12" has no unit; did you mean "12 l" or "12 cu ft"?)");
  CHECK_THROWS_WITH(parse_volume("12 gal"),
                    R"("12 gal" has the unknown unit "gal"; expected l, ml or cu ft)");
}

TEST_CASE("a bare number is refused with the likely fix", "[quantity][input]") {
  CHECK_THROWS_WITH(parse_length("15"), R"("15" has no unit; did you mean "15 cm" or "15 in"?)");
  CHECK_THROWS_WITH(parse_temperature("5"), R"("5" has no unit; did you mean "5 C" or "5 F"?)");
}

TEST_CASE("a difference of temperatures is scaled and not shifted", "[quantity]") {
  CHECK(parse_difference("1.2 C") == Kelvins{1.2});
  CHECK(parse_difference("1.2 K") == Kelvins{1.2});
  CHECK(parse_difference("+1.2 °C") == Kelvins{1.2});
  CHECK(parse_difference("-9 F").value() == Approx(-5.0));
  CHECK(parse_difference("1.8 degF").value() == Approx(1.0));
  CHECK(parse_difference("0 F") == Kelvins{0.0});
  CHECK_THROWS_WITH(parse_difference("1.2"),
                    R"("1.2" has no unit; did you mean "1.2 C" or "1.2 F"?)");
  CHECK_THROWS_WITH(parse_difference("1.2 R"), Catch::Contains("expected C, K or F"));
  for (const char* text : {"", "C", "++1 C", "+-1 C", "+ 1 C", "1,2 C"}) {
    CAPTURE(text);
    CHECK_THROWS_AS(parse_difference(text), InvalidValue);
  }
}

TEST_CASE("odd spellings of numbers are refused", "[quantity][input]") {
  for (const char* text : {"", " ", "nan mm", "inf mm", "0x10 mm", "1e400 mm", "1e3 mm", "12,5 cm",
                           "mm", "5 furlong", "5 mm mm"}) {
    CAPTURE(text);
    CHECK_THROWS_AS(parse_length(text), InvalidValue);
  }
}

TEST_CASE("pairs of lengths take any times sign", "[quantity]") {
  const LengthPair pair = parse_length_pair("60 cm x 20 cm");
  CHECK(pair.paired);
  CHECK(pair.first == 600_mm);
  CHECK(pair.second == 200_mm);
  CHECK(parse_length_pair("60 cm × 20 cm").second == 200_mm);
  CHECK_FALSE(parse_length_pair("15 in").paired);
}

TEST_CASE("rounding leaves no negative zero and no binary dust", "[quantity][law]") {
  CHECK(std::signbit(rounded(-0.04, 0.1)) == false);
  CHECK(rounded(0.30000000000000004, 0.1) == 0.3);
  CHECK(rounded(12.25, 0.5) == 12.5);
  CHECK(rounded(1234.0, 5.0) == 1235.0);
}

TEST_CASE("a bare number is offered the units in which it is a likely length",
          "[quantity][input]") {
  using Use = LengthUse;
  // Pots of 38 cm and 15 in, gaps of 25 mm, gardens 9 m above the sea: common practice.
  CHECK(with_likely_units("38", Use::pot) == R"("38 cm" or "38 in")");
  CHECK(with_likely_units("380", Use::pot) == R"("380 mm")");
  CHECK(with_likely_units("0.38", Use::pot) == R"("0.38 m")");
  CHECK(with_likely_units("25", Use::small) == R"("25 mm")");
  CHECK(with_likely_units("1", Use::small) == R"("1 cm" or "1 in")");
  CHECK(with_likely_units("9", Use::height) == R"("9 m" or "9 ft")");
  CHECK(with_likely_units("99999", Use::small) == R"("99999 mm" or "99999 in")");
}
