#pragma once

#include <array>
#include <functional>
#include <span>

#include "evidence.hpp"

namespace bulbwright::fit {

/// Parameters by which a row is judged: of the whole fit, or of that with its place left out.
using ParametersOf =
    std::function<BloomParameters(const Observation& row, const std::string& taxon)>;

/// One row with its error and what its range claims.
struct Judged {
  const Observation* row = nullptr;
  double error = 0.0;         ///< miss()
  double half_winters = 0.0;  ///< half the days between the mild and the cold winter
};

std::vector<Judged> judge(const Evidence& evidence, const ParametersOf& parameters);

/// tulips, daffodils, small kinds, tender kinds
const char* group_name(const std::string& taxon);

/// What the ranges are made of: winter_share, spread_days by group (tulips, daffodils, small kinds,
/// tender kinds), and what storage adds.
struct SpreadLaw {
  double winter_share = 0.5;
  std::array<double, 4> spread{};
  double stored = 0.0;
};
/// The likeliest winter_share; the spreads that hold four in five of the dated rows.
SpreadLaw calibrated(std::span<const Judged> rows);
void print_coverage(std::span<const Judged> rows, const SpreadLaw& law);

/// Prints the table of figures: errors per group and kind, seen-open days, refrigerated cases,
/// these one by one if asked.
void print_figures(std::span<const Judged> rows, bool list_stored);

/// Prints every kind by first flower at eight places, planted on 1 November (1 May).
void print_order(const std::function<BloomParameters(const std::string&)>& parameters,
                 const Catalogue& catalogue);

/// Prints what a climate warmer or cooler by up to 3 K does to first flowers, in zones 5 to 10.
void print_warmth(const std::function<BloomParameters(const std::string&)>& parameters);

}  // namespace bulbwright::fit
