#include "report/cold_report.hpp"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "cold/pot_temperature.hpp"
#include "input/pot_file_writer.hpp"
#include "report/cold_words.hpp"
#include "report/common_json.hpp"
#include "report/notice_json.hpp"
#include "report/place_json.hpp"
#include "report/section_json.hpp"
#include "report/spreadsheet.hpp"
#include "report/text_layout.hpp"

namespace bulbwright::report {
namespace {

/// A measure as it is written: its key and the step it is rounded to.
struct Measure {
  const char* key;
  double ColdFigures::*value;
  double step;
};
constexpr Measure measures[] = {{"mean_c", &ColdFigures::mean_c, 0.01},
                                {"cold_weeks", &ColdFigures::cold_weeks, 0.01},
                                {"hours_0_7", &ColdFigures::hours_0_7, 1.0},
                                {"utah_units", &ColdFigures::utah_units, 0.5},
                                {"chill_portions", &ColdFigures::chill_portions, 0.01}};

/// A number rounded to its step; whole numbers without a point.
Json written(double value, double step) {
  const double shown = rounded(value, step);
  if (step < 1.0) return shown;
  return static_cast<long>(shown);
}

Json plain(const ColdFigures& figures) {
  Json json;
  json["days"] = figures.days;
  for (const Measure& measure : measures) {
    json[measure.key] = written(figures.*measure.value, measure.step);
  }
  return json;
}

Json of_three(const ColdFigures& normal, const ColdFigures& mild, const ColdFigures& cold) {
  Json json;
  json["days"] = normal.days;
  for (const Measure& measure : measures) {
    json[measure.key] = {{"normal", written(normal.*measure.value, measure.step)},
                         {"mild", written(mild.*measure.value, measure.step)},
                         {"cold", written(cold.*measure.value, measure.step)}};
  }
  return json;
}

/// "2026-11", or "11" where the year means nothing.
std::string month_key(const ColdReport& report, const ColdMonth& month) {
  if (is_of_every_year(report.period)) return fmt::format("{:02}", month.month);
  return fmt::format("{}-{:02}", month.year, month.month);
}

Json with_month(const ColdReport& report, const ColdMonth& month, const Json& figures) {
  Json json{{"month", month_key(report, month)}};
  json.update(figures);
  if (report.account.rain_mm)
    json["rain_mm"] = rounded((*report.account.rain_mm)[month.month - 1], 1.0);
  return json;
}

Json month_list(const ColdReport& report) {
  Json months = Json::array();
  if (report.kind == ColdReport::Kind::three) {
    const auto& w = report.winters;
    for (std::size_t m = 0; m < w[0].months.size(); ++m) {
      months.push_back(with_month(
          report, w[0].months[m],
          of_three(w[0].months[m].figures, w[1].months[m].figures, w[2].months[m].figures)));
    }
    return months;
  }
  const ColdTable& table =
      report.kind == ColdReport::Kind::exact ? report.winters.front() : report.mean;
  for (const ColdMonth& month : table.months) {
    months.push_back(with_month(report, month, plain(month.figures)));
  }
  return months;
}

Json total(const ColdReport& report) {
  const auto& w = report.winters;
  if (report.kind == ColdReport::Kind::three) return of_three(w[0].total, w[1].total, w[2].total);
  return plain(report.kind == ColdReport::Kind::exact ? w.front().total : report.mean.total);
}

Json winter_list(const ColdReport& report) {
  Json winters = Json::array();
  for (const ColdTable& table : report.winters) {
    Json json{{"winter", table.name},
              {"from", to_iso(table.window.first)},
              {"to", to_iso(table.window.last)},
              {"complete", is_complete(table)}};
    json["total"] = plain(table.total);
    json["missing_days"] = table.missing_days;
    winters.push_back(json);
  }
  return winters;
}

Json record_json(const RecordSummary& record) {
  Json gaps = Json::array();
  for (const DayWindow& gap : record.gaps) {
    gaps.push_back({{"from", to_iso(gap.first)}, {"to", to_iso(gap.last)}});
  }
  Json json{{"format", record.format}};
  if (!record.station.empty()) json["station"] = record.station;
  json["first"] = to_iso(record.first);
  json["last"] = to_iso(record.last);
  json["days"] = record.days;
  json["filled_hours"] = record.filled_hours;
  json["filled_days"] = record.filled_days;
  json["rejected"] = record.rejected;
  json["gap_count"] = record.gap_count;
  json["gaps"] = gaps;
  return json;
}

void csv_row(std::string& csv, const ColdTable& table, const std::string& month,
             const ColdFigures& figures, std::optional<double> rain_mm) {
  csv += fmt::format("{},{},{},{},{}", text_cell(table.name), to_iso(table.window.first),
                     to_iso(table.window.last), month, figures.days);
  for (const Measure& measure : measures) {
    csv += fmt::format(",{:g}", rounded(figures.*measure.value, measure.step));
  }
  csv += rain_mm ? fmt::format(",{:.0f}\r\n", rounded(*rain_mm, 1.0)) : ",\r\n";
}

Json pot_json(const ColdReport& report) {
  Json json = Json::object();
  if (!report.pot_name.empty()) json["name"] = report.pot_name;
  json["material"] = report.material;
  json["filled_litres"] = rounded(report.pot_volume.value(), 0.1);
  json["exposure"] = word_of(report.exposure);
  json["lag_hours"] = rounded(report.lag_hours, 0.001);
  json["daily_swing_left"] = rounded(report.swing_left, 0.01);
  return json;
}

}  // namespace

std::string cold_json(const ColdReport& report, const Request& request) {
  Json json = document("bulbwright.cold/1");
  json["request"] = input::pot_file_object(request);
  json["place"] = cold_place(report);
  if (report.latitude) json["latitude"] = rounded(*report.latitude, 0.01);
  json["basis"] = plain_spaces(cold_basis(report, TextStyle{}));
  put_account(json, report.account);
  json["pot"] = pot_json(report);
  const ColdPeriod& period = report.period;
  json["from"] = period.exact ? to_iso(period.exact->first) : to_iso(period.from);
  json["to"] = period.exact ? to_iso(period.exact->last) : to_iso(period.to);
  json["months"] = month_list(report);
  json["total"] = total(report);
  if (report.kind == ColdReport::Kind::yearly) {
    json["winters"] = winter_list(report);
    json["quantiles"] = {
        {"p10", plain(report.low)}, {"p50", plain(report.middle)}, {"p90", plain(report.high)}};
    for (auto& figures : json["quantiles"]) figures.erase("days");
  } else if (report.kind == ColdReport::Kind::exact) {
    const ColdTable& table = report.winters.front();
    json["measured_days"] = table.measured_days;
    json["expected_days"] = table.expected_days;
    json["missing_days"] = table.missing_days;
  }
  if (report.record) json["record"] = record_json(*report.record);
  json["notices"] = Json::array();
  for (const Notice& notice : report.notices) json["notices"].push_back(notice_json(notice));
  return document_text(json);
}

std::string cold_csv(const ColdReport& report) {
  std::string csv = "winter,from,to,month,days";
  for (const Measure& measure : measures) csv += fmt::format(",{}", measure.key);
  csv += ",rain_mm\r\n";
  for (const ColdTable& table : report.winters) {
    for (const ColdMonth& month : table.months) {
      std::optional<double> rain_mm;
      if (report.account.rain_mm) rain_mm = (*report.account.rain_mm)[month.month - 1];
      csv_row(csv, table, fmt::format("{}-{:02}", month.year, month.month), month.figures, rain_mm);
    }
    csv_row(csv, table, "total", table.total, std::nullopt);
  }
  return csv;
}

}  // namespace bulbwright::report
