#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// Mix that held a genus last year is not used for it again: moulds and root rots of that genus
/// live on in it. common practice; for tulips three years are named (tulip fire, Botrytis tulipae).

/// The genera of `taxa` that mix which last held `last_crop` (is_crop_of()) must not be given, in
/// lower case, in order, each once. Empty without a last crop or with fresh mix.
std::vector<std::string> genera_refused(const std::optional<std::string>& last_crop, bool used_mix,
                                        std::span<const Taxon* const> taxa);

}  // namespace bulbwright
