#include "climate/place_names.hpp"

namespace bulbwright {
namespace {

/// The base letter of a two-byte UTF-8 letter with an accent (U+00C0 to U+00FF), or 0.
char base_letter(unsigned char second) {
  using namespace std::string_view_literals;
  constexpr std::string_view bases =
      "aaaaaaaceeeeiiiidnooooo\0ouuuuy\0saaaaaaaceeeeiiiidnooooo\0ouuuuy\0y"sv;
  static_assert(bases.size() == 64);
  return second >= 0x80 && second <= 0xBF ? bases[static_cast<std::size_t>(second - 0x80)] : '\0';
}

bool parts_words(char c) {
  return c == ' ' || c == ',' || c == '-' || c == '/' || c == '(' || c == ')' || c == '.';
}

}  // namespace

std::string folded_name(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\xC3' && i + 1 < text.size()) {
      if (const char base = base_letter(static_cast<unsigned char>(text[i + 1])); base != '\0') {
        out += base;
        ++i;
        continue;
      }
    }
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

std::string_view town_of(std::string_view name) {
  return name.substr(0, name.find(','));
}

std::vector<std::string> words_of_name(std::string_view folded) {
  std::vector<std::string> words;
  bool inside = false;
  for (const char c : folded) {
    if (parts_words(c)) {
      inside = false;
      continue;
    }
    if (!inside) words.emplace_back();
    inside = true;
    words.back() += c;
  }
  return words;
}

bool begins_a_word(std::string_view folded, std::string_view word) {
  for (std::size_t at = folded.find(word); at != folded.npos; at = folded.find(word, at + 1)) {
    if (at == 0 || parts_words(folded[at - 1])) return true;
  }
  return false;
}

}  // namespace bulbwright
