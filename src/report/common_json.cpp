#include "report/common_json.hpp"

#include "report/notice_text.hpp"

namespace bulbwright::report {

using Json = nlohmann::ordered_json;

Json days_json(const DayWindow& days) {
  return Json{{"from", to_iso(days.first)}, {"to", to_iso(days.last)}};
}

Json notice_json(const Notice& notice) {
  return Json{{"code", to_string(notice.code)},
              {"severity", to_string(notice.severity)},
              {"text", plain_text(notice)}};
}

}  // namespace bulbwright::report
