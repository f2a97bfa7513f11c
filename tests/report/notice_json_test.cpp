#include "report/notice_json.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright;
using namespace bulbwright::report;
using Json = nlohmann::ordered_json;

TEST_CASE("a notice in a document has its figures beside the sentence", "[notice_json]") {
  const Notice close{NoticeCode::close_together,
                     Severity::note,
                     {{"muscari", "Grape hyacinth"}},
                     {{DetailName::count, 12},
                      {DetailName::gap, Millimetres{15.64}},
                      {DetailName::usual, Millimetres{18.0}}},
                     2};
  const Json json = notice_json(close);
  CHECK(json["code"] == "close-together");
  CHECK(json["severity"] == "note");
  CHECK(json["kinds"] == Json::array({"muscari"}));
  CHECK(json["layer"] == 2);
  CHECK(json["details"] == Json{{"count", 12}, {"gap_mm", 15.6}, {"usual_mm", 18.0}});
  CHECK(json["text"].get<std::string>().find("16 mm") != std::string::npos);
}

TEST_CASE("details end in their unit, days are ISO, kinds are ids, reasons texts",
          "[notice_json]") {
  const Notice early{NoticeCode::storage_before_bulbs,
                     Severity::warning,
                     {{"tulip-triumph", "Triumph tulip"}},
                     {{DetailName::given, Weeks{14}},
                      {DetailName::planted, Day{2026, 11, 2}},
                      {DetailName::start, Day{2026, 7, 27}},
                      {DetailName::available, Day{2026, 9, 1}},
                      {DetailName::nearest, Day{2026, 12, 8}},
                      {DetailName::possible, Weeks{8.86}}}};
  const Json json = notice_json(early);
  CHECK(json["details"] == Json{{"given_weeks", 14.0},
                                {"planted", "2026-11-02"},
                                {"start", "2026-07-27"},
                                {"available", "2026-09-01"},
                                {"nearest", "2026-12-08"},
                                {"possible_weeks", 8.9}});
  CHECK_FALSE(json.contains("layer"));
  const Notice warm{NoticeCode::mix_too_warm,
                    Severity::warning,
                    {{"tulip-triumph", "Triumph tulip"}},
                    {{DetailName::mix, Celsius{19.26}},
                     {DetailName::advice, std::vector<Remark>{{RemarkCode::keep_in_shade}}}}};
  const Json advice = notice_json(warm)["details"];
  CHECK(advice["mix_c"] == 19.3);
  REQUIRE(advice["advice"].size() == 1);
  CHECK(advice["advice"][0].get<std::string>().find("shade") != std::string::npos);
}
