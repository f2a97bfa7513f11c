#include "report/cold_words.hpp"

#include <fmt/core.h>

#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

std::string record_basis(const ColdReport& report) {
  const RecordSummary& record = *report.record;
  std::string text =
      fmt::format("{} records, {} to {}", record.format, to_iso(record.first), to_iso(record.last));
  if (report.kind != ColdReport::Kind::exact) return text;
  const int expected = report.winters.front().expected_days;
  if (expected == 0) return text;
  return text + fmt::format("; {} days filled or from the normals{}", expected,
                            report.place ? fmt::format(" of {}", report.place->name) : "");
}

}  // namespace

std::string cold_place(const ColdReport& report) {
  if (!report.record) return report.place->name;
  if (report.kind == ColdReport::Kind::three) return report.place->name;
  const std::string& station = report.record->station;
  const std::string records = station.empty() ? "your records" : station;
  return report.place ? fmt::format("{}, continued with {}", records, report.place->name) : records;
}

std::string cold_basis(const ColdReport& report, const TextStyle& style) {
  const bool compared = report.record && report.kind == ColdReport::Kind::three;
  if (report.record && !compared) return record_basis(report);
  const Place& place = *report.place;
  const std::string normals = place.stations > 0
                                  ? fmt::format("the normals of {} stations", place.stations)
                                  : fmt::format("monthly normals ({})", place.source);
  const std::string basis = fmt::format("{}; mild and cold lie {} from the normal winter", normals,
                                        difference_text(Kelvins{report.winters_apart_k}, style));
  if (!compared) return basis;
  return fmt::format("{}; the {}, hold no whole winter", basis, record_basis(report));
}

std::string cold_pot(const ColdReport& report, const TextStyle& style) {
  return fmt::format(
      "{} {} pot of {}", report.pot_name.empty() ? "a" : fmt::format("\"{}\", a", report.pot_name),
      report.material, volume_text(Litres{rounded(report.pot_volume.value(), 1.0)}, style));
}

std::string cold_rain(const ColdReport& report, const TextStyle& style) {
  if (!report.account.water) return "";
  const WinterWater& water = *report.account.water;
  return fmt::format("{} of rain in a month of winter, {} dries off: {} {} winter",
                     rain_text(water.fallen_mm_a_month, style),
                     rain_text(water.evaporation_mm_a_month, style),
                     water.rain == WinterRain::ordinary ? "an" : "a", word_of(water.rain));
}

bool is_of_every_year(const ColdPeriod& period) {
  return !period.exact;
}

}  // namespace bulbwright::report
