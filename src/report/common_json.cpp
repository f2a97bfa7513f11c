#include "report/common_json.hpp"

namespace bulbwright::report {

using Json = nlohmann::ordered_json;

Json days_json(const DayWindow& days) {
  return Json{{"from", to_iso(days.first)}, {"to", to_iso(days.last)}};
}

Json notice_json(const Notice& notice) {
  return Json{
      {"code", notice.code}, {"severity", to_string(notice.severity)}, {"text", notice.text}};
}

}  // namespace bulbwright::report
