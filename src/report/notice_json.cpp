#include "report/notice_json.hpp"

#include "report/common_json.hpp"
#include "report/notice_text.hpp"
#include "report/section_json.hpp"

namespace bulbwright::report {
namespace {

Json ids_json(const std::vector<KindName>& kinds) {
  Json json = Json::array();
  for (const KindName& kind : kinds) json.push_back(kind.taxon);
  return json;
}

/// Puts a detail under its name and unit.
struct DetailJson {
  Json& into;
  std::string name;

  void put(const char* unit, double value, double step) const {
    into[name + unit] = rounded(value, step);
  }
  void operator()(int count) const { into[name] = count; }
  void operator()(double number) const { put("", number, 0.001); }
  void operator()(Weeks weeks) const { put("_weeks", weeks.value(), 0.1); }
  void operator()(Millimetres length) const { into[name + "_mm"] = document_mm(length); }
  void operator()(Celsius temperature) const { put("_c", temperature.value(), 0.1); }
  void operator()(Kelvins difference) const { put("_k", difference.value(), 0.1); }
  void operator()(Litres volume) const { put("_litres", volume.value(), 0.1); }
  void operator()(Day day) const { into[name] = to_iso(day); }
  void operator()(const DayWindow& days) const { into[name] = days_json(days); }
  void operator()(const std::string& text) const { into[name] = text; }
  void operator()(const std::vector<KindName>& kinds) const { into[name] = ids_json(kinds); }
  void operator()(const std::vector<Remark>& remarks) const {
    Json json = Json::array();
    for (const Remark& remark : remarks) json.push_back(plain_text(remark));
    into[name] = std::move(json);
  }
};

}  // namespace

Json notice_json(const Notice& notice) {
  Json details = Json::object();
  for (const Detail& detail : notice.details)
    std::visit(DetailJson{details, std::string{word_of(detail.name)}}, detail.value);
  Json json{{"code", word_of(notice.code)},
            {"severity", word_of(notice.severity)},
            {"kinds", ids_json(notice.kinds)}};
  if (notice.layer > 0) json["layer"] = notice.layer;
  json["details"] = std::move(details);
  json["text"] = plain_text(notice);
  return json;
}

}  // namespace bulbwright::report
