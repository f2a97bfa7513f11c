#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "cli/option.hpp"
#include "suggest/wish.hpp"

namespace bulbwright::cli {

/// What the flags of `suggest` say of the stacks wanted, as written.
struct WishOptions {
  std::optional<std::string> window, layers, best;
  std::vector<std::string> safe_for, not_eaten_by, with, without;
  bool no_storage = false;
};

void declare_wish(std::vector<Option>& all, WishOptions& options);

/// Everything but the window, which the request carries. @throws InputError with every fault.
SuggestionWish wish_of(const WishOptions& options, const Catalogue& catalogue);

}  // namespace bulbwright::cli
