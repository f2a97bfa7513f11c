#include "shopping/pack_sizes.hpp"

#include <algorithm>
#include <cassert>
#include <limits>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/origin.hpp"
#include "base/quantity.hpp"
#include "base/text.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view packs_csv;
}

namespace {

using namespace std::string_view_literals;

constexpr int greatest_size = 1000;

/// fewest[t]: least number of packs that make exactly t pieces.
std::vector<int> fewest_for_totals(int most, std::span<const int> sizes) {
  constexpr int never = std::numeric_limits<int>::max();
  std::vector<int> fewest(static_cast<std::size_t>(most) + 1, never);
  fewest[0] = 0;
  for (int total = 1; total <= most; ++total) {
    int& best = fewest[static_cast<std::size_t>(total)];
    for (const int size : sizes) {
      if (size > total) continue;
      const int before = fewest[static_cast<std::size_t>(total - size)];
      if (before != never) best = std::min(best, before + 1);
    }
  }
  return fewest;
}

std::vector<int> parse_sizes(const std::string& text) {
  std::vector<int> sizes;
  std::size_t at = 0;
  while (at <= text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    sizes.push_back(
        static_cast<int>(parse_whole_number(text.substr(at, end - at), 1, greatest_size)));
    at = end + 1;
  }
  return sizes;
}

}  // namespace

std::vector<Pack> fewest_packs(int need, std::span<const int> sizes) {
  if (need <= 0) return {};
  assert(!sizes.empty());
  std::vector<int> largest_first{sizes.begin(), sizes.end()};
  std::sort(largest_first.rbegin(), largest_first.rend());
  largest_first.erase(std::unique(largest_first.begin(), largest_first.end()), largest_first.end());
  const int largest = largest_first.front();
  assert(largest_first.back() >= 1 && largest <= greatest_size);

  const int at_once = std::max(0, (need - largest * largest) / largest);
  const int rest = need - at_once * largest;
  const std::vector<int> fewest = fewest_for_totals(rest + largest - 1, largest_first);
  int total = rest;
  while (fewest[static_cast<std::size_t>(total)] == std::numeric_limits<int>::max()) ++total;

  std::vector<Pack> packs;
  for (const int size : largest_first) {
    Pack pack{size, size == largest ? at_once : 0};
    while (total >= size && fewest[static_cast<std::size_t>(total - size)] ==
                                fewest[static_cast<std::size_t>(total)] - 1) {
      total -= size;
      ++pack.count;
    }
    if (pack.count > 0) packs.push_back(pack);
  }
  return packs;
}

std::vector<PackSizes> parse_packs(std::string_view csv, std::string file,
                                   std::span<const std::string_view> names) {
  CsvTable table = read_csv(csv, std::move(file));
  const std::size_t kind = table.column("kind"), match = table.column("match"),
                    sizes = table.column("sizes"), origin = table.column("origin");
  std::vector<PackSizes> result;
  std::vector<InputFault> faults;
  for (CsvRecord& record : table.records) {
    CsvRow row{table, record, faults};
    PackSizes pack;
    pack.kind = row.word<ItemKind>(kind).value_or(ItemKind::bulb);
    if (pack.kind == ItemKind::mesh) row.fault(kind, "is mesh, which is cut to size");
    (void)row.word<Origin>(origin);
    pack.match = row.required(match, "a taxon, genus or *");
    if (pack.kind == ItemKind::bulb && !names.empty() && pack.match != "*" && !pack.match.empty() &&
        std::ranges::find(names, pack.match) == names.end()) {
      row.fault(match, fmt::format("is the unknown {}{}", in_quotes(pack.match),
                                   did_you_mean(pack.match, names)));
    }
    const bool twice = std::any_of(result.begin(), result.end(), [&](const PackSizes& before) {
      return before.kind == pack.kind && before.match == pack.match;
    });
    if (twice) {
      row.fault(match, fmt::format("{} was given before for {}", in_quotes(pack.match),
                                   word_of(pack.kind)));
    }
    try {
      pack.sizes = parse_sizes(row.text(sizes));
    } catch (const InvalidValue& fault) {
      row.fault(sizes, fmt::format("has {}", fault.expectation()));
    }
    result.push_back(std::move(pack));
  }
  throw_if_any(std::move(faults));
  return result;
}

std::vector<PackSizes> merged(std::vector<PackSizes> base, std::vector<PackSizes> own) {
  for (PackSizes& row : own) {
    const auto same = std::find_if(base.begin(), base.end(), [&](const PackSizes& known) {
      return known.kind == row.kind && known.match == row.match;
    });
    if (same == base.end()) {
      base.push_back(std::move(row));
    } else {
      *same = std::move(row);
    }
  }
  return base;
}

std::vector<PackSizes> builtin_packs() {
  return parse_packs(embedded::packs_csv, "packs.csv");
}

std::span<const int> sizes_for(std::span<const PackSizes> table, ItemKind kind,
                               std::string_view taxon, std::string_view genus) {
  const std::string low = lower_case(genus);
  for (const std::string_view match : {taxon, std::string_view{low}, "*"sv}) {
    for (const PackSizes& row : table) {
      if (row.kind == kind && row.match == match) return row.sizes;
    }
  }
  return {};
}

}  // namespace bulbwright
