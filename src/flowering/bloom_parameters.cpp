#include "flowering/bloom_parameters.hpp"

#include <algorithm>
#include <array>
#include <string>

#include <fmt/core.h>

#include "base/csv_row.hpp"
#include "base/error.hpp"
#include "base/near_miss.hpp"

namespace bulbwright {

namespace embedded {
extern const std::string_view bloom_csv;
}

namespace {

/// A figure of the table, where it goes, and what it may be.
struct Parameter {
  std::string_view name;
  double BloomParameters::*member;
  double least, most;
};

constexpr std::array quantities{
    Parameter{"heat_sum", &BloomParameters::heat_sum, 1.0, 5000.0},
    Parameter{"cold_scale", &BloomParameters::cold_scale, 0.0, 2.0},
    Parameter{"dark_rate", &BloomParameters::dark_rate, 0.001, 1.0},
    Parameter{"flower_days", &BloomParameters::flower_days, 1.0, 100.0},
    Parameter{"spread_days", &BloomParameters::spread_days, 0.0, 60.0},
    Parameter{"stored_spread_days", &BloomParameters::stored_spread_days, 0.0, 60.0},
    Parameter{"winter_share", &BloomParameters::winter_share, 0.0, 2.0},
    Parameter{"fold_weeks", &BloomParameters::fold_weeks, 0.05, 30.0},
    Parameter{"unchilled_rate", &BloomParameters::unchilled_rate, 0.001, 1.0},
    Parameter{"storage_credit", &BloomParameters::storage_credit, 0.5, 3.0},
    Parameter{"half_light_h", &BloomParameters::half_light_h, 0.0, 24.0},
    Parameter{"light_width_h", &BloomParameters::light_width_h, 0.05, 12.0},
    Parameter{"storage_relief", &BloomParameters::storage_relief, 0.0, 1.0},
    Parameter{"base_c", &BloomParameters::base_c, -3.0, 6.0},
    Parameter{"relief_weeks", &BloomParameters::relief_weeks, 1.0, 30.0},
    Parameter{"rooting_heat", &BloomParameters::rooting_heat, 0.0, 600.0},
    Parameter{"least_days", &BloomParameters::least_days, 1.0, 60.0},
    Parameter{"depth_share", &BloomParameters::depth_share, 0.0, 0.1},
    Parameter{"blast_c", &BloomParameters::blast_c, 10.0, 50.0},
    Parameter{"peak_share", &BloomParameters::peak_share, 0.05, 0.95},
    Parameter{"warmth_per_k", &BloomParameters::warmth_per_k, 0.0, 0.2},
    Parameter{"shoots_share", &BloomParameters::shoots_share, 0.05, 0.95},
};
constexpr int season_classes = 8;
constexpr std::string_view shared = "*";
constexpr double full_cold_weeks = 14.0;  // forcing weeks of the kinds with cold_scale 1

std::string class_name(int season_class) {
  return fmt::format("class-{}", std::clamp(season_class, 1, season_classes));
}

/// A kind, a class, or all of them.
bool is_known(std::string_view kind, std::span<const std::string_view> kinds) {
  if (kind.empty() || kind == shared || std::ranges::find(kinds, kind) != kinds.end()) return true;
  for (int i = 1; i <= season_classes; ++i) {
    if (kind == class_name(i)) return true;
  }
  return false;
}

const Parameter* quantity_of(std::string_view name) {
  const auto found = std::ranges::find(quantities, name, &Parameter::name);
  return found == quantities.end() ? nullptr : &*found;
}

std::vector<std::string_view> quantity_names() {
  std::vector<std::string_view> names;
  for (const Parameter& q : quantities) names.push_back(q.name);
  return names;
}

}  // namespace

BloomTable BloomTable::parse(std::string_view csv, const std::string& file,
                             std::span<const std::string_view> kinds) {
  CsvTable table = read_csv(csv, file);
  const std::size_t taxon = table.column("taxon"), quantity = table.column("quantity"),
                    value = table.column("value"), unit = table.column("unit"),
                    origin = table.column("origin"), source = table.column("source");
  BloomTable result;
  std::vector<InputFault> faults;
  for (CsvRecord& record : table.records) {
    CsvRow row{table, record, faults};
    const std::string& kind = row.required(taxon, "a taxon, class-1 to class-8, or *");
    if (!kinds.empty() && !is_known(kind, kinds)) {
      row.fault(taxon,
                fmt::format("is the unknown {}{}", in_quotes(kind), did_you_mean(kind, kinds)));
    }
    const std::string& name = row.text(quantity);
    const Parameter* q = quantity_of(name);
    if (q == nullptr) {
      row.fault(quantity, fmt::format("is the unknown {}{}", in_quotes(name),
                                      did_you_mean(name, quantity_names())));
      continue;
    }
    row.label(fmt::format("{}: {}", kind, name));
    const auto number = row.number(value, q->least, q->most);
    if (number && result.find(kind, name) != nullptr) row.fault(quantity, "is given twice");
    if (!row.is_sound()) continue;
    result.facts_.push_back(
        {kind, name, *number, row.text(unit), row.text(origin), row.text(source)});
  }
  throw_if_any(std::move(faults));
  return result;
}

BloomTable BloomTable::builtin() {
  return parse(embedded::bloom_csv, "bloom.csv");
}

void BloomTable::merge(const BloomTable& other) {
  for (const BloomFact& fact : other.facts_) {
    const auto same = std::ranges::find_if(facts_, [&](const BloomFact& f) {
      return f.taxon == fact.taxon && f.quantity == fact.quantity;
    });
    if (same == facts_.end()) {
      facts_.push_back(fact);
    } else {
      *same = fact;
    }
  }
}

const BloomFact* BloomTable::find(std::string_view taxon, std::string_view quantity) const {
  const auto found = std::ranges::find_if(
      facts_, [&](const BloomFact& f) { return f.taxon == taxon && f.quantity == quantity; });
  return found == facts_.end() ? nullptr : &*found;
}

BloomParameters BloomTable::of(const Taxon& taxon) const {
  BloomParameters kind;
  kind.taxon = taxon.id;
  kind.flower_days = std::max(1.0, taxon.flower_days.value);
  kind.cold_scale = std::clamp(taxon.cold_weeks.value / full_cold_weeks, 0.0, 1.0);
  const std::string of_class = class_name(taxon.season_class);
  for (const Parameter& q : quantities) {
    for (const std::string_view row :
         {shared, std::string_view{of_class}, std::string_view{taxon.id}}) {
      if (const BloomFact* fact = find(row, q.name)) kind.*q.member = fact->value;
    }
  }
  return kind;
}

}  // namespace bulbwright
