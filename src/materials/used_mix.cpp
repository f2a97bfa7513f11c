#include "materials/used_mix.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace bulbwright {
namespace {

struct CommonName {
  std::string_view name;
  std::string_view genus;
};

// English names in the singular, beside the genera of the catalogue.
constexpr std::array<CommonName, 23> common_names{{{"tulip", "tulipa"},
                                                   {"daffodil", "narcissus"},
                                                   {"jonquil", "narcissus"},
                                                   {"paperwhite", "narcissus"},
                                                   {"hyacinth", "hyacinthus"},
                                                   {"grape hyacinth", "muscari"},
                                                   {"snowdrop", "galanthus"},
                                                   {"snowflake", "leucojum"},
                                                   {"squill", "scilla"},
                                                   {"glory of the snow", "chionodoxa"},
                                                   {"striped squill", "puschkinia"},
                                                   {"windflower", "anemone"},
                                                   {"buttercup", "ranunculus"},
                                                   {"fritillary", "fritillaria"},
                                                   {"crown imperial", "fritillaria"},
                                                   {"quamash", "camassia"},
                                                   {"camas", "camassia"},
                                                   {"starflower", "ipheion"},
                                                   {"star flower", "ipheion"},
                                                   {"onion", "allium"},
                                                   {"garlic", "allium"},
                                                   {"harlequin flower", "sparaxis"},
                                                   {"corn lily", "ixia"}}};

std::string normalised(std::string_view word) {
  std::string lower;
  for (const char c : word) {
    const auto byte = static_cast<unsigned char>(c);
    lower += c == '-' ? ' ' : static_cast<char>(std::tolower(byte));
  }
  while (!lower.empty() && lower.back() == ' ') lower.pop_back();
  lower.erase(0, std::min(lower.find_first_not_of(' '), lower.size()));
  return lower;
}

std::string_view genus_named(std::string_view name) {
  for (const CommonName& known : common_names) {
    if (known.name == name) return known.genus;
  }
  return {};
}

}  // namespace

std::string genus_of_crop(std::string_view crop) {
  const std::string word = normalised(crop);
  for (const std::string_view ending : {"", "s", "es"}) {
    if (!word.ends_with(ending)) continue;
    const auto genus = genus_named(std::string_view{word}.substr(0, word.size() - ending.size()));
    if (!genus.empty()) return std::string{genus};
  }
  if (word.ends_with("ies")) {  // "fritillaries"
    const auto genus = genus_named(word.substr(0, word.size() - 3) + "y");
    if (!genus.empty()) return std::string{genus};
  }
  return word;
}

std::vector<std::string> genera_refused(const std::optional<std::string>& last_crop, bool used_mix,
                                        std::span<const std::string> genera) {
  std::vector<std::string> refused;
  if (!last_crop || !used_mix) return refused;
  const std::string last = genus_of_crop(*last_crop);
  for (const std::string& given : genera) {
    std::string genus = normalised(given);
    if (genus == last && refused.empty()) refused.push_back(std::move(genus));
  }
  return refused;
}

}  // namespace bulbwright
