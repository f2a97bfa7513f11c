#include "catalogue/rows.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <span>
#include <utility>

#include <fmt/format.h>

#include "base/near_miss.hpp"
#include "catalogue/rules.hpp"
#include "catalogue/taxon_words.hpp"

namespace bulbwright {
namespace {

/// Column, in code points from 1, at which field number `field` of the record on `line` starts.
/// Slow, used for messages only.
int column_of_field(std::string_view csv, int line, std::size_t field) {
  std::size_t at = csv.starts_with("\xef\xbb\xbf") ? 3 : 0;
  for (int n = 1; n < line; ++n) at = csv.find('\n', at) + 1;
  int column = 1;
  bool inside = false;
  for (; field > 0 && at < csv.size(); ++at) {
    const char c = csv[at];
    if (c == '"') inside = !inside;
    if (c == ',' && !inside) --field;
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++column;
  }
  return column;
}

/// Reads the rows of one file into drafts, gathering faults.
class RowReader {
 public:
  RowReader(std::string_view csv, const CsvTable& table, std::vector<Draft>& drafts)
      : csv_{csv}, table_{table}, drafts_{drafts} {
    for (std::size_t i = 0; i < std::size(names); ++i) columns_[i] = table.column(names[i]);
  }

  std::vector<InputFault> faults;

  void read(CsvRecord& record) {
    record_ = &record;
    const std::string& id = field(taxon);
    if (!is_id(id)) {
      fault(taxon, fmt::format("{} is no taxon id; expected lower-case letters, digits and hyphens",
                               in_quotes(id)));
      return;
    }
    const std::size_t index = quantity_index(field(quantity));
    if (index == quantity_rules().size()) {
      fault(quantity, fmt::format("{}: unknown quantity {}{}", id, in_quotes(field(quantity)),
                                  near_quantity(field(quantity))));
      return;
    }
    put(draft_of(id), index);
  }

 private:
  enum Column { taxon, quantity, value, low, high, unit, origin, source };
  static constexpr std::string_view names[] = {"taxon", "quantity", "value",  "low",
                                               "high",  "unit",     "origin", "source"};

  std::string& field(Column column) { return record_->fields[columns_[column]]; }

  static bool is_id(std::string_view id) {
    return !id.empty() && id.size() <= 60 &&
           id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
  }

  static std::string near_quantity(std::string_view word) {
    std::vector<std::string_view> known;
    for (const QuantityRule& rule : quantity_rules()) known.push_back(rule.name);
    return did_you_mean(word, known);
  }

  void fault(Column column, std::string message) {
    faults.push_back(
        {{table_.file, record_->line, column_of_field(csv_, record_->line, columns_[column])},
         std::move(message)});
  }
  /// A fault of the field `column`, named in the message.
  void fault_in(Column column, std::string_view message) {
    fault(column,
          fmt::format("{}: {}: {} {}", field(taxon), field(quantity), names[column], message));
  }

  Draft& draft_of(const std::string& id) {
    if (!drafts_.empty() && last_ < drafts_.size() && drafts_[last_].taxon.id == id) {
      return drafts_[last_];
    }
    const auto found = std::find_if(drafts_.begin(), drafts_.end(),
                                    [&](const Draft& d) { return d.taxon.id == id; });
    last_ = static_cast<std::size_t>(found - drafts_.begin());
    if (found != drafts_.end()) return *found;
    Draft& draft = drafts_.emplace_back();
    draft.taxon.id = id;
    draft.first = {table_.file, record_->line, 1};
    draft.taxon.facts.reserve(quantity_rules().size());
    return draft;
  }

  void put(Draft& draft, std::size_t index) {
    if (draft.fresh[index]) {
      fault(quantity, fmt::format("{}: {} was given before, on line {}", field(taxon),
                                  field(quantity), draft.fact(field(quantity))->line));
      return;
    }
    const QuantityRule& rule = quantity_rules()[index];
    const std::size_t faults_before = faults.size();
    const Origin from = word<Origin>(origin);
    if (from == Origin::published && field(source).empty()) {
      fault_in(source, "is empty; a published figure needs its source");
    }
    if (field(unit) != rule.unit) {
      fault_in(unit, fmt::format("is {}; expected {}", in_quotes(field(unit)),
                                 rule.unit.empty() ? "none" : in_quotes(rule.unit)));
    }
    std::visit([&](auto member) { set(draft.taxon, member, rule); }, rule.target);
    if (faults.size() != faults_before) {
      // Counted as given, so that it is not reported as missing as well.
      draft.given.set(index);
      return;
    }
    TaxonFact fact{std::move(field(quantity)),
                   std::move(field(value)),
                   std::move(field(low)),
                   std::move(field(high)),
                   std::move(field(unit)),
                   from,
                   std::move(field(source)),
                   table_.file,
                   record_->line};
    // A faulty row before this one has counted as given and left no fact.
    if (TaxonFact* known = draft.fact(rule.name)) {
      *known = std::move(fact);
    } else {
      draft.taxon.facts.push_back(std::move(fact));
    }
    draft.given.set(index);
    draft.fresh.set(index);
  }

  double number(Column column, const QuantityRule& rule) {
    const std::string& text = field(column);
    double result = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), result);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(result)) {
      fault_in(column, fmt::format("is {}; expected a number", in_quotes(text)));
      return rule.least;
    }
    if (result < rule.least || result > rule.most) {
      fault_in(column, fmt::format("is {}; expected {:g} to {:g} {}", text, rule.least, rule.most,
                                   rule.unit));
      return rule.least;
    }
    return result;
  }

  Figure figure(const QuantityRule& rule) {
    const std::size_t faults_before = faults.size();
    Figure result;
    result.value = number(value, rule);
    result.low = result.high = result.value;
    if (field(low).empty() != field(high).empty()) {
      fault_in(field(low).empty() ? low : high, "is empty; low and high go together");
    } else if (!field(low).empty()) {
      result.low = number(low, rule);
      result.high = number(high, rule);
    }
    if (faults.size() != faults_before) return result;
    if (result.low > result.value) {
      fault_in(low, fmt::format("is {:g}, above the value {:g}", result.low, result.value));
    }
    if (result.high < result.value) {
      fault_in(high, fmt::format("is {:g}, under the value {:g}", result.high, result.value));
    }
    return result;
  }

  template <class Enum>
  Enum word(Column column) {
    std::span<const std::string_view> words = words_of<Enum>();
    if constexpr (std::is_same_v<Enum, Eaten>) words = words.first(words.size() - 1);
    const auto found = std::find(words.begin(), words.end(), field(column));
    if (found == words.end()) {
      fault_in(column, fmt::format("is {}; expected one of {}{}", in_quotes(field(column)),
                                   fmt::join(words, ", "), did_you_mean(field(column), words)));
      return Enum{};
    }
    return static_cast<Enum>(found - words.begin());
  }

  void set(Taxon& taxon_, Figure Taxon::*member, const QuantityRule& rule) {
    taxon_.*member = figure(rule);
  }
  void set(Taxon& taxon_, std::optional<Figure> Taxon::*member, const QuantityRule& rule) {
    taxon_.*member = figure(rule);
  }
  void set(Taxon& taxon_, int Taxon::*member, const QuantityRule& rule) {
    const double whole = figure(rule).value;
    if (whole != std::floor(whole)) fault_in(value, "must be a whole number");
    taxon_.*member = static_cast<int>(whole);
  }
  void set(Taxon& taxon_, std::string Taxon::*member, const QuantityRule&) {
    no_range();
    if (field(value).empty()) fault_in(value, "is empty; expected words");
    taxon_.*member = field(value);
  }
  template <class Enum>
  void set(Taxon& taxon_, Enum Taxon::*member, const QuantityRule&) {
    no_range();
    taxon_.*member = word<Enum>(value);
  }
  void no_range() {
    if (!field(low).empty()) fault_in(low, "must be empty; words have no range");
    if (!field(high).empty()) fault_in(high, "must be empty; words have no range");
  }

  std::string_view csv_;
  const CsvTable& table_;
  std::vector<Draft>& drafts_;
  std::size_t columns_[8]{};
  CsvRecord* record_ = nullptr;
  std::size_t last_ = 0;
};

}  // namespace

TaxonFact* Draft::fact(std::string_view quantity) {
  const auto found = std::find_if(taxon.facts.begin(), taxon.facts.end(),
                                  [&](const TaxonFact& f) { return f.quantity == quantity; });
  return found == taxon.facts.end() ? nullptr : &*found;
}

std::vector<InputFault> read_rows(std::string_view csv, CsvTable& table,
                                  std::vector<Draft>& drafts) {
  RowReader reader{csv, table, drafts};
  for (CsvRecord& record : table.records) reader.read(record);
  return std::move(reader.faults);
}

}  // namespace bulbwright
