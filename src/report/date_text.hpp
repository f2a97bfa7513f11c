#pragma once

#include <string>

#include "plan/task.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// What is to be done or seen on a planned day, without capital letter and full stop; a date may
/// name several kinds.
std::string date_text(const PlannedDate& date, const TextStyle& style);

/// The same in a few words, for a sheet set close.
std::string short_date_text(const PlannedDate& date, const TextStyle& style);

/// For documents that programs read: metric, plain spaces.
std::string plain_text(const PlannedDate& date);

/// The first noses of several kinds, of which `date` names the earliest.
std::string first_noses_text(const PlannedDate& date);

}  // namespace bulbwright::report
