#include "base/text.hpp"

#include <charconv>
#include <cmath>
#include <cstddef>

namespace bulbwright {
namespace {

template <class Word>
std::string in_a_row(std::span<const Word> words, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0 && i + 1 == words.size()) {
      text.append(" ").append(last).append(" ");
    } else if (i > 0) {
      text += ", ";
    }
    text += words[i];
  }
  return text;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

std::vector<std::string_view> split(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t at = text.find(mark);
    parts.push_back(trimmed(text.substr(0, at)));
    if (at == std::string_view::npos) return parts;
    text.remove_prefix(at + 1);
  }
}

std::string lower_case(std::string_view text) {
  std::string lower{text};
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

std::string capitalised(std::string_view text) {
  std::string upper{text};
  if (!upper.empty() && upper[0] >= 'a' && upper[0] <= 'z') {
    upper[0] = static_cast<char>(upper[0] - 'a' + 'A');
  }
  return upper;
}

std::string listed(std::span<const std::string> words, std::string_view last) {
  return in_a_row(words, last);
}
std::string listed(std::span<const std::string_view> words, std::string_view last) {
  return in_a_row(words, last);
}

std::optional<double> plain_number(std::string_view text) {
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto [stop, fault] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (text.empty() || fault != std::errc{} || stop != end || !std::isfinite(value)) return {};
  return value;
}

}  // namespace bulbwright
