#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"

namespace bulbwright {

/// One record of a CSV text and the line it starts on (from 1).
struct CsvRecord {
  int line = 0;
  std::vector<std::string> fields;
};

/// A CSV text with its header record apart.
struct CsvTable {
  std::string file;  ///< for messages
  std::vector<std::string> header;
  std::vector<CsvRecord> records;

  /// Column index of `name`. @throws InputError naming the file, the column and a near miss.
  [[nodiscard]] std::size_t column(std::string_view name) const;
};

/// Reads RFC 4180: comma, quotes doubled inside quoted fields, LF or CRLF, a header first; a UTF-8
/// byte order mark and empty lines are skipped. Every record must have as many fields as the
/// header.
/// @throws InputError with file and line.
CsvTable read_csv(std::string_view text, std::string file);

/// `field` as RFC 4180 writes it: quoted only if it holds a comma, a quote or a line end.
std::string csv_field(std::string_view field);

}  // namespace bulbwright
