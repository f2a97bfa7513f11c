#include "report/common_json.hpp"

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

void put_text(Json& json, const char* key, std::string_view text) {
  if (!text.empty()) json[key] = text;
}

Json days_json(const DayWindow& days) {
  return Json{{"from", to_iso(days.first)}, {"to", to_iso(days.last)}};
}

}  // namespace bulbwright::report
