#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace bulbwright {

/// The words of an enumeration as files, flags and JSON write them. They stand beside the enum, one
/// for each enumerator, in the order of the enumerators:
///
///   enum class Light { sun, sun_to_part_shade, part_shade };
///   constexpr auto enum_words(Light) {
///     return words_to<Light::part_shade>("sun", "sun to part shade", "part shade");
///   }
///
/// `last` is the last enumerator; another number of words does not compile.
template <auto last, class... Word>
constexpr std::array<std::string_view, sizeof...(Word)> words_to(Word... word) {
  static_assert(sizeof...(Word) == static_cast<std::size_t>(last) + 1,
                "a word for each enumerator");
  return {word...};
}

namespace detail {
template <class Enum>
inline constexpr auto words = enum_words(Enum{});
}  // namespace detail

/// All words of an enumeration, in the order of the enumerators.
template <class Enum>
constexpr std::span<const std::string_view> words_of() {
  return detail::words<Enum>;
}

/// The word of one enumerator.
template <class Enum>
constexpr std::string_view word_of(Enum value) {
  return detail::words<Enum>[static_cast<std::size_t>(value)];
}

/// The enumerator of a word, written exactly so, or nothing.
template <class Enum>
constexpr std::optional<Enum> from_word(std::string_view text) {
  for (std::size_t i = 0; i < words_of<Enum>().size(); ++i) {
    if (words_of<Enum>()[i] == text) return static_cast<Enum>(i);
  }
  return std::nullopt;
}

}  // namespace bulbwright
