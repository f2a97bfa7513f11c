// parse_cautions(): the caution list and its triggers.
#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <map>

#include <fmt/format.h>

#include "base/csv.hpp"
#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "catalogue/taxon_words.hpp"
#include "caution/caution.hpp"
#include "caution/words.hpp"
#include "materials/mesh.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view cautions_csv;
}

namespace {

using namespace std::string_view_literals;
using Kind = CautionTerm::Kind;

struct TermForm {
  std::string_view word;  ///< whole term, or what stands before its value
  Kind kind;
  enum class Value { none, word, pest, toxicity, litres } value;
};

constexpr std::array forms{
    TermForm{"always", Kind::always, TermForm::Value::none},
    TermForm{"stored", Kind::stored, TermForm::Value::none},
    TermForm{"refrigerated", Kind::refrigerated, TermForm::Value::none},
    TermForm{"pre-cooled", Kind::pre_cooled, TermForm::Value::none},
    TermForm{"vermiculite", Kind::vermiculite, TermForm::Value::none},
    TermForm{"frost", Kind::frost, TermForm::Value::none},
    TermForm{"mild-winter", Kind::mild_winter, TermForm::Value::none},
    TermForm{"porous", Kind::porous, TermForm::Value::none},
    TermForm{"wall-pot", Kind::wall_pot, TermForm::Value::none},
    TermForm{"mesh", Kind::mesh, TermForm::Value::none},
    TermForm{"perlite", Kind::perlite, TermForm::Value::none},
    TermForm{"weight", Kind::weight, TermForm::Value::none},
    TermForm{"weight>one", Kind::weight_over_one, TermForm::Value::none},
    TermForm{"volume>", Kind::volume_over, TermForm::Value::litres},
    TermForm{"genus=", Kind::genus, TermForm::Value::word},
    TermForm{"taxon=", Kind::taxon, TermForm::Value::word},
    TermForm{"toxicity=", Kind::toxicity, TermForm::Value::toxicity},
    TermForm{"pest=", Kind::pest, TermForm::Value::pest},
};

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
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

/// @throws InvalidValue for a term that is none.
CautionTerm parse_term(std::string_view text) {
  std::vector<std::string_view> known;
  for (const TermForm& form : forms) {
    known.push_back(form.word);
    if (form.value == TermForm::Value::none) {
      if (text == form.word) return {form.kind, {}, 0.0};
      continue;
    }
    if (!text.starts_with(form.word)) continue;
    const std::string_view value = text.substr(form.word.size());
    CautionTerm term{form.kind, std::string{value}, 0.0};
    for (char& c : term.word) {
      c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    const auto require = [&](bool good, std::string_view expected) {
      if (!good) {
        throw InvalidValue{"", fmt::format("{}: expected {} after {}", in_quotes(text), expected,
                                           in_quotes(form.word))};
      }
    };
    if (form.value == TermForm::Value::litres) {
      const auto [end, error] =
          std::from_chars(value.data(), value.data() + value.size(), term.number);
      require(error == std::errc{} && end == value.data() + value.size() && term.number >= 0.0,
              "a number of litres");
    } else if (form.value == TermForm::Value::pest) {
      require(value == "any" || find_pest(value), "any or a known pest");
    } else if (form.value == TermForm::Value::toxicity) {
      const auto words = words_of<Toxicity>();
      require(std::find(words.begin(), words.end(), value) != words.end(), "a toxicity class");
    } else {
      require(!value.empty(), "a name");
    }
    return term;
  }
  throw InvalidValue{"",
                     fmt::format("unknown term {}{}", in_quotes(text), did_you_mean(text, known))};
}

void check_placeholders(std::string_view text) {
  const auto known = caution_placeholders();
  for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
    const std::string_view word = text.substr(at, text.find('}', at) + 1 - at);
    if (std::find(known.begin(), known.end(), word) == known.end()) {
      throw InvalidValue{
          "", fmt::format("unknown placeholder {}{}", in_quotes(word), did_you_mean(word, known))};
    }
  }
}

template <class Enum>
Enum word_in(std::string_view text, std::span<const std::string_view> words) {
  const auto found = std::find(words.begin(), words.end(), text);
  if (found == words.end()) {
    throw InvalidValue{"", fmt::format("{}; expected one of {}{}", in_quotes(text),
                                       fmt::join(words, ", "), did_you_mean(text, words))};
  }
  return static_cast<Enum>(found - words.begin());
}

constexpr std::array severity_words{"high"sv, "medium"sv, "low"sv};
constexpr std::array columns{"code"sv,   "trigger"sv,    "severity"sv, "topic"sv, "hazard"sv,
                             "advice"sv, "short_text"sv, "origin"sv,   "source"sv};
enum Column { code, trigger, severity, topic, hazard, advice, short_text, origin, source };

/// Reads one row; calls `field(column)` for its text. @throws InvalidValue with the column as
/// field.
template <class Field>
CautionRule parse_row(const Field& field) {
  CautionRule rule;
  Column at = code;
  try {
    for (at = code; at < short_text; at = static_cast<Column>(at + 1)) {
      if (field(at).empty()) throw InvalidValue{"", "is empty"};
    }
    Caution& c = rule.caution;
    at = trigger;
    for (const std::string_view alternative : split(field(trigger), '|')) {
      auto& terms = rule.alternatives.emplace_back();
      for (const std::string_view term : split(alternative, '&')) terms.push_back(parse_term(term));
    }
    at = severity;
    c.severity = word_in<CautionSeverity>(field(severity), severity_words);
    at = origin;
    c.origin = word_in<Origin>(field(origin), words_of<Origin>());
    at = source;
    if (c.origin == Origin::published && field(source).empty()) {
      throw InvalidValue{"", "is empty; a published caution needs its source"};
    }
    for (const Column text : {hazard, advice, short_text}) {
      at = text;
      check_placeholders(field(text));
    }
    at = short_text;
    if (field(short_text).size() > 90) throw InvalidValue{"", "is over 90 columns"};
    c.code = field(code);
    c.topic = field(topic);
    c.hazard = field(hazard);
    c.advice = field(advice);
    c.short_text = field(short_text);
    c.source = field(source);
  } catch (const InvalidValue& fault) {
    throw InvalidValue{std::string{columns[at]}, fault.expectation()};
  }
  return rule;
}

}  // namespace

const char* to_string(CautionSeverity severity_) {
  return severity_words[static_cast<std::size_t>(severity_)].data();
}

std::vector<CautionRule> parse_cautions(std::string_view csv, std::string file) {
  const CsvTable table = read_csv(csv, std::move(file));
  std::array<std::size_t, columns.size()> index{};
  for (std::size_t i = 0; i < columns.size(); ++i) index[i] = table.column(columns[i]);

  std::vector<CautionRule> rules;
  std::vector<InputFault> faults;
  std::map<std::string, int> lines;
  for (const CsvRecord& record : table.records) {
    const auto field = [&](Column column) -> const std::string& {
      return record.fields[index[column]];
    };
    try {
      const auto [before, fresh] = lines.emplace(field(code), record.line);
      if (!fresh) {
        throw InvalidValue{"code", fmt::format("was given before, on line {}", before->second)};
      }
      rules.push_back(parse_row(field));
    } catch (const InvalidValue& fault) {
      faults.push_back(
          {{table.file, record.line, 1}, fmt::format("{}: {}", field(code), fault.what())});
    }
  }
  if (!faults.empty()) throw InputError{std::move(faults)};
  return rules;
}

std::vector<CautionRule> builtin_cautions() {
  return parse_cautions(embedded::cautions_csv, "cautions.csv");
}

}  // namespace bulbwright
