#pragma once

#include <string>
#include <vector>

#include "report/text_style.hpp"
#include "season/season.hpp"

namespace bulbwright::report {

/// Why a pot cannot be planned or planted, without capital letter and full stop.
std::string why_not(const SeasonPot& pot, const TextStyle& style);

/// "south steps, porch and urn", "all 8 pots" where that is more than two and all that are
/// planted, "south steps, porch and 31 more pots" where a list would be too long.
std::string pots_text(const Season& season, const std::vector<std::size_t>& pots,
                      const TextStyle& style);

/// A job said once for its pots, as a sentence: "Refrigerate 21 Triumph tulips (south steps)."
std::string job_text(const Season& season, const SharedJob& job, const TextStyle& style);

/// The same without pots and figures, for what goes on: "keep moist, not wet".
std::string ongoing_text(const SharedJob& job, const TextStyle& style);

/// A change that makes room: "plant the porch urn 2 weeks later, on 22 Jan (...)".
std::string change_text(const Season& season, const RoomChange& change, const TextStyle& style);

/// "12.4 l", or with inches in quarts.
std::string litres_text(Litres litres, const TextStyle& style);

}  // namespace bulbwright::report
