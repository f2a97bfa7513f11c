#include "report/spreadsheet.hpp"

#include "base/csv.hpp"

namespace bulbwright::report {

std::string text_cell(std::string_view text) {
  constexpr std::string_view formula_starts = "=+-@\t\r\n";
  const bool formula = !text.empty() && formula_starts.find(text[0]) != std::string_view::npos;
  return csv_field(formula ? "'" + std::string{text} : std::string{text});
}

}  // namespace bulbwright::report
