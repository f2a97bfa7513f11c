#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// Cuts one record of a CSV text into fields as RFC 4180 says: commas, quotes doubled inside quoted
/// fields, LF or CRLF at the end. The one place that knows quotes.
class CsvFields {
 public:
  enum class Fault { none, text_after_quote, never_closed };

  /// Reads the record that starts at `at` of `text` and returns where the next one starts. A quoted
  /// field may hold line ends. After a fault the fields are those before it.
  std::size_t read(std::string_view text, std::size_t at);

  /// Views into the text, or, where a field was quoted, into a buffer that the next read() reuses.
  [[nodiscard]] const std::vector<std::string_view>& fields() const { return fields_; }
  [[nodiscard]] Fault fault() const { return fault_; }
  [[nodiscard]] std::size_t fault_at() const { return fault_at_; }

 private:
  std::size_t quoted(std::string_view text, std::size_t at);

  std::string plain_;  ///< quoted fields without their quotes
  std::vector<std::string_view> fields_;
  Fault fault_ = Fault::none;
  std::size_t fault_at_ = 0;
};

}  // namespace bulbwright
