#include "report/notice_text.hpp"

#include <set>

#include <catch2/catch.hpp>

#include "report/text_layout.hpp"
#include "report/wording.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {

const TextStyle metric{};
const TextStyle inches{true, 80, Units::inches, false};

Notice about(const char* taxon, const char* name, double weeks) {
  return {NoticeCode::less_than_recommended,
          Severity::note,
          {{taxon, name}},
          {{DetailName::lacking, Weeks{weeks}}}};
}

std::string in_words(const char* pattern, const std::vector<Detail>& details,
                     const TextStyle& style = metric) {
  return plain_spaces(worded(pattern, {{}, details}, style));
}

}  // namespace

TEST_CASE("every notice has a word of its own", "[notice_text]") {
  std::set<std::string> words;
  for (std::size_t code = 0; code < notice_codes; ++code) {
    const std::string word{word_of(static_cast<NoticeCode>(code))};
    CHECK(word.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string::npos);
    CHECK(words.insert(word).second);
  }
}

TEST_CASE("a detail is written in the reader's units", "[notice_text]") {
  const std::vector<Detail> details{{DetailName::height, Millimetres{399.2}},
                                    {DetailName::gap, Millimetres{12.34}},
                                    {DetailName::leaves, Millimetres{300.0}},
                                    {DetailName::mix, Celsius{13.6}},
                                    {DetailName::yearly, Kelvins{2.0}}};
  // 399.2 mm is 15.717 in: 15 3/4 is the next eighth that is not less.
  CHECK(in_words("{height:up}", details) == "400 mm");
  CHECK(in_words("{height:up}", details, inches) == "15 3/4 in");
  CHECK(in_words("{gap}, {leaves:tall}", details) == "12 mm, 30 cm");
  CHECK(in_words("{gap}, {leaves:tall}", details, inches) == "1/2 in, 12 in");
  CHECK(in_words("{mix:half}, {yearly}", details) == "13.5 °C, 2.0 °C");
  CHECK(in_words("{mix:half}, {yearly}", details, inches) == "56 °F, 3.6 °F");
}

TEST_CASE("distances, heights, rain and differences are said in words", "[notice_text]") {
  const std::vector<Detail> details{
      {DetailName::distance, Millimetres{32.4e6}}, {DetailName::height, Millimetres{-50e3}},
      {DetailName::rain, Millimetres{101.6}},      {DetailName::nights, Kelvins{1.2}},
      {DetailName::daytimes, Kelvins{-0.5}},       {DetailName::weather, Kelvins{0.04}}};
  CHECK(in_words("{distance:far}, {height:higher}, {rain:rain}", details) ==
        "32 km, 50 m lower, 102 mm");
  CHECK(in_words("{distance:far}, {height:higher}, {rain:rain}", details, inches) ==
        "20 miles, 164 ft lower, 4.0 in");
  CHECK(in_words("{nights:warmer}, {daytimes:warmer}, {weather:warmer}", details) ==
        "1.2 °C warmer, 0.5 °C colder, as warm");
  CHECK(in_words("{nights:warmer}", details, inches) == "2.2 °F warmer");
}

TEST_CASE("numbers of things make their words", "[notice_text]") {
  const std::vector<Detail> details{{DetailName::open, 1},
                                    {DetailName::all, 3},
                                    {DetailName::off, -1},
                                    {DetailName::given, Weeks{8.4}}};
  CHECK(in_words("{open} of {all} {open:is|are} open", details) == "1 of 3 is open");
  CHECK(in_words("{open:days}, {all:days}", details) == "1 day, 3 days");
  CHECK(in_words("{off:late}, {all:late}", details) == "1 day early, 3 days late");
  CHECK(in_words("{given}", details) == "8.5 weeks");
}

TEST_CASE("what lacks a detail is left out, or is no sentence", "[notice_text]") {
  const std::vector<Detail> details{{DetailName::open, 2}};
  CHECK(in_words("{open} open[ of {all}]", details) == "2 open");
  CHECK(can_say("{open}[ of {all}]", {{}, details}));
  CHECK_FALSE(can_say("{open} of {all}", {{}, details}));
  CHECK_THROWS_AS(in_words("{open} of {all}", details), std::logic_error);
}

TEST_CASE("the same said of several kinds is said once, with other figures again",
          "[notice_text]") {
  const std::vector<Notice> notices{about("tulip-triumph", "Triumph tulip", 2.0),
                                    about("crocus-large", "Large Dutch crocus (Crocus)", 2.0),
                                    about("tulip-triumph", "Triumph tulip", 2.0),
                                    about("muscari", "Grape hyacinth", 3.0)};
  const std::vector<Notice> once = merged(notices);
  REQUIRE(once.size() == 2);
  CHECK(plain_text(once[0]).starts_with("Triumph tulips and Large Dutch crocuses: 2 weeks less"));
  CHECK(plain_text(once[1]).starts_with("Grape hyacinth: 3 weeks less"));
}

TEST_CASE("what is said of a layer, or of two kinds, stands alone", "[notice_text]") {
  Notice one{NoticeCode::close_together,
             Severity::note,
             {{"tulip-triumph", "Triumph tulip"}},
             {{DetailName::count, 20},
              {DetailName::gap, Millimetres{12.0}},
              {DetailName::usual, Millimetres{25.0}}},
             1};
  Notice two = one;
  two.kinds = {{"muscari", "Grape hyacinth"}};
  two.layer = 2;
  CHECK(merged({one, two}).size() == 2);
  CHECK(merged({one, one}).size() == 1);
  Notice beside{NoticeCode::leaf_mat,
                Severity::note,
                {{"muscari", "Grape hyacinth"}},
                {{DetailName::other, std::vector<KindName>{{"tulip-triumph", "Triumph tulip"}}}}};
  Notice other = beside;
  other.kinds = {{"crocus-large", "Large Dutch crocus"}};
  CHECK(merged({beside, other}).size() == 2);
}
