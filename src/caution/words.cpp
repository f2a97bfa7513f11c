#include "caution/words.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

#include "base/text.hpp"

namespace bulbwright {
namespace {

using namespace std::string_view_literals;

constexpr std::array placeholders{"{kinds}"sv, "{Kinds}"sv,      "{weight}"sv, "{lift_one}"sv,
                                  "{eats}"sv,  "{eats_short}"sv, "{Pests}"sv};

std::vector<std::string> genera_of(std::span<const Taxon* const> taxa) {
  std::vector<std::string> names;
  for (const Taxon* taxon : taxa) {
    const std::string& name = taxon->genus_facts.plural;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return names;
}

std::vector<const Taxon*> those(std::span<const Taxon* const> taxa, Pest pest, Eaten class_) {
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

std::string eats(std::span<const Taxon* const> taxa, Pest pest) {
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

std::string eats_short(std::span<const Taxon* const> taxa, Pest pest, std::size_t width) {
  const bool deer = pest == Pest::deer;
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

std::string pests_of(std::span<const Pest> pests) {
  std::vector<std::string_view> names;
  for (const Pest pest : pests) names.push_back(plural_of(pest));
  return listed(names);
}

}  // namespace bulbwright
