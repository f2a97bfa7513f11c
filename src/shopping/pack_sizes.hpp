#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "shopping/item_kind.hpp"

namespace bulbwright {

/// So many packs of one size.
struct Pack {
  int size = 0;   ///< bulbs, litres or pieces in one pack
  int count = 0;  ///< packs of it
  bool operator==(const Pack&) const = default;
};

/// The packs that cover `need` with the fewest surplus pieces, among those the fewest packs, among
/// those the largest ones first. Exact. Largest size first in the answer; empty where need <= 0.
/// `sizes`: at least one, each from 1 to 1,000, in any order.
///
/// Dynamic programming over totals (unbounded change-making). It stays small for any need: in a
/// best answer fewer than L packs are not of the largest size L, for among L of them some would add
/// up to a multiple of L (pigeonhole on the remainders of their partial sums) and fewer packs of
/// size L would do; so all beyond L * L pieces is given in packs of size L at once.
std::vector<Pack> fewest_packs(int need, std::span<const int> sizes);

/// Sizes in which something is sold.
struct PackSizes {
  ItemKind kind = ItemKind::bulb;  ///< not mesh, which is cut to size
  std::string match;               ///< a taxon id, a genus in lower case, or "*"
  std::vector<int> sizes;
};

/// Reads kind,match,sizes,origin,source; sizes with spaces between. `names`: kinds of bulbs and
/// genera (lower case) that bulbs may match; empty: any.
/// @throws InputError for an unknown name, kind or origin, a size that is no whole number from 1 to
/// 1,000, or a kind and match given twice.
std::vector<PackSizes> parse_packs(std::string_view csv, std::string file,
                                   std::span<const std::string_view> names = {});

/// `base` with the rows of `own` in place of those of the same kind and match, the others added.
std::vector<PackSizes> merged(std::vector<PackSizes> base, std::vector<PackSizes> own);

/// The table compiled into the program (data/packs.csv), parsed at each call. common practice
std::vector<PackSizes> builtin_packs();

/// The sizes for a kind: those of the taxon id, else of the genus (any case), else of "*", else
/// none.
std::span<const int> sizes_for(std::span<const PackSizes> table, ItemKind kind,
                               std::string_view taxon, std::string_view genus);

}  // namespace bulbwright
