// parse_cautions(): the caution list and its triggers.
#include <algorithm>
#include <array>
#include <map>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"
#include "base/utf8.hpp"
#include "caution/caution.hpp"
#include "caution/words.hpp"

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

/// @throws InvalidValue for a term that is none.
CautionTerm parse_term(std::string_view text, std::span<const std::string_view> kinds) {
  std::vector<std::string_view> known;
  for (const TermForm& form : forms) {
    known.push_back(form.word);
    if (form.value == TermForm::Value::none) {
      if (text == form.word) return {form.kind, {}, 0.0, {}};
      continue;
    }
    if (!text.starts_with(form.word)) continue;
    const std::string_view value = text.substr(form.word.size());
    CautionTerm term{form.kind, lower_case(value), 0.0, {}};
    const auto require = [&](bool good, std::string_view expected) {
      if (!good) {
        throw InvalidValue{"", fmt::format("holds {}; expected {} after {}", in_quotes(text),
                                           expected, in_quotes(form.word))};
      }
    };
    if (form.value == TermForm::Value::litres) {
      const auto litres = plain_number(value);
      require(litres && *litres >= 0.0, "a number of litres");
      term.number = *litres;
    } else if (form.value == TermForm::Value::pest) {
      term.pest = from_word<Pest>(value);
      require(value == "any" || term.pest, "any or a known pest");
    } else if (form.value == TermForm::Value::toxicity) {
      require(from_word<Toxicity>(value).has_value(), "a toxicity class");
    } else {
      require(!value.empty(), "a name");
      if (form.kind == Kind::taxon && !kinds.empty() &&
          std::ranges::find(kinds, term.word) == kinds.end()) {
        throw InvalidValue{"", fmt::format("holds the unknown {}{}", in_quotes(text),
                                           did_you_mean(term.word, kinds))};
      }
    }
    return term;
  }
  throw InvalidValue{
      "", fmt::format("holds the unknown term {}{}", in_quotes(text), did_you_mean(text, known))};
}

void check_placeholders(std::string_view text) {
  const auto known = caution_placeholders();
  for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
    const std::string_view word = text.substr(at, text.find('}', at) + 1 - at);
    if (std::find(known.begin(), known.end(), word) == known.end()) {
      throw InvalidValue{"", fmt::format("holds the unknown placeholder {}{}", in_quotes(word),
                                         did_you_mean(word, known))};
    }
  }
}

constexpr std::array columns{"code"sv,   "trigger"sv,    "severity"sv, "topic"sv, "hazard"sv,
                             "advice"sv, "short_text"sv, "origin"sv,   "source"sv};
enum Column { code, trigger, severity, topic, hazard, advice, short_text, origin, source };
using Columns = std::array<std::size_t, columns.size()>;

/// Runs a check of the text of a column and turns its exception into a fault.
template <class Check>
void checked(CsvRow& row, std::size_t column, Check check) {
  try {
    check(row.text(column));
  } catch (const InvalidValue& fault) {
    row.fault(column, fault.expectation());
  }
}

CautionRule read_rule(CsvRow& row, const Columns& at, std::span<const std::string_view> kinds) {
  CautionRule rule;
  for (const Column column : {code, trigger, severity, topic, hazard, advice}) {
    row.required(at[column], "some text");
  }
  if (!row.is_sound()) return rule;
  Caution& c = rule.caution;
  checked(row, at[trigger], [&](const std::string& text) {
    for (const std::string_view alternative : split(text, '|')) {
      auto& terms = rule.alternatives.emplace_back();
      for (const std::string_view term : split(alternative, '&'))
        terms.push_back(parse_term(term, kinds));
    }
  });
  c.severity = row.word<CautionSeverity>(at[severity]).value_or(c.severity);
  c.origin = row.word<Origin>(at[origin]).value_or(c.origin);
  if (c.origin == Origin::published && row.text(at[source]).empty()) {
    row.fault(at[source], "is empty; a published caution needs its source");
  }
  for (const Column text : {hazard, advice, short_text}) checked(row, at[text], check_placeholders);
  if (code_points(row.text(at[short_text])) > sheet_width) {
    row.fault(at[short_text], fmt::format("is over {} columns", sheet_width));
  }
  c.code = row.text(at[code]);
  c.topic = row.text(at[topic]);
  c.hazard = row.text(at[hazard]);
  c.advice = row.text(at[advice]);
  c.short_text = row.text(at[short_text]);
  c.source = row.text(at[source]);
  return rule;
}

}  // namespace

std::vector<CautionRule> parse_cautions(std::string_view csv, std::string file,
                                        std::span<const std::string_view> kinds) {
  CsvTable table = read_csv(csv, std::move(file));
  Columns at{};
  for (std::size_t i = 0; i < columns.size(); ++i) at[i] = table.column(columns[i]);

  std::vector<CautionRule> rules;
  std::vector<InputFault> faults;
  std::map<std::string, int> lines;
  for (CsvRecord& record : table.records) {
    CsvRow row{table, record, faults};
    row.label(row.text(at[code]));
    const auto [before, fresh] = lines.emplace(row.text(at[code]), record.line);
    if (!fresh) row.fault(at[code], fmt::format("was given before, on line {}", before->second));
    rules.push_back(read_rule(row, at, kinds));
  }
  throw_if_any(std::move(faults));
  return rules;
}

std::vector<CautionRule> merged(std::vector<CautionRule> base, std::vector<CautionRule> own) {
  for (CautionRule& rule : own) {
    const auto same = std::find_if(base.begin(), base.end(), [&](const CautionRule& known) {
      return known.caution.code == rule.caution.code;
    });
    if (same == base.end()) {
      base.push_back(std::move(rule));
    } else {
      *same = std::move(rule);
    }
  }
  return base;
}

std::vector<CautionRule> builtin_cautions() {
  return parse_cautions(embedded::cautions_csv, "cautions.csv");
}

}  // namespace bulbwright
