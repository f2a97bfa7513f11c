#pragma once

#include <nlohmann/json.hpp>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"

namespace bulbwright::report {

/// What several documents hold in one form.

/// { from, to }, both days in.
nlohmann::ordered_json days_json(const DayWindow& days);

/// { code, severity, text }.
nlohmann::ordered_json notice_json(const Notice& notice);

}  // namespace bulbwright::report
