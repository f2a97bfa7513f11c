#pragma once

#include <string>

#include "cold/cold_answer.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// What the text and the JSON of `cold` say in the same words.

/// The place, or the station or "your records" that stand for it.
std::string cold_place(const ColdReport& report);
/// Where the figures come from.
std::string cold_basis(const ColdReport& report, const TextStyle& style);
/// The pot: "a terracotta pot of 29 litres".
std::string cold_pot(const ColdReport& report, const TextStyle& style);
/// Rain of the winter months and what it makes of the winter; empty where no rain is known.
std::string cold_rain(const ColdReport& report, const TextStyle& style);
/// The days of every year, not of one.
bool is_of_every_year(const ColdPeriod& period);

}  // namespace bulbwright::report
