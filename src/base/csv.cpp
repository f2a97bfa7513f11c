#include "base/csv.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/near_miss.hpp"
#include "base/utf8.hpp"

namespace bulbwright {
namespace {

class Reader {
 public:
  Reader(std::string_view text, const std::string& file) : text_{text}, file_{file} {}

  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }

  CsvRecord record(std::size_t fields) {
    CsvRecord result{line_, at_, {}};
    result.fields.reserve(fields);
    while (true) {
      result.fields.push_back(field());
      if (at_end()) return result;
      const char c = text_[at_++];
      if (c == ',') continue;
      if (c == '\r' && !at_end() && text_[at_] == '\n') ++at_;
      ++line_;
      return result;
    }
  }

 private:
  std::string field() {
    if (at_end() || text_[at_] != '"') {
      const std::size_t start = at_;
      while (!at_end() && text_[at_] != ',' && text_[at_] != '\n' && text_[at_] != '\r') ++at_;
      return std::string{text_.substr(start, at_ - start)};
    }
    const int opened = line_;
    std::string value;
    for (++at_; !at_end();) {
      const std::size_t quote = std::min(text_.find('"', at_), text_.size());
      const std::string_view piece = text_.substr(at_, quote - at_);
      value += piece;
      line_ += static_cast<int>(std::count(piece.begin(), piece.end(), '\n'));
      at_ = quote + 1;
      if (quote == text_.size()) break;
      if (!at_end() && text_[at_] == '"') {
        value += '"';
        ++at_;
        continue;
      }
      if (!at_end() && text_[at_] != ',' && text_[at_] != '\r' && text_[at_] != '\n') {
        throw InputError{{file_, line_, 1},
                         "text after a closing quote; quotes inside are doubled"};
      }
      return value;
    }
    throw InputError{{file_, opened, 1}, "a quoted field is never closed"};
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
};

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
  Reader reader{text, table.file};
  while (!reader.at_end()) {
    CsvRecord record = reader.record(table.header.empty() ? 8 : table.header.size());
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
