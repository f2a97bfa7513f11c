#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/csv_fields.hpp"

namespace bulbwright::input {

/// Cuts a CSV text that comes in blocks into lines and fields, in constant memory. A quoted field
/// may hold commas and doubled quotes, but no line end. LF, CRLF, empty lines and a UTF-8 byte
/// order mark are dealt with.
class CsvStream {
 public:
  /// Takes a line's number (from 1) and its fields; views into a buffer that the next line reuses.
  using Line = std::function<void(int, const std::vector<std::string_view>&)>;

  CsvStream(std::string file, Line line);

  /// @throws InputError for a line beyond 64 KiB, an open quote or text after a closing one.
  void add(std::string_view block);
  void finish();

 private:
  void line(std::string_view text);
  void record();

  std::string file_;
  Line take_;
  std::string rest_;  // an unfinished line
  CsvFields fields_;
  int number_ = 0;
};

}  // namespace bulbwright::input
