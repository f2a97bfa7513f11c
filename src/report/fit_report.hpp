#pragma once

#include <string>

#include "packing/packing.hpp"
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
};

std::string fit_json(const FitReport& report);
/// Header x_mm,y_mm; one bulb a line, CRLF (RFC 4180).
std::string fit_csv(const FitReport& report);
std::string fit_text(const FitReport& report, const TextStyle& style);

}  // namespace bulbwright::report
