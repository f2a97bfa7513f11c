#include "report/text_layout.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "base/utf8.hpp"

namespace bulbwright::report {
namespace {

using Range = std::pair<char32_t, char32_t>;

template <std::size_t Size>
bool in_any(const std::array<Range, Size>& ranges, char32_t value) {
  return std::any_of(ranges.begin(), ranges.end(), [value](const Range& range) {
    return value >= range.first && value <= range.second;
  });
}

/// The blocks that names are likely to hold. Source: Unicode Standard Annex 11, East Asian Width
/// (wide and fullwidth blocks); combining blocks of the Unicode code charts.
constexpr std::array<Range, 7> no_width{{{0x0300, 0x036F},
                                         {0x1AB0, 0x1AFF},
                                         {0x1DC0, 0x1DFF},
                                         {0x200B, 0x200F},
                                         {0x20D0, 0x20FF},
                                         {0xFE00, 0xFE0F},
                                         {0xFE20, 0xFE2F}}};
constexpr std::array<Range, 9> double_width{{{0x1100, 0x115F},
                                             {0x2E80, 0x303E},
                                             {0x3041, 0xA4CF},
                                             {0xAC00, 0xD7A3},
                                             {0xF900, 0xFAFF},
                                             {0xFE30, 0xFE6F},
                                             {0xFF00, 0xFF60},
                                             {0xFFE0, 0xFFE6},
                                             {0x1F300, 0x1FAFF}}};
int columns_of(char32_t value) {
  if (in_any(no_width, value)) return 0;
  return in_any(double_width, value) || (value >= 0x20000 && value <= 0x3FFFD) ? 2 : 1;
}

struct Replacement {
  char32_t from;
  const char* to;
};
constexpr std::array<Replacement, 24> ascii_forms{
    {{U'\u00A0', " "}, {U'°', ""},    {U'×', "x"},   {U'≥', ">="},   {U'≤', "<="},
     {U'–', "-"},      {U'—', "-"},   {U'−', "-"},   {U'‘', "'"},    {U'’', "'"},
     {U'“', "\""},     {U'”', "\""},  {U'…', "..."}, {U'½', " 1/2"}, {U'¼', " 1/4"},
     {U'¾', " 3/4"},   {U'±', "+/-"}, {U'·', "."},   {U'•', "*"},    {U'→', "->"},
     {U'é', "e"},      {U'è', "e"},   {U'ü', "ue"},  {U'ö', "oe"}}};

/// Calls `each(code point, its bytes)` over printable text.
template <class Each>
void for_each_code_point(std::string_view text, Each each) {
  while (!text.empty()) {
    const CodePoint point = code_point_at(text, 0);
    each(point.valid ? point.value : U'?', text.substr(0, point.bytes));
    text.remove_prefix(point.bytes);
  }
}

/// The longest head of `text` that fills at most `width` columns, at least one code point.
std::string_view head_of(std::string_view text, int width) {
  std::size_t bytes = 0;
  int used = 0;
  bool full = false;
  for_each_code_point(text, [&](char32_t value, std::string_view raw) {
    used += columns_of(value);
    full = full || (used > width && bytes > 0);
    if (!full) bytes += raw.size();
  });
  return text.substr(0, bytes);
}

std::string coloured(std::string_view text, const char* code, const TextStyle& style) {
  if (!style.colour || text.empty()) return std::string{text};
  return code + std::string{text} + "\x1b[0m";
}

}  // namespace

int text_width(const TextStyle& style) {
  return std::clamp(style.width, 40, 99);
}

int columns(std::string_view text) {
  int sum = 0;
  for_each_code_point(text, [&](char32_t value, std::string_view) { sum += columns_of(value); });
  return sum;
}

std::string printable(std::string_view text) {
  std::string out;
  bool after_bad = false;
  while (!text.empty()) {
    const CodePoint point = code_point_at(text, 0);
    const bool bad = !point.valid || is_control(point.value);
    if (!bad) out += text.substr(0, point.bytes);
    if (bad && !after_bad) out += '?';
    after_bad = bad;
    text.remove_prefix(point.bytes);
  }
  return out;
}

std::string in_style(std::string_view text, const TextStyle& style) {
  const std::string clean = printable(text);
  if (style.utf8) return clean;
  std::string out;
  for_each_code_point(clean, [&](char32_t value, std::string_view raw) {
    if (value < 0x80) {
      out += raw;
      return;
    }
    const auto form = std::find_if(ascii_forms.begin(), ascii_forms.end(),
                                   [value](const Replacement& r) { return r.from == value; });
    out += form == ascii_forms.end() ? "?" : form->to;
  });
  return out;
}

std::string pad_right(std::string_view text, int width) {
  const int missing = std::max(0, width - columns(text));
  return std::string{text} + std::string(static_cast<std::size_t>(missing), ' ');
}

std::string pad_left(std::string_view text, int width) {
  const int missing = std::max(0, width - columns(text));
  return std::string(static_cast<std::size_t>(missing), ' ') + std::string{text};
}

std::string cut_to(std::string_view text, int width, const TextStyle& style) {
  if (columns(text) <= width) return std::string{text};
  const std::string mark = style.utf8 ? "…" : "..";
  return std::string{head_of(text, width - columns(mark))} + mark;
}

Lines wrap(std::string_view text, int width) {
  Lines lines;
  std::string line;
  const auto end_line = [&] {
    if (!line.empty()) lines.push_back(std::move(line));
    line.clear();
  };
  while (true) {
    text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
    if (text.empty()) break;
    std::string_view word = text.substr(0, text.find(' '));
    text.remove_prefix(word.size());
    const int space = line.empty() ? 0 : 1;
    if (columns(line) + space + columns(word) > width) end_line();
    for (; columns(word) > width; end_line()) {
      line = std::string{head_of(word, width)};
      word.remove_prefix(line.size());
    }
    if (!line.empty()) line += ' ';
    line += word;
  }
  end_line();
  return lines;
}

Lines hanging(std::string_view label, std::string_view text, int indent, int width) {
  Lines lines;
  const std::string margin(static_cast<std::size_t>(indent), ' ');
  std::string first{label};
  if (columns(label) >= indent) {
    lines.push_back(first);
    first.clear();
  }
  for (const std::string& line : wrap(text, width - indent)) {
    lines.push_back((first.empty() ? margin : pad_right(first, indent)) + line);
    first.clear();
  }
  if (!first.empty()) lines.push_back(first);
  return lines;
}

void append(Lines& lines, const Lines& more) {
  lines.insert(lines.end(), more.begin(), more.end());
}

std::string bold(std::string_view text, const TextStyle& style) {
  return coloured(text, "\x1b[1m", style);
}

std::string red(std::string_view text, const TextStyle& style) {
  return coloured(text, "\x1b[31m", style);
}

std::string plain_spaces(std::string_view held) {
  std::string text{held};
  constexpr std::string_view no_break = "\u00A0";
  for (std::size_t at = text.find(no_break); at != std::string::npos; at = text.find(no_break)) {
    text.replace(at, no_break.size(), " ");
  }
  return text;
}

std::string joined(const Lines& lines) {
  std::string out;
  for (const std::string& held : lines) {
    const std::string line = plain_spaces(held);
    const std::size_t last = line.find_last_not_of(' ');
    if (last != std::string::npos) out += line.substr(0, last + 1);
    out += '\n';
  }
  return out;
}

}  // namespace bulbwright::report
