#include "base/csv_row.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "base/text.hpp"

namespace bulbwright {

const std::string& CsvRow::required(std::size_t column, std::string_view what) {
  if (text(column).empty()) fault(column, fmt::format("is empty; expected {}", what));
  return text(column);
}

std::optional<double> CsvRow::number(std::size_t column, double least, double most,
                                     std::string_view unit) {
  const std::string& written = text(column);
  const std::optional<double> value = plain_number(written);
  if (value && *value >= least && *value <= most) return value;
  fault(column,
        fmt::format("is {}; expected {}{:g} to {:g}{}{}",
                    value ? escaped(written) : in_quotes(written), value ? "" : "a number from ",
                    least, most, unit.empty() ? "" : " ", unit));
  return std::nullopt;
}

std::optional<std::size_t> CsvRow::word_index(std::size_t column,
                                              std::span<const std::string_view> words) {
  const std::string& written = text(column);
  const auto found = std::find(words.begin(), words.end(), written);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  fault(column, fmt::format("is {}; expected {}{}", in_quotes(written), listed(words, "or"),
                            did_you_mean(written, words)));
  return std::nullopt;
}

void CsvRow::fault(std::size_t column, std::string_view message) {
  fault_at(column, fmt::format("{}{}{} {}", label_, label_.empty() ? "" : ": ",
                               table_->header[column], message));
}

void CsvRow::fault_at(std::size_t column, std::string message) {
  faults_->push_back({table_->place_of(*record_, column), std::move(message)});
}

void throw_if_any(std::vector<InputFault> faults) {
  if (faults.empty()) return;
  std::stable_sort(faults.begin(), faults.end(), [](const InputFault& a, const InputFault& b) {
    return a.place.line < b.place.line;
  });
  throw InputError{std::move(faults)};
}

}  // namespace bulbwright
