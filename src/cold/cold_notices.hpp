#pragma once

#include <vector>

#include "cold/cold_answer.hpp"

namespace bulbwright {

/// What an answer of `cold` has to say about itself, from its figures.

/// How far normals can be trusted, and where they give no cold at all.
std::vector<Notice> normals_notices(const ColdReport& report);

/// What was filled, left out or missing in the record.
std::vector<Notice> record_notices(const ColdReport& report);

}  // namespace bulbwright
