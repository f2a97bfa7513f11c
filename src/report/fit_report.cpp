#include "report/fit_report.hpp"

#include <cmath>

#include <fmt/core.h>

#include "report/common_json.hpp"
#include "report/section_json.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// A clearance for JSON; null where there is nothing to measure.
Json clearance(Millimetres length) {
  if (!std::isfinite(length.value())) return nullptr;
  // Cut, not rounded up: a printed clearance never exceeds the true one.
  return rounded(std::floor(length.value() * 1000.0 + 1e-6) / 1000.0, 0.001);
}

std::string outline_text(const Section& section, const TextStyle& style) {
  const std::string length = fine_length_text(section.length, style),
                    width = fine_length_text(section.width, style);
  switch (section.shape) {
    case Shape::round:
      return fmt::format("round, {} across", length);
    case Shape::half_round:
      return fmt::format("half-round, {} along the flat side, {} deep", length, width);
    case Shape::oval:
    case Shape::rectangle:
      break;
  }
  return fmt::format("{}, {} by {}", word_of(section.shape), length, width);
}

std::string bulbs_text(std::size_t count) {
  return fmt::format("{} {}", count, count == 1 ? "bulb" : "bulbs");
}

/// Own bulbs that found no place: what is proven is told from what was only not found.
/// Nearer bulbs are as good as touching.
constexpr Millimetres touching{3.0};

std::string refusal(const FitReport& report, const TextStyle& style) {
  const Packing& packing = report.packing;
  const auto asked = static_cast<std::size_t>(report.asked);
  if (packing.upper_bound == 0) return "No bulb fits so far from the wall.\n";
  const std::string between = fine_length_text(touching, style) + " between them";
  if (packing.upper_bound < asked) {
    return fmt::format("{} do not fit with {}: no layout can hold more than {} ({}).\n",
                       bulbs_text(asked), between, packing.upper_bound, packing.bound_name);
  }
  return fmt::format("No layout found for {} with {}.\n", bulbs_text(asked), between);
}

std::string count_text(const FitReport& report, const TextStyle& style) {
  const std::size_t count = report.packing.bulbs.size();
  const char* does =
      report.own_count ? (count == 1 ? "stands" : "stand") : (count == 1 ? "fits" : "fit");
  if (count == 1) return fmt::format("1 bulb {}.\n", does);
  const char* how = report.pattern == Pattern::rings  ? " in rings"
                    : report.pattern == Pattern::rows ? " in rows"
                                                      : "";
  return fmt::format("{} {}{}, {} apart or more.\n", bulbs_text(count), does, how,
                     fine_length_text(report.packing.gap, style));
}

/// What to set where, for a pattern; else what patterns would hold.
std::string pattern_text(const FitReport& report) {
  if (report.pattern == Pattern::dense) {
    if (report.packing.bulbs.size() < 3) return {};
    return fmt::format("Laid by eye, rings hold {}, rows {} (--pattern rings, --pattern rows).\n",
                       report.in_rings, report.in_rows);
  }
  std::string text = report.pattern == Pattern::rings ? "From the rim inwards: "
                     : report.upright                 ? "Across the length, from one end: "
                                                      : "Along the length, from one side: ";
  for (std::size_t i = 0; i < report.sets.size(); ++i) {
    text += fmt::format("{}{}", i > 0 ? ", " : "", report.sets[i]);
  }
  text += ".\n";
  const std::size_t count = report.packing.bulbs.size();
  if (count < report.dense_count) {
    text += fmt::format("{} fewer than the densest layout found, which holds {}.\n",
                        report.dense_count - count, report.dense_count);
  } else {
    text += "As many as the densest layout found.\n";
  }
  return text;
}

}  // namespace

std::string fit_json(const FitReport& report) {
  Json positions = Json::array();
  for (const PlacedBulb& bulb : report.packing.bulbs) {
    positions.push_back(
        Json{{"x_mm", rounded(bulb.x_mm, 1e-6)}, {"y_mm", rounded(bulb.y_mm, 1e-6)}});
  }
  Json json = document("bulbwright.fit/1");
  json["request"] = flags_json(report.request);
  json["section"] = section_json(report.section);
  json["bulb_mm"] = rounded(report.bulb.value(), 0.001);
  json["gap_mm"] = clearance(report.packing.gap);
  json["wall_mm"] = rounded(report.wall.value(), 0.001);
  json["count"] = report.packing.bulbs.size();
  json["upper_bound"] = report.packing.upper_bound;
  json["bound"] = report.packing.bound_name;
  json["pattern"] = word_of(report.pattern);
  json["sets"] = report.sets;
  if (!report.own_count) {
    json["dense_count"] = report.dense_count;
    json["rings_count"] = report.in_rings;
    json["rows_count"] = report.in_rows;
  }
  json["positions"] = std::move(positions);
  json["least_gap_mm"] = clearance(report.packing.least_gap);
  json["least_wall_mm"] = clearance(report.packing.least_wall);
  return document_text(json);
}

namespace {

/// Hundredths, or millionths where a layout needs them.
std::string position(double mm) {
  const bool hundredths = std::fabs(mm - rounded(mm, 0.01)) < 1e-7;
  return fmt::format("{:.{}f}", rounded(mm, 1e-6), hundredths ? 2 : 6);
}

}  // namespace

std::string fit_csv(const FitReport& report) {
  std::string csv = "x_mm,y_mm\r\n";
  for (const PlacedBulb& bulb : report.packing.bulbs) {
    csv += fmt::format("{},{}\r\n", position(bulb.x_mm), position(bulb.y_mm));
  }
  return csv;
}

std::string fit_text(const FitReport& report, const TextStyle& style) {
  const Packing& packing = report.packing;
  std::string text = fmt::format(
      "Outline: {}\nBulbs: {} across, {} from the wall\n", outline_text(report.section, style),
      fine_length_text(report.bulb, style), fine_length_text(report.wall, style));
  if (report.own_count && packing.bulbs.empty()) {
    return text + refusal(report, style);
  }
  text += count_text(report, style);
  if (!report.own_count) {
    text += pattern_text(report);
    text += fmt::format("No layout can hold more than {} ({}).\n", packing.upper_bound,
                        packing.bound_name);
  }
  if (packing.bulbs.empty()) return text;
  const bool inches = style.units == Units::inches;
  text +=
      fmt::format("\nPlaces, from the {}, in {}:\n",
                  report.section.shape == Shape::half_round ? "middle of the flat side" : "centre",
                  inches ? "inches" : "mm");
  const std::size_t per_line = static_cast<std::size_t>(std::max(1, style.width / 20));
  for (std::size_t i = 0; i < packing.bulbs.size(); ++i) {
    const PlacedBulb& bulb = packing.bulbs[i];
    text += inches
                ? fmt::format("{:>8.2f}{:>8.2f}", rounded(bulb.x_mm / millimetres_per_inch, 0.01),
                              rounded(bulb.y_mm / millimetres_per_inch, 0.01))
                : fmt::format("{:>8.1f}{:>8.1f}", rounded(bulb.x_mm, 0.1), rounded(bulb.y_mm, 0.1));
    text += (i + 1) % per_line == 0 || i + 1 == packing.bulbs.size() ? "\n" : "   ";
  }
  return text;
}

}  // namespace bulbwright::report
