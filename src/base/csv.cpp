#include "base/csv.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/csv_fields.hpp"
#include "base/near_miss.hpp"
#include "base/utf8.hpp"

namespace bulbwright {
namespace {

int lines_in(std::string_view text) {
  return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

/// A record and what follows it.
CsvRecord next_record(CsvFields& fields, const CsvTable& table, std::size_t& at, int& line) {
  const std::size_t start = at;
  at = fields.read(table.text, start);
  if (fields.fault() != CsvFields::Fault::none) {
    const int faulty = line + lines_in(table.text.substr(start, fields.fault_at() - start));
    throw InputError{{table.file, faulty, 1},
                     fields.fault() == CsvFields::Fault::never_closed
                         ? "a quoted field is never closed"
                         : "text after a closing quote; quotes inside are doubled"};
  }
  CsvRecord record{line, start, {fields.fields().begin(), fields.fields().end()}};
  line += lines_in(table.text.substr(start, at - start));
  if (table.text[at - 1] == '\r') ++line;
  return record;
}

bool is_plain(std::string_view field) {
  for (std::size_t i = 0; i < field.size();) {
    const auto byte = static_cast<unsigned char>(field[i]);
    if (byte >= 0x20 && byte < 0x7f) {
      ++i;
      continue;
    }
    const CodePoint point = code_point_at(field, i);
    const bool line_end = byte == '\n' || byte == '\r';
    if (!point.valid || (is_control(point.value) && !line_end)) return false;
    i += point.bytes;
  }
  return true;
}

void require_plain(const CsvTable& table, const CsvRecord& record) {
  for (std::size_t i = 0; i < record.fields.size(); ++i) {
    const std::string& field = record.fields[i];
    if (is_plain(field)) continue;
    throw InputError{table.place_of(record, i),
                     fmt::format("{} holds a control character or is no UTF-8; expected plain text",
                                 in_quotes(field))};
  }
}

}  // namespace

std::optional<std::size_t> CsvTable::find_column(std::string_view name) const {
  const auto found = std::find(header.begin(), header.end(), name);
  if (found == header.end()) return std::nullopt;
  return static_cast<std::size_t>(found - header.begin());
}

std::size_t CsvTable::column(std::string_view name) const {
  if (const auto found = find_column(name)) return *found;
  const std::vector<std::string_view> names{header.begin(), header.end()};
  throw InputError{{file, 1, 1},
                   fmt::format("no column {}{}", in_quotes(name), did_you_mean(name, names))};
}

SourcePlace CsvTable::place_of(const CsvRecord& record, std::size_t column) const {
  SourcePlace place{file, record.line, 1};
  bool inside = false;
  for (std::size_t at = record.offset; column > 0 && at < text.size(); ++at) {
    const char c = text[at];
    if (c == '"') inside = !inside;
    if (c == ',' && !inside) --column;
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
      ++place.column;
    }
  }
  return place;
}

CsvTable read_csv(std::string_view text, std::string file) {
  if (text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
  CsvTable table{std::move(file), text, {}, {}};
  CsvFields fields;
  int line = 1;
  for (std::size_t at = 0; at < text.size();) {
    CsvRecord record = next_record(fields, table, at, line);
    if (record.fields.size() == 1 && record.fields[0].empty()) continue;
    if (table.header.empty()) {
      require_plain(table, record);
      table.header = std::move(record.fields);
      continue;
    }
    if (record.fields.size() != table.header.size()) {
      throw InputError{{table.file, record.line, 1},
                       fmt::format("{} fields where the header has {}", record.fields.size(),
                                   table.header.size())};
    }
    table.records.push_back(std::move(record));
    require_plain(table, table.records.back());
  }
  if (table.header.empty()) throw InputError{{table.file, 1, 1}, "empty; expected a header line"};
  return table;
}

std::string csv_field(std::string_view field) {
  if (field.find_first_of(",;\t\"\r\n") == std::string_view::npos) return std::string{field};
  std::string out = "\"";
  for (const char c : field) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

}  // namespace bulbwright
