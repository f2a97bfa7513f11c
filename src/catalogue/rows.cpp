#include "catalogue/rows.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>
#include <utility>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "base/near_miss.hpp"
#include "catalogue/rules.hpp"

namespace bulbwright {
namespace {

/// Reads the rows of one file into drafts, gathering faults.
class RowReader {
 public:
  RowReader(const CsvTable& table, std::vector<Draft>& drafts, std::vector<InputFault>& faults)
      : table_{table}, drafts_{drafts}, faults_{faults} {
    for (std::size_t i = 0; i < std::size(names); ++i) columns_[i] = table.column(names[i]);
  }

  void read(CsvRecord& record) {
    CsvRow row{table_, record, faults_};
    row_ = &row;
    const std::string& id = field(taxon);
    if (!is_id(id)) {
      row.fault_at(at(taxon),
                   fmt::format("{} is no taxon id; expected lower-case letters, digits and hyphens",
                               in_quotes(id)));
      return;
    }
    const std::size_t index = quantity_index(field(quantity));
    if (index == quantity_rules().size()) {
      row.fault_at(at(quantity),
                   fmt::format("{}: unknown quantity {}{}", id, in_quotes(field(quantity)),
                               near_quantity(field(quantity))));
      return;
    }
    row.label(fmt::format("{}: {}", id, field(quantity)));
    put(draft_of(id), index);
  }

 private:
  enum Column { taxon, quantity, value, low, high, unit, origin, source };
  static constexpr std::string_view names[] = {"taxon", "quantity", "value",  "low",
                                               "high",  "unit",     "origin", "source"};

  [[nodiscard]] std::size_t at(Column column) const { return columns_[column]; }
  [[nodiscard]] const std::string& field(Column column) const { return row_->text(at(column)); }

  static bool is_id(std::string_view id) {
    return !id.empty() && id.size() <= 60 &&
           id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
  }

  static std::string near_quantity(std::string_view word) {
    std::vector<std::string_view> known;
    for (const QuantityRule& rule : quantity_rules()) known.push_back(rule.name);
    return did_you_mean(word, known);
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
    draft.first = {table_.file, row_->line(), 1};
    draft.taxon.facts.reserve(quantity_rules().size());
    return draft;
  }

  void put(Draft& draft, std::size_t index) {
    if (draft.fresh[index]) {
      row_->fault_at(at(quantity), fmt::format("{}: {} was given before, on line {}", field(taxon),
                                               field(quantity), draft.fact(field(quantity))->line));
      return;
    }
    const QuantityRule& rule = quantity_rules()[index];
    const Origin from = row_->word<Origin>(at(origin)).value_or(Origin::from_memory);
    if (from == Origin::published && field(source).empty()) {
      row_->fault(at(source), "is empty; a published figure needs its source");
    }
    if (field(unit) != rule.unit) {
      row_->fault(at(unit), fmt::format("is {}; expected {}", in_quotes(field(unit)),
                                        rule.unit.empty() ? "none" : in_quotes(rule.unit)));
    }
    std::visit([&](auto member) { set(draft.taxon, member, rule); }, rule.target);
    // A faulty row counts as given, so that the quantity is not reported as missing as well.
    draft.given.set(index);
    if (!row_->is_sound()) return;
    TaxonFact fact{row_->take(at(quantity)), row_->take(at(value)), row_->take(at(low)),
                   row_->take(at(high)),     row_->take(at(unit)),  from,
                   row_->take(at(source)),   table_.file,           row_->line()};
    if (TaxonFact* known = draft.fact(rule.name)) {
      *known = std::move(fact);
    } else {
      draft.taxon.facts.push_back(std::move(fact));
    }
    draft.fresh.set(index);
  }

  double number(Column column, const QuantityRule& rule) {
    return row_->number(at(column), rule.least, rule.most, rule.unit).value_or(rule.least);
  }

  Figure figure(const QuantityRule& rule) {
    const std::size_t faults_before = faults_.size();
    Figure result;
    result.value = number(value, rule);
    result.low = result.high = result.value;
    if (field(low).empty() != field(high).empty()) {
      row_->fault(at(field(low).empty() ? low : high), "is empty; low and high go together");
    } else if (!field(low).empty()) {
      result.low = number(low, rule);
      result.high = number(high, rule);
    }
    if (faults_.size() != faults_before) return result;
    if (result.low > result.value) {
      row_->fault(at(low), fmt::format("is {:g}, above the value {:g}", result.low, result.value));
    }
    if (result.high < result.value) {
      row_->fault(at(high),
                  fmt::format("is {:g}, under the value {:g}", result.high, result.value));
    }
    return result;
  }

  void set(Taxon& taxon_, Figure Taxon::*member, const QuantityRule& rule) {
    taxon_.*member = figure(rule);
  }
  void set(Taxon& taxon_, std::optional<Figure> Taxon::*member, const QuantityRule& rule) {
    taxon_.*member = figure(rule);
  }
  void set(Taxon& taxon_, int Taxon::*member, const QuantityRule& rule) {
    const double whole = figure(rule).value;
    if (whole != std::floor(whole)) row_->fault(at(value), "must be a whole number");
    taxon_.*member = static_cast<int>(whole);
  }
  void set(Taxon& taxon_, std::string Taxon::*member, const QuantityRule&) {
    no_range();
    taxon_.*member = row_->required(at(value), "words");
  }
  template <class Enum>
  void set(Taxon& taxon_, Enum Taxon::*member, const QuantityRule&) {
    no_range();
    std::span<const std::string_view> words = words_of<Enum>();
    if constexpr (std::is_same_v<Enum, Eaten>) words = words.first(words.size() - 1);
    taxon_.*member = row_->word<Enum>(at(value), words).value_or(Enum{});
  }
  void no_range() {
    for (const Column column : {low, high}) {
      if (!field(column).empty()) row_->fault(at(column), "must be empty; words have no range");
    }
  }

  const CsvTable& table_;
  std::vector<Draft>& drafts_;
  std::vector<InputFault>& faults_;
  std::size_t columns_[8]{};
  CsvRow* row_ = nullptr;
  std::size_t last_ = 0;
};

}  // namespace

TaxonFact* Draft::fact(std::string_view quantity) {
  const auto found = std::find_if(taxon.facts.begin(), taxon.facts.end(),
                                  [&](const TaxonFact& f) { return f.quantity == quantity; });
  return found == taxon.facts.end() ? nullptr : &*found;
}

std::vector<InputFault> read_rows(CsvTable& table, std::vector<Draft>& drafts) {
  std::vector<InputFault> faults;
  RowReader reader{table, drafts, faults};
  for (CsvRecord& record : table.records) reader.read(record);
  return faults;
}

}  // namespace bulbwright
