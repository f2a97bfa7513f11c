#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "packing/packing.hpp"
#include "packing/pattern.hpp"
#include "pot/section.hpp"
#include "report/asked_flags.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// What `fit` was asked and found.
struct FitReport {
  AskedFlags request;
  Section section;
  Millimetres bulb;
  Millimetres wall;
  bool own_count = false;  ///< the question was: how far apart can N stand
  int asked = 0;           ///< N, with own_count
  Packing packing;
  Pattern pattern = Pattern::dense;
  std::vector<int> sets;        ///< bulbs of each ring from the rim, or of each row
  bool upright = false;         ///< rows run across the length
  std::size_t dense_count = 0;  ///< what the densest layout found holds; 0 with own_count
  std::size_t in_rings = 0, in_rows = 0;
};

std::string fit_json(const FitReport& report);
/// Header x_mm,y_mm; one bulb a line, CRLF (RFC 4180).
std::string fit_csv(const FitReport& report);
std::string fit_text(const FitReport& report, const TextStyle& style);

}  // namespace bulbwright::report
