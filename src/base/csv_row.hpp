#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/csv.hpp"
#include "base/enum_words.hpp"

namespace bulbwright {

/// One row of a data table while it is read. Every fault is gathered with file, line and column and
/// reads `label: name-of-column message`, for instance
/// `mine.csv:2:17: error: muscari: height: low is 50, above the value 40`.
class CsvRow {
 public:
  /// All must outlive the row.
  CsvRow(const CsvTable& table, CsvRecord& record, std::vector<InputFault>& faults)
      : table_{&table}, record_{&record}, faults_{&faults}, faults_before_{faults.size()} {}

  /// What begins each message; none at first.
  void label(std::string text) { label_ = std::move(text); }

  [[nodiscard]] int line() const { return record_->line; }
  [[nodiscard]] const std::string& text(std::size_t column) const {
    return record_->fields[column];
  }
  /// The text, moved out of the record.
  [[nodiscard]] std::string take(std::size_t column) { return std::move(record_->fields[column]); }

  /// The text; a fault where it is empty: "is empty; expected WHAT".
  const std::string& required(std::size_t column, std::string_view what);

  /// A plain decimal number in [least, most]; a fault and nothing where it is none.
  std::optional<double> number(std::size_t column, double least, double most,
                               std::string_view unit = {});

  /// One of the words; a fault with the near miss and nothing where it is none.
  template <class Enum>
  std::optional<Enum> word(std::size_t column,
                           std::span<const std::string_view> words = words_of<Enum>()) {
    const std::optional<std::size_t> index = word_index(column, words);
    return index ? std::optional{static_cast<Enum>(*index)} : std::nullopt;
  }

  /// A fault of one field, named in the message: the message goes on after the name.
  void fault(std::size_t column, std::string_view message);
  /// A fault at one field, in words of its own.
  void fault_at(std::size_t column, std::string message);

  /// No fault yet.
  [[nodiscard]] bool is_sound() const { return faults_->size() == faults_before_; }

 private:
  std::optional<std::size_t> word_index(std::size_t column,
                                        std::span<const std::string_view> words);

  const CsvTable* table_;
  CsvRecord* record_;
  std::vector<InputFault>* faults_;
  std::size_t faults_before_;
  std::string label_;
};

/// Throws an InputError with the faults in the order of their lines; returns where there is none.
void throw_if_any(std::vector<InputFault> faults);

}  // namespace bulbwright
