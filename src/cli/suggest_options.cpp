#include "cli/suggest_options.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "catalogue/kind_words.hpp"
#include "input/field_values.hpp"

namespace bulbwright::cli {
namespace {

/// Those of Mouth and, for cats and dogs, "pets".
const std::vector<std::string_view> safe_words = [] {
  std::vector<std::string_view> words{words_of<Mouth>().begin(), words_of<Mouth>().end()};
  words.push_back("pets");
  return words;
}();
constexpr int usual_layers = 3;
constexpr int usual_count = 5;
constexpr int most_count = 100;

template <class Word>
void add_once(std::vector<Word>& words, Word word) {
  if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(std::move(word));
}

int number(const char* flag, const std::optional<std::string>& text, int usual, int most,
           input::Faults& faults) {
  if (!text) return usual;
  try {
    return static_cast<int>(parse_whole_number(*text, 1, most));
  } catch (const InvalidValue& fault) {
    faults.add(input::Field{flag, {}}, fault.expectation());
    return usual;
  }
}

void add_kinds(const char* flag, const std::vector<std::string>& asked, const Catalogue& catalogue,
               std::vector<std::string>& kinds, input::Faults& faults) {
  for (const std::string_view words : each_of(asked)) {
    try {
      add_once(kinds, kind_called(catalogue, words).id);
    } catch (const InvalidValue& fault) {
      faults.add(input::Field{flag, {}}, fault.expectation());
    }
  }
}

void add_animals(const WishOptions& options, SuggestionWish& wish, input::Faults& faults) {
  for (const std::string_view text : each_of(options.safe_for)) {
    if (!input::read_word({"--safe-for", {}}, text, safe_words, "one to be safe for", faults)) {
      continue;
    }
    if (const auto mouth = from_word<Mouth>(text)) {
      add_once(wish.safe_for, *mouth);
    } else {
      add_once(wish.safe_for, Mouth::cats);
      add_once(wish.safe_for, Mouth::dogs);
    }
  }
  for (const std::string_view text : each_of(options.not_eaten_by)) {
    const auto pest = input::read_word<Pest>({"--not-eaten-by", {}}, text, "known pest", faults);
    if (pest) add_once(wish.not_eaten_by, *pest);
  }
}

}  // namespace

SuggestionWish wish_of(const WishOptions& options, const Catalogue& catalogue) {
  input::Faults faults;
  SuggestionWish wish;
  wish.no_storage = options.no_storage;
  wish.most_layers =
      number("--layers", options.layers, usual_layers, most_suggested_layers, faults);
  wish.count = number("--best", options.best, usual_count, most_count, faults);
  add_animals(options, wish, faults);
  add_kinds("--with", options.with, catalogue, wish.with, faults);
  add_kinds("--without", options.without, catalogue, wish.without, faults);
  for (const std::string& id : wish.with) {
    if (std::find(wish.without.begin(), wish.without.end(), id) != wish.without.end())
      faults.add(input::Field{"--without", {}}, fmt::format("{} is asked for by --with too", id));
  }
  if (static_cast<int>(wish.with.size()) > wish.most_layers) {
    faults.add(input::Field{"--with", {}},
               fmt::format("{} kinds do not fit in {} layer{}", wish.with.size(), wish.most_layers,
                           wish.most_layers == 1 ? "" : "s"));
  }
  faults.throw_if_any();
  return wish;
}

void declare_wish(std::vector<Option>& all, WishOptions& options) {
  OptionGroup wishes{all, "Wishes"};
  wishes.text("--window", options.window, "DATE..DATE", "when flowers are wanted (else: ever)");
  wishes.repeated("--safe-for", options.safe_for, "WHOM,...", "pets, cats, dogs, horses or people");
  wishes.repeated("--not-eaten-by", options.not_eaten_by, "PEST,...",
                  "deer, gopher, vole, mouse, squirrel or chipmunk");
  wishes.flag("--no-storage", options.no_storage, "there is no refrigerator");
  wishes.repeated("--with", options.with, "KIND,...", "kinds that must be in it");
  wishes.repeated("--without", options.without, "KIND,...", "kinds that must not be in it");
  wishes.text("--layers", options.layers, "N", "at most so many layers, 1 to 4 (3)");
  wishes.text("--best", options.best, "N", "show so many stacks (5)");
}

}  // namespace bulbwright::cli
