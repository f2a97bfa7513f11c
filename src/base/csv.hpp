#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"

namespace bulbwright {

/// One record of a CSV text and the line it starts on (from 1).
struct CsvRecord {
  int line = 0;
  std::size_t offset = 0;  ///< where it starts in CsvTable::text
  std::vector<std::string> fields;
};

/// A CSV text with its header record apart.
struct CsvTable {
  std::string file;       ///< for messages
  std::string_view text;  ///< as read, without its byte order mark; the caller's, for messages
  std::vector<std::string> header;
  std::vector<CsvRecord> records;

  /// Column index of `name`. @throws InputError naming the file, the column and a near miss.
  [[nodiscard]] std::size_t column(std::string_view name) const;
  /// The same, nothing where there is no such column.
  [[nodiscard]] std::optional<std::size_t> find_column(std::string_view name) const;

  /// Where a field starts, in lines and code points. Slow, for messages.
  [[nodiscard]] SourcePlace place_of(const CsvRecord& record, std::size_t column) const;
};

/// Reads RFC 4180: comma, quotes doubled inside quoted fields, LF or CRLF, a header first; a UTF-8
/// byte order mark and empty lines are skipped. Every record must have as many fields as the
/// header, and no field may hold a control character (is_control() of utf8.hpp, line ends apart) or
/// bytes that are no UTF-8. `text` must outlive the table.
/// @throws InputError with file, line and column.
CsvTable read_csv(std::string_view text, std::string file);

/// `field` as RFC 4180 writes it: quoted only if it holds a comma, a quote or a line end, or a
/// semicolon or tab, at which spreadsheets of some countries split.
std::string csv_field(std::string_view field);

}  // namespace bulbwright
