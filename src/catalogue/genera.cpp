#include "catalogue/genera.hpp"

#include <algorithm>
#include <map>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "base/origin.hpp"
#include "base/text.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view genera_csv;
}

namespace {

constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

/// Lower case, blanks for hyphens, none at the ends.
std::string normalised(std::string_view word) {
  std::string text = lower_case(word);
  std::replace(text.begin(), text.end(), '-', ' ');
  return std::string{trimmed(text)};
}

/// `word` is `name` or its plural: "tulips", "crocuses", "fritillaries".
bool is_one_or_more(std::string_view word, std::string_view name) {
  if (word == name) return true;
  for (const std::string_view ending : {"s", "es"}) {
    if (word.ends_with(ending) && word.substr(0, word.size() - ending.size()) == name) return true;
  }
  return word.ends_with("ies") && name.ends_with("y") &&
         word.substr(0, word.size() - 3) == name.substr(0, name.size() - 1);
}

struct Columns {
  std::size_t genus, plural, names, shape_factor, origin, source;
  explicit Columns(const CsvTable& table)
      : genus{table.column("genus")},
        plural{table.column("plural")},
        names{table.column("names")},
        shape_factor{table.column("shape_factor")},
        origin{table.column("origin")},
        source{table.column("source")} {}
};

Genus read_genus(CsvRow& row, const Columns& at) {
  Genus genus;
  genus.name = row.required(at.genus, "a genus such as Tulipa");
  row.label(genus.name);
  if (genus.name.find_first_not_of(letters) != std::string::npos) {
    row.fault(at.genus, "is no genus; expected one word of letters");
  }
  genus.plural = row.required(at.plural, "a plural such as tulips");
  if (!row.text(at.names).empty()) {
    for (const std::string_view name : split(row.text(at.names), '|')) {
      if (name.empty()) row.fault(at.names, "holds an empty name");
      genus.names.push_back(normalised(name));
    }
  }
  if (!row.text(at.shape_factor).empty()) {
    genus.shape_factor = row.number(at.shape_factor, 0.1, 3.0);
  }
  if (row.word<Origin>(at.origin) == Origin::published && row.text(at.source).empty()) {
    row.fault(at.source, "is empty; a published figure needs its source");
  }
  return genus;
}

}  // namespace

Genus Genera::of(std::string_view name) const {
  const std::string wanted = lower_case(name);
  for (const Genus& genus : genera_) {
    if (lower_case(genus.name) == wanted) return genus;
  }
  return {std::string{name}, std::string{name}, {}, std::nullopt};
}

Genera Genera::with(const Genera& own) const {
  std::vector<Genus> all = genera_;
  for (const Genus& genus : own.genera_) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const Genus& known) {
      return lower_case(known.name) == lower_case(genus.name);
    });
    if (same == all.end()) {
      all.push_back(genus);
    } else {
      *same = genus;
    }
  }
  return Genera{std::move(all)};
}

Genera parse_genera(std::string_view csv, std::string file) {
  CsvTable table = read_csv(csv, std::move(file));
  const Columns at{table};
  std::vector<InputFault> faults;
  std::vector<Genus> genera;
  std::map<std::string, int> given;  // genera and common names, by line
  for (CsvRecord& record : table.records) {
    CsvRow row{table, record, faults};
    genera.push_back(read_genus(row, at));
    const auto check_new = [&](std::size_t column, const std::string& name) {
      const auto [before, fresh] = given.emplace(name, record.line);
      if (fresh) return;
      row.fault(column,
                fmt::format("{} was given before, on line {}", in_quotes(name), before->second));
    };
    const std::string name = lower_case(genera.back().name);
    check_new(at.genus, name);
    for (const std::string& common : genera.back().names) {
      if (common != name) check_new(at.names, common);
    }
  }
  throw_if_any(std::move(faults));
  return Genera{std::move(genera)};
}

Genera builtin_genera() {
  return parse_genera(embedded::genera_csv, "genera.csv");
}

bool is_crop_of(const Genus& genus, std::string_view crop) {
  const std::string word = normalised(crop);
  if (word == lower_case(genus.name)) return true;
  return std::any_of(genus.names.begin(), genus.names.end(),
                     [&](const std::string& name) { return is_one_or_more(word, name); });
}

}  // namespace bulbwright
