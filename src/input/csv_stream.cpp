#include "input/csv_stream.hpp"

#include "base/error.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t longest_line = 65536;

}  // namespace

CsvStream::CsvStream(std::string file, Line line)
    : file_{std::move(file)}, take_{std::move(line)} {}

void CsvStream::add(std::string_view block) {
  for (;;) {
    const std::size_t end = block.find('\n');
    if (rest_.size() + (end == std::string_view::npos ? block.size() : end) > longest_line) {
      throw InputError{{file_, number_ + 1, 1}, "the line is longer than 65536 bytes"};
    }
    if (end == std::string_view::npos) {
      rest_.append(block);
      return;
    }
    if (rest_.empty()) {
      line(block.substr(0, end));
    } else {
      rest_.append(block.substr(0, end));
      line(rest_);
      rest_.clear();
    }
    block.remove_prefix(end + 1);
  }
}

void CsvStream::finish() {
  if (!rest_.empty()) line(rest_);
  rest_.clear();
}

void CsvStream::line(std::string_view text) {
  ++number_;
  if (number_ == 1 && text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
  if (text.ends_with('\r')) text.remove_suffix(1);
  if (text.empty()) return;
  fields_.clear();
  if (text.find('"') != std::string_view::npos) {
    quoted_fields(text);
  } else {
    for (;;) {
      const std::size_t comma = text.find(',');
      fields_.push_back(text.substr(0, comma));
      if (comma == std::string_view::npos) break;
      text.remove_prefix(comma + 1);
    }
  }
  take_(number_, fields_);
}

void CsvStream::quoted_fields(std::string_view text) {
  plain_.clear();
  plain_.reserve(text.size());  // views into it stay good
  std::size_t at = 0;
  for (;;) {
    const std::size_t start = plain_.size();
    if (at < text.size() && text[at] == '"') {
      for (++at;; ++at) {
        if (at == text.size()) {
          throw InputError{{file_, number_, 1}, "a quoted field is not closed on its line"};
        }
        if (text[at] == '"' && (at + 1 == text.size() || text[at + 1] != '"')) break;
        if (text[at] == '"') ++at;
        plain_ += text[at];
      }
      ++at;
      if (at < text.size() && text[at] != ',') {
        throw InputError{{file_, number_, 1},
                         "text after a closing quote; quotes inside are doubled"};
      }
    } else {
      const std::size_t comma = text.find(',', at);
      const std::size_t end = comma == std::string_view::npos ? text.size() : comma;
      plain_.append(text.substr(at, end - at));
      at = end;
    }
    fields_.push_back(std::string_view{plain_}.substr(start));
    if (at == text.size()) return;
    ++at;  // the comma
  }
}

}  // namespace bulbwright::input
