#include "base/csv_fields.hpp"

namespace bulbwright {

std::size_t CsvFields::read(std::string_view text, std::size_t at) {
  plain_.clear();
  fields_.clear();
  fault_ = Fault::none;
  for (;;) {
    if (at < text.size() && text[at] == '"') {
      if (plain_.capacity() < text.size() - at)
        plain_.reserve(text.size() - at);  // views stay good
      at = quoted(text, at);
      if (fault_ != Fault::none) return text.size();
    } else {
      std::size_t end = at;
      while (end < text.size() && text[end] != ',' && text[end] != '\n' && text[end] != '\r') ++end;
      fields_.push_back(text.substr(at, end - at));
      at = end;
    }
    if (at == text.size()) return at;
    const char c = text[at++];
    if (c == ',') continue;
    return c == '\r' && at < text.size() && text[at] == '\n' ? at + 1 : at;
  }
}

/// A field that opens with a quote at `at`; returns the place after its closing quote.
std::size_t CsvFields::quoted(std::string_view text, std::size_t at) {
  const std::size_t opened = at, start = plain_.size();
  for (++at;; ++at) {
    const std::size_t quote = text.find('"', at);
    if (quote == std::string_view::npos) {
      fault_ = Fault::never_closed;
      fault_at_ = opened;
      return text.size();
    }
    plain_ += text.substr(at, quote - at);
    at = quote + 1;
    if (at == text.size() || text[at] != '"') break;
    plain_ += '"';
  }
  if (at < text.size() && text[at] != ',' && text[at] != '\r' && text[at] != '\n') {
    fault_ = Fault::text_after_quote;
    fault_at_ = at;
    return text.size();
  }
  fields_.push_back(std::string_view{plain_}.substr(start));
  return at;
}

}  // namespace bulbwright
