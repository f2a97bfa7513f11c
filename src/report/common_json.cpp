#include "report/common_json.hpp"

#include "report/notice_text.hpp"

namespace bulbwright::report {

using Json = nlohmann::ordered_json;

Json document(const char* schema) {
  return Json{{"schema", schema},
              {"program", {{"name", "bulbwright"}, {"version", BULBWRIGHT_VERSION}}}};
}

std::string document_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json flags_json(const AskedFlags& flags) {
  Json json = Json::object();
  for (const auto& [name, value] : flags) json[name] = value;
  return json;
}

Json days_json(const DayWindow& days) {
  return Json{{"from", to_iso(days.first)}, {"to", to_iso(days.last)}};
}

Json notice_json(const Notice& notice) {
  return Json{{"code", to_string(notice.code)},
              {"severity", to_string(notice.severity)},
              {"text", plain_text(notice)}};
}

}  // namespace bulbwright::report
