#include "shopping/pack_sizes.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cctype>
#include <limits>

#include <fmt/format.h>

#include "base/csv.hpp"
#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/quantity.hpp"
#include "catalogue/taxon_words.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view packs_csv;
}

namespace {

using namespace std::string_view_literals;

constexpr int greatest_size = 1000;
constexpr std::array pack_kinds{"bulb"sv, "mix"sv, "amendment"sv, "pin"sv, "label"sv};

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

void check_word(std::string_view column, std::string_view word,
                std::span<const std::string_view> known) {
  if (std::find(known.begin(), known.end(), word) != known.end()) return;
  throw InvalidValue{std::string{column},
                     fmt::format("{}; expected one of {}{}", in_quotes(word),
                                 fmt::join(known, ", "), did_you_mean(word, known))};
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

std::vector<PackSizes> parse_packs(std::string_view csv, std::string file) {
  const CsvTable table = read_csv(csv, std::move(file));
  const std::size_t kind = table.column("kind"), match = table.column("match"),
                    sizes = table.column("sizes"), origin = table.column("origin");
  std::vector<PackSizes> result;
  std::vector<InputFault> faults;
  for (const CsvRecord& record : table.records) {
    try {
      PackSizes row{record.fields[kind], record.fields[match], {}};
      check_word("kind", row.kind, pack_kinds);
      check_word("origin", record.fields[origin], words_of<Origin>());
      if (row.match.empty()) throw InvalidValue{"match", "is empty; expected a taxon, genus or *"};
      for (const PackSizes& before : result) {
        if (before.kind == row.kind && before.match == row.match) {
          throw InvalidValue{"match", fmt::format("{} was given before for {}",
                                                  in_quotes(row.match), in_quotes(row.kind))};
        }
      }
      try {
        row.sizes = parse_sizes(record.fields[sizes]);
      } catch (const InvalidValue& fault) {
        throw InvalidValue{"sizes", fault.expectation()};
      }
      result.push_back(std::move(row));
    } catch (const InvalidValue& fault) {
      faults.push_back({{table.file, record.line, 1}, fault.what()});
    }
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  return result;
}

std::vector<PackSizes> builtin_packs() {
  return parse_packs(embedded::packs_csv, "packs.csv");
}

std::span<const int> sizes_for(std::span<const PackSizes> table, std::string_view kind,
                               std::string_view taxon, std::string_view genus) {
  std::string low{genus};
  for (char& c : low) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const std::string_view match : {taxon, std::string_view{low}, "*"sv}) {
    for (const PackSizes& row : table) {
      if (row.kind == kind && row.match == match) return row.sizes;
    }
  }
  return {};
}

}  // namespace bulbwright
