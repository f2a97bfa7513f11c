#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "base/calendar_day.hpp"
#include "report/asked_flags.hpp"

namespace bulbwright::report {

/// What several documents hold in one form.

/// What every answer begins with: { schema, program { name, version } }. docs/json.md has the
/// promise that all of them keep.
nlohmann::ordered_json document(const char* schema);

/// A document as text: two-space indent, bytes that are no UTF-8 replaced, a newline at the end.
std::string document_text(const nlohmann::ordered_json& json);

nlohmann::ordered_json flags_json(const AskedFlags& flags);

/// A key for a text that is there; nothing for an empty one.
void put_text(nlohmann::ordered_json& json, const char* key, std::string_view text);

/// What `write` makes of each item, in their order.
template <class Items, class Writer>
nlohmann::ordered_json list_of(const Items& items, Writer write) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const auto& item : items) list.push_back(write(item));
  return list;
}

/// { from, to }, both days in.
nlohmann::ordered_json days_json(const DayWindow& days);

}  // namespace bulbwright::report
