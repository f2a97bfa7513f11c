#include "bulbwright/csv.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "bulbwright/near_miss.hpp"

namespace bulbwright {
namespace {

class Reader {
 public:
  Reader(std::string_view text, const std::string& file) : text_{text}, file_{file} {}

  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }

  CsvRecord record() {
    CsvRecord result{line_, {}};
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
      const std::size_t end = std::min(text_.find_first_of(",\r\n", at_), text_.size());
      std::string value{text_.substr(at_, end - at_)};
      at_ = end;
      return value;
    }
    const int opened = line_;
    std::string value;
    for (++at_; !at_end(); ++at_) {
      const char c = text_[at_];
      if (c == '\n') ++line_;
      if (c == '"') {
        if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
          ++at_;
        } else {
          ++at_;
          if (!at_end() && text_[at_] != ',' && text_[at_] != '\r' && text_[at_] != '\n') {
            throw InputError{{file_, line_, 1},
                             "text after a closing quote; quotes inside are doubled"};
          }
          return value;
        }
      }
      value += c;
    }
    throw InputError{{file_, opened, 1}, "a quoted field is never closed"};
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
};

}  // namespace

std::size_t CsvTable::column(std::string_view name) const {
  const auto found = std::find(header.begin(), header.end(), name);
  if (found != header.end()) return static_cast<std::size_t>(found - header.begin());
  const std::vector<std::string_view> names{header.begin(), header.end()};
  throw InputError{{file, 1, 1},
                   fmt::format("no column {}{}", quoted(name), did_you_mean(name, names))};
}

CsvTable read_csv(std::string_view text, std::string file) {
  if (text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
  CsvTable table{std::move(file), {}, {}};
  Reader reader{text, table.file};
  while (!reader.at_end()) {
    CsvRecord record = reader.record();
    if (record.fields.size() == 1 && record.fields[0].empty()) continue;
    if (table.header.empty()) {
      table.header = std::move(record.fields);
      continue;
    }
    if (record.fields.size() != table.header.size()) {
      throw InputError{{table.file, record.line, 1},
                       fmt::format("{} fields where the header has {}", record.fields.size(),
                                   table.header.size())};
    }
    table.records.push_back(std::move(record));
  }
  if (table.header.empty()) throw InputError{{table.file, 1, 1}, "empty; expected a header line"};
  return table;
}

std::string csv_field(std::string_view field) {
  if (field.find_first_of(",\"\r\n") == std::string_view::npos) return std::string{field};
  std::string out = "\"";
  for (const char c : field) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

}  // namespace bulbwright
