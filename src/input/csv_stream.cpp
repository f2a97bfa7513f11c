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

/// One line; several where a lone carriage return ends them.
void CsvStream::line(std::string_view text) {
  if (number_ == 0 && text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
  if (text.ends_with('\r')) text.remove_suffix(1);
  if (text.empty()) ++number_;
  for (std::size_t at = 0; at < text.size();) {
    ++number_;
    at = fields_.read(text, at);
    record();
  }
}

void CsvStream::record() {
  if (fields_.fault() != CsvFields::Fault::none) {
    throw InputError{{file_, number_, 1},
                     fields_.fault() == CsvFields::Fault::never_closed
                         ? "a quoted field is not closed on its line"
                         : "text after a closing quote; quotes inside are doubled"};
  }
  if (fields_.fields().size() == 1 && fields_.fields()[0].empty()) return;
  take_(number_, fields_.fields());
}

}  // namespace bulbwright::input
