#include "caution/words.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include <fmt/format.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "materials/mesh.hpp"

namespace bulbwright {
namespace {

using namespace std::string_view_literals;

constexpr std::array pest_plurals{
    std::pair{"gopher"sv, "gophers"sv},     std::pair{"vole"sv, "voles"sv},
    std::pair{"mouse"sv, "mice"sv},         std::pair{"squirrel"sv, "squirrels"sv},
    std::pair{"chipmunk"sv, "chipmunks"sv}, std::pair{"deer"sv, "deer"sv},
};

constexpr std::array placeholders{"{kinds}"sv, "{Kinds}"sv,      "{weight}"sv, "{lift_one}"sv,
                                  "{eats}"sv,  "{eats_short}"sv, "{Pests}"sv};

constexpr std::array plurals{
    std::pair{"Allium"sv, "ornamental onions"sv},
    std::pair{"Anemone"sv, "windflowers"sv},
    std::pair{"Camassia"sv, "camas"sv},
    std::pair{"Chionodoxa"sv, "glory-of-the-snow"sv},
    std::pair{"Crocus"sv, "crocus"sv},
    std::pair{"Freesia"sv, "freesias"sv},
    std::pair{"Fritillaria"sv, "fritillaries"sv},
    std::pair{"Galanthus"sv, "snowdrops"sv},
    std::pair{"Hyacinthus"sv, "hyacinths"sv},
    std::pair{"Ipheion"sv, "spring starflowers"sv},
    std::pair{"Iris"sv, "irises"sv},
    std::pair{"Ixia"sv, "corn lilies"sv},
    std::pair{"Leucojum"sv, "snowflakes"sv},
    std::pair{"Muscari"sv, "grape hyacinths"sv},
    std::pair{"Narcissus"sv, "daffodils"sv},
    std::pair{"Puschkinia"sv, "striped squills"sv},
    std::pair{"Ranunculus"sv, "Persian buttercups"sv},
    std::pair{"Scilla"sv, "squills"sv},
    std::pair{"Sparaxis"sv, "harlequin flowers"sv},
    std::pair{"Tulipa"sv, "tulips"sv},
};

std::vector<std::string> genera_of(std::span<const Taxon* const> taxa) {
  std::vector<std::string> names;
  for (const Taxon* taxon : taxa) {
    std::string name = genus_plural(taxon->genus);
    if (std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(std::move(name));
  }
  return names;
}

std::string listed(const std::vector<std::string>& names, std::string_view last = " and ") {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? last : ", ";
    text += names[i];
  }
  return text;
}

std::vector<const Taxon*> those(std::span<const Taxon* const> taxa, std::string_view pest,
                                Eaten class_) {
  std::vector<const Taxon*> found;
  for (const Taxon* taxon : taxa) {
    if (eaten_by(*taxon, pest) == class_ &&
        std::find(found.begin(), found.end(), taxon) == found.end()) {
      found.push_back(taxon);
    }
  }
  return found;
}

}  // namespace

std::span<const std::string_view> caution_placeholders() {
  return placeholders;
}

Eaten eaten_by(const Taxon& taxon, std::string_view pest) {
  if (pest == "gopher") return taxon.gopher;
  if (pest == "vole" || pest == "mouse") return taxon.vole;
  if (pest == "squirrel" || pest == "chipmunk") return taxon.squirrel;
  if (pest == "deer") return taxon.deer;
  std::vector<std::string_view> pests;
  for (const PestMesh& known : known_pests()) pests.push_back(known.pest);
  throw InvalidValue{"", fmt::format("unknown pest {}{}; expected one of {}", in_quotes(pest),
                                     did_you_mean(pest, pests), fmt::join(pests, ", "))};
}

std::string genus_plural(std::string_view genus) {
  const auto found = std::find_if(plurals.begin(), plurals.end(),
                                  [&](const auto& entry) { return entry.first == genus; });
  return std::string{found == plurals.end() ? genus : found->second};
}

std::string kinds_of(std::span<const Taxon* const> taxa) {
  return listed(genera_of(taxa));
}

std::string kinds_within(std::span<const Taxon* const> taxa, std::span<const Taxon* const> of,
                         std::size_t width) {
  const std::vector<std::string> names = genera_of(taxa);
  std::string text = listed(names);
  if (text.size() <= width) return text;
  const std::size_t all = genera_of(of).size();
  if (names.size() == all) return "all kinds here";
  return names.size() * 2 > all ? "most kinds here" : "some kinds here";
}

std::string eats(std::span<const Taxon* const> taxa, std::string_view pest) {
  std::string text;
  const auto add = [&](Eaten class_, std::string_view verb) {
    std::vector<std::string> names;
    for (const Taxon* taxon : those(taxa, pest, class_)) names.push_back(taxon->name);
    if (names.empty()) return;
    if (!text.empty()) text += "; ";
    text += fmt::format("{} {}", verb, listed(names));
  };
  add(Eaten::eaten, "eat");
  add(Eaten::occasionally, "sometimes eat");
  add(Eaten::unknown, "may eat (no figure)");
  add(Eaten::rarely, "seldom eat, but may dig up,");
  return text;
}

std::string eats_short(std::span<const Taxon* const> taxa, std::string_view pest,
                       std::size_t width) {
  const bool deer = pest == "deer";
  const std::string_view advice = deer ? ": fence it off" : ": mesh the pot, no baits";
  for (const auto& [class_, verb] :
       {std::pair{Eaten::eaten, "eat"sv}, std::pair{Eaten::occasionally, "sometimes eat"sv},
        std::pair{Eaten::unknown, "may eat"sv}}) {
    const auto found = those(taxa, pest, class_);
    if (found.empty()) continue;
    const std::size_t taken = verb.size() + 1 + advice.size();
    return fmt::format("{} {}{}", verb, kinds_within(found, taxa, width - std::min(width, taken)),
                       advice);
  }
  return deer ? "seldom eat what is in this pot"
              : "seldom eat what is in this pot, but dig: mesh it";
}

std::string pests_of(std::span<const std::string_view> named) {
  std::vector<std::string> names;
  for (const std::string_view pest : named) {
    const auto found = std::find_if(pest_plurals.begin(), pest_plurals.end(),
                                    [&](const auto& entry) { return entry.first == pest; });
    names.emplace_back(found == pest_plurals.end() ? pest : found->second);
  }
  return listed(names);
}

std::string capitalised(std::string text) {
  if (!text.empty()) {
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  }
  return text;
}

}  // namespace bulbwright
