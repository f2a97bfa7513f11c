// compare_text() and compare_json(): what if it were planted later, elsewhere, otherwise?
#include <algorithm>

#include <fmt/format.h>

#include "report/common_json.hpp"
#include "report/compare_report.hpp"
#include "report/notice_text.hpp"
#include "report/plan_json.hpp"
#include "report/sheet/words.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"
#include "season/filling.hpp"

namespace bulbwright::report {
namespace {

constexpr int row_head = 14;
constexpr int least_column = 20;

/// What a row of the table tells of a plan: lines of one cell.
using Cell = std::vector<std::string>;

std::string kind_text(std::string_view name, const TextStyle& style) {
  return several(in_style(name, style));
}

Cell verdict_cell(const Plan& plan, const TextStyle& style) {
  if (plan.ok) return {"yes"};
  Cell cell;
  for (const Notice& notice : plan.notices) {
    if (notice.severity == Severity::refusal)
      cell.push_back("no: " + in_style(notice_text(notice, style), style));
  }
  return cell;
}

Cell plant_cell(const Plan& plan, const TextStyle&) {
  return {to_words(plan.plant, true)};
}

Cell bulbs_cell(const Plan& plan, const TextStyle& style) {
  Cell cell;
  for (const PlannedLayer& layer : plan.layers) {
    for (const LayerBulbs& bulbs : layer.bulbs) cell.push_back(bulbs_text(bulbs, style));
  }
  return cell;
}

Cell cold_cell(const Plan& plan, const TextStyle& style) {
  Cell cell;
  for (const TaxonCold& cold : plan.cold) {
    if (cold.storage_weeks < 0.05) continue;
    cell.push_back(fmt::format("{} {}\u00A0weeks from {}", kind_text(cold.name, style),
                               short_number(cold.storage_weeks),
                               cold.storage_start ? day_text(*cold.storage_start, false) : "?"));
  }
  if (cell.empty()) cell.emplace_back("nothing");
  return cell;
}

Cell lacking_cell(const Plan& plan, const TextStyle& style) {
  Cell cell;
  for (const TaxonCold& cold : plan.cold) {
    if (cold.chance_least_met >= 0.995) continue;
    cell.push_back(fmt::format("{} {} winters in 100", kind_text(cold.name, style),
                               static_cast<int>(rounded(cold.chance_least_met * 100.0, 1.0))));
  }
  if (cell.empty()) cell.emplace_back("every winter");
  return cell;
}

Cell flowers_cell(const Plan& plan, const TextStyle& style) {
  Cell cell;
  for (auto wave = plan.waves.rbegin(); wave != plan.waves.rend(); ++wave) {
    cell.push_back(
        fmt::format("{} {}{}", kind_text(wave->name, style),
                    wave->flowers ? days_text(wave->first, wave->last, false) : "no flowers",
                    wave->flowers && !(wave->confident && wave->observed) ? " ?" : ""));
  }
  return cell;
}

Cell days_cell(const Plan& plan, const TextStyle&) {
  return {fmt::format("{}", plan.display.days_in_flower)};
}

Cell gaps_cell(const Plan& plan, const TextStyle&) {
  Cell cell;
  for (const DayGap& gap : plan.display.gaps) {
    cell.push_back(fmt::format("{} (chance {} in 100)", days_text(gap.from, gap.to, false),
                               static_cast<int>(rounded(gap.chance * 100.0, 1.0))));
  }
  if (cell.empty()) cell.emplace_back("none");
  return cell;
}

Cell work_cell(const Plan& plan, const TextStyle& style) {
  if (!plan.ok) return {};
  return {fmt::format("{:.0f} min, {} of mix", rounded(filling_hours(plan) * 60.0, 5.0),
                      volume_text(plan.materials.mix_loose, style)),
          fmt::format("{} filled", weight_text(plan.materials.filled_weight, style))};
}

struct Row {
  const char* label;
  Cell (*cell)(const Plan&, const TextStyle&);
};
constexpr Row rows[] = {
    {"Possible", verdict_cell}, {"Plant", plant_cell},           {"Bulbs", bulbs_cell},
    {"Refrigerate", cold_cell}, {"Least cold in", lacking_cell}, {"In flower", flowers_cell},
    {"Days of it", days_cell},  {"Nothing open", gaps_cell},     {"Filling", work_cell},
};

/// Each line of a cell wrapped, what goes on set in by one.
Lines wrapped(const Cell& cell, int width) {
  Lines lines;
  for (const std::string& text : cell) {
    const std::size_t from = lines.size();
    append(lines, wrap(text, width - 1));
    for (std::size_t i = from + 1; i < lines.size(); ++i) lines[i].insert(0, " ");
  }
  return lines;
}

void add_row(Lines& page, const char* label, const std::vector<Lines>& cells, int width) {
  std::size_t height = 1;
  for (const Lines& cell : cells) height = std::max(height, cell.size());
  for (std::size_t i = 0; i < height; ++i) {
    std::string line = pad_right(i == 0 ? label : "", row_head);
    for (const Lines& cell : cells) line += pad_right(i < cell.size() ? cell[i] : "", width + 2);
    while (line.ends_with(' ')) line.pop_back();
    page.push_back(line);
  }
}

/// Plans beside each other.
void add_block(Lines& page, std::span<const ComparedPlan> plans, int width,
               const TextStyle& style) {
  std::vector<Lines> heads;
  for (const ComparedPlan& compared : plans)
    heads.push_back(wrap(in_style(printable(compared.label), style), width));
  if (!page.empty()) page.emplace_back();
  const std::size_t from = page.size();
  add_row(page, "", heads, width);
  for (std::size_t i = from; i < page.size(); ++i) page[i] = bold(page[i], style);
  for (const Row& row : rows) {
    std::vector<Lines> cells;
    for (const ComparedPlan& compared : plans)
      cells.push_back(wrapped(row.cell(*compared.plan, style), width));
    add_row(page, row.label, cells, width);
  }
}

}  // namespace

std::string compare_text(std::span<const ComparedPlan> plans, const TextStyle& style) {
  const int available = text_width(style) - row_head;
  const auto beside = static_cast<std::size_t>(
      std::clamp<int>(available / (least_column + 2), 1, static_cast<int>(plans.size())));
  const int width = available / static_cast<int>(beside) - 2;
  Lines page;
  for (std::size_t i = 0; i < plans.size(); i += beside)
    add_block(page, plans.subspan(i, std::min(beside, plans.size() - i)), width, style);
  for (std::string& line : page) line = in_style(line, style);
  return joined(page);
}

std::string compare_json(std::span<const ComparedPlan> plans) {
  nlohmann::ordered_json json = document("bulbwright.compare/1");
  json["plans"] = nlohmann::ordered_json::array();
  for (const ComparedPlan& compared : plans) {
    nlohmann::ordered_json entry{{"label", compared.label}};
    entry["hours_of_filling"] =
        compared.plan->ok ? nlohmann::ordered_json(rounded(filling_hours(*compared.plan), 0.1))
                          : nlohmann::ordered_json(nullptr);
    entry["plan"] = plan_object(*compared.plan);
    json["plans"].push_back(std::move(entry));
  }
  return document_text(json);
}

}  // namespace bulbwright::report
