#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// Mix that held a genus last year is not used for it again: moulds and root rots of that genus
/// live on in it. common practice; for tulips three years are named (tulip fire, Botrytis tulipae).

/// The genus meant by a crop's name, in lower case: "Hyacinth" and "hyacinthus" are "hyacinthus",
/// "daffodils" is "narcissus". A word that is not known stands for itself.
std::string genus_of_crop(std::string_view crop);

/// Those of `genera` (any case) that mix which last held `last_crop` must not be given, in lower
/// case, in order, each once. Empty without a last crop or with fresh mix.
std::vector<std::string> genera_refused(const std::optional<std::string>& last_crop, bool used_mix,
                                        std::span<const std::string> genera);

}  // namespace bulbwright
