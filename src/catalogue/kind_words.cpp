#include "catalogue/kind_words.hpp"

#include <algorithm>

#include <fmt/core.h>
#include <fmt/format.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"

namespace bulbwright {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t least_beginning = 3;

/// One of several: "tulips", "irises", "fritillaries", "narcissi". What ends like a Latin singular
/// stays ("iris", "crocus"). A name that only looks like a plural becomes the same word wherever it
/// stands, so that it is still found.
std::string singular(std::string word) {
  const auto replace_end = [&](std::string_view ending, std::string_view by) {
    if (word.size() <= ending.size() + 1 || !word.ends_with(ending)) return false;
    word.replace(word.size() - ending.size(), ending.size(), by);
    return true;
  };
  if (replace_end("ies", "y") || replace_end("uses", "us") || replace_end("ises", "is") ||
      replace_end("cissi", "cissus") || replace_end("croci", "crocus")) {
    return word;
  }
  if (word.ends_with("us") || word.ends_with("is") || word.ends_with("ss")) return word;
  replace_end("s", "");
  return word;
}

/// Lower case, without apostrophes, singular; hyphens, brackets and the like part words.
Words words_of_name(std::string_view name) {
  constexpr std::string_view curly_apostrophe = "\xe2\x80\x99";
  Words words;
  std::string word;
  const auto end_word = [&] {
    if (!word.empty()) words.push_back(singular(std::move(word)));
    word.clear();
  };
  const std::string text = lower_case(name);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & '\x80') != 0;
    if (std::string_view{text}.substr(i).starts_with(curly_apostrophe)) {
      i += curly_apostrophe.size() - 1;
    } else if (kept) {
      word += c;
    } else if (c != '\'') {
      end_word();
    }
  }
  end_word();
  return words;
}

/// A kind's own names, the ways in which its label is read among them.
std::vector<Words> own_names(const Taxon& taxon) {
  std::vector<Words> names{words_of_name(taxon.id), words_of_name(taxon.name),
                           words_of_name(plain_name(taxon.name))};
  const std::size_t open = taxon.name.find('('), close = taxon.name.find(')');
  if (open != std::string::npos && close != std::string::npos && open < close) {
    names.push_back(words_of_name(std::string_view{taxon.name}.substr(open + 1, close - open - 1)));
  }
  if (!taxon.other_names.empty()) {
    for (const std::string_view name : split(taxon.other_names, '|')) {
      names.push_back(words_of_name(name));
    }
  }
  return names;
}

std::vector<Words> genus_names(const Taxon& taxon) {
  std::vector<Words> names{words_of_name(taxon.genus), words_of_name(taxon.genus_facts.plural)};
  for (const std::string& name : taxon.genus_facts.names) names.push_back(words_of_name(name));
  return names;
}

bool is_one_of(const Words& asked, const std::vector<Words>& names) {
  return std::find(names.begin(), names.end(), asked) != names.end();
}

/// Whether every word asked for stands in one of the names, or begins one of their words.
bool are_all_in(const Words& asked, const std::vector<Words>& names, bool beginnings) {
  return std::all_of(asked.begin(), asked.end(), [&](const std::string& word) {
    if (beginnings && word.size() < least_beginning) return false;
    return std::any_of(names.begin(), names.end(), [&](const Words& name) {
      return std::any_of(name.begin(), name.end(), [&](const std::string& known) {
        return beginnings ? known.starts_with(word) : known == word;
      });
    });
  });
}

std::vector<Words> all_names(const Taxon& taxon) {
  std::vector<Words> names = own_names(taxon);
  for (Words& name : genus_names(taxon)) names.push_back(std::move(name));
  return names;
}

template <class Fits>
std::vector<const Taxon*> those(const Catalogue& catalogue, const Fits& fits) {
  std::vector<const Taxon*> kinds;
  for (const Taxon& taxon : catalogue.taxa()) {
    if (fits(taxon)) kinds.push_back(&taxon);
  }
  return kinds;
}

/// Ids first, then names in lower case: for near misses.
std::string near_name(const Catalogue& catalogue, std::string_view text) {
  std::vector<std::string> names;
  for (const std::string_view id : catalogue.ids()) names.emplace_back(id);
  for (const Taxon& taxon : catalogue.taxa()) {
    names.push_back(lower_case(plain_name(taxon.name)));
    names.push_back(lower_case(taxon.genus));
    for (const std::string& name : taxon.genus_facts.names) names.push_back(name);
  }
  std::vector<std::string_view> known;
  for (const std::string& name : names) {
    if (std::find(known.begin(), known.end(), name) == known.end()) known.push_back(name);
  }
  return did_you_mean(lower_case(text), known);
}

}  // namespace

std::vector<const Taxon*> kinds_called(const Catalogue& catalogue, std::string_view words) {
  if (const Taxon* taxon = catalogue.find(trimmed(words))) return {taxon};
  const Words asked = words_of_name(words);
  if (asked.empty()) return {};
  std::vector<const Taxon*> kinds =
      those(catalogue, [&](const Taxon& taxon) { return is_one_of(asked, own_names(taxon)); });
  if (!kinds.empty()) return kinds;
  kinds =
      those(catalogue, [&](const Taxon& taxon) { return is_one_of(asked, genus_names(taxon)); });
  for (const bool beginnings : {false, true}) {
    if (!kinds.empty()) return kinds;
    kinds = those(catalogue, [&](const Taxon& taxon) {
      return are_all_in(asked, all_names(taxon), beginnings);
    });
  }
  return kinds;
}

const Taxon& kind_called(const Catalogue& catalogue, std::string_view words) {
  const std::vector<const Taxon*> kinds = kinds_called(catalogue, words);
  if (kinds.size() == 1) return *kinds.front();
  if (kinds.empty()) {
    std::string hint = near_name(catalogue, words);
    if (hint.empty()) hint = "; `bulbwright bulbs` lists them";
    throw InvalidValue{"", fmt::format("unknown taxon {}{}", in_quotes(words), hint)};
  }
  std::vector<std::string> listed;
  for (const Taxon* kind : kinds) {
    listed.push_back(fmt::format("{} ({})", kind->id, plain_name(kind->name)));
  }
  throw InvalidValue{"", fmt::format("{} fits {} kinds; expected one of {}", in_quotes(words),
                                     kinds.size(), fmt::join(listed, ", "))};
}

}  // namespace bulbwright
