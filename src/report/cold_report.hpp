#pragma once

#include <string>

#include "cold/cold_answer.hpp"
#include "plan/request.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// The answer of `cold` in the three forms.
std::string cold_text(const ColdReport& report, const TextStyle& style);
std::string cold_json(const ColdReport& report, const Request& request);
/// One row a winter and month, and a row "total" a winter.
std::string cold_csv(const ColdReport& report);

}  // namespace bulbwright::report
