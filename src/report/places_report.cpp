#include "report/places_report.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "climate/climate.hpp"
#include "report/common_json.hpp"
#include "report/notice_text.hpp"
#include "report/place_json.hpp"
#include "report/section_json.hpp"
#include "report/spreadsheet.hpp"
#include "report/station_text.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

Json place_json(const Place& place) {
  Json json{{"name", place.name}};
  if (!place.country.empty()) json["country"] = place.country;
  json["latitude"] = rounded(place.latitude, 0.01);
  if (place.stations == 0) json["longitude"] = rounded(place.longitude, 0.01);
  if (place.elevation_m) json["elevation_m"] = rounded(*place.elevation_m, 1.0);
  if (!place.zone.empty()) {
    json["zone"] = place.zone;
    json["zone_estimated"] = place.zone_estimated;
  }
  json["maritime"] = is_maritime(place.normals);
  json["tmin_c"] = months_json(place.normals.tmin_c, 0.1);
  json["tmax_c"] = months_json(place.normals.tmax_c, 0.1);
  if (place.rain_mm) json["rain_mm"] = months_json(*place.rain_mm, 1.0);
  if (!place.blended_from.empty()) {
    json["blended_from"] = stations_json(place.blended_from);
    json["farther_stations"] = place.farther_stations;
    json["elevation_assumed"] = place.elevation_assumed;
    json["spread_k"] = months_json(place.spread_k, 0.1);
  }
  if (place.stations > 0) {
    json["stations"] = place.stations;
    json["spread_k"] = months_json(place.spread_k, 0.1);
    if (place.note) json["note"] = plain_text(*place.note);
  }
  json["year_to_year_k"] = rounded(year_to_year_sd_k(place.normals), 0.1);
  json["source"] = place.source;
  if (!place.confidence.empty()) json["confidence"] = place.confidence;
  return json;
}

std::string temperature(double t_c, const TextStyle& style) {
  const double shown = style.units == Units::inches ? t_c * 1.8 + 32.0 : t_c;
  return fmt::format("{:.1f}", rounded(shown, 0.1));
}

std::string position(const Place& place) {
  const std::string latitude = fmt::format("{:.1f}° {}", std::abs(rounded(place.latitude, 0.1)),
                                           place.latitude < 0 ? "S" : "N");
  if (place.stations > 0) return latitude + " in the mean";
  return fmt::format("{}, {:.1f}° {}", latitude, std::abs(rounded(place.longitude, 0.1)),
                     place.longitude < 0 ? "W" : "E");
}

std::string zone_text(const Place& place) {
  if (place.zone.empty()) return "-";
  return place.zone + (place.zone_estimated ? "~" : "");
}

/// All figures of one place.
Lines card(const Place& place, const TextStyle& style, int width) {
  Lines lines;
  append(lines, wrap(printable(place.name), width));
  lines.front() = bold(lines.front(), style);
  std::string facts = position(place);
  if (place.elevation_m)
    facts += ", " + height_text(Millimetres{1e3 * *place.elevation_m}, style) + " above the sea";
  if (place.elevation_assumed) facts += " (assumed, as the stations; tell the height)";
  if (!place.zone.empty() && place.stations == 0) {
    facts += fmt::format(", hardiness zone {}{}", place.zone,
                         place.zone_estimated ? " (estimated from the normals)" : "");
  }
  facts += is_maritime(place.normals) ? ", maritime" : ", continental";
  append(lines, wrap(facts, width));
  lines.emplace_back();
  const bool blended = !place.blended_from.empty();
  const bool with_spread = place.stations > 0 || blended;
  lines.push_back(
      pad_right(style.units == Units::inches ? "°F" : "°C", 6) + pad_left("night", 8) +
      pad_left("day", 8) + (place.rain_mm ? pad_left("rain", 12) : "") +
      (with_spread ? pad_left(blended ? "good to" : "spread between stations", blended ? 10 : 26)
                   : ""));
  for (std::size_t m = 0; m < 12; ++m) {
    const double spread = place.spread_k[m] * (style.units == Units::inches ? 1.8 : 1.0);
    lines.push_back(pad_right(month_name(static_cast<unsigned>(m) + 1), 6) +
                    pad_left(temperature(place.normals.tmin_c[m], style), 8) +
                    pad_left(temperature(place.normals.tmax_c[m], style), 8) +
                    (place.rain_mm ? pad_left(rain_text((*place.rain_mm)[m], style), 12) : "") +
                    (with_spread
                         ? pad_left(fmt::format("{:.1f}", rounded(spread, 0.1)), blended ? 10 : 26)
                         : ""));
  }
  lines.emplace_back();
  if (blended) {
    append(lines,
           hanging("Stations", stations_text(place.blended_from, place.farther_stations, style), 12,
                   width));
  }
  if (blended && place.blended_from.front().distance_km >= far_station_km)
    append(lines,
           hanging("Note", "The stations are far: the figures are good to what stands beside them",
                   12, width));
  append(lines, hanging("Source", printable(place.source), 12, width));
  if (!place.confidence.empty()) {
    append(lines, hanging("Confidence", printable(place.confidence), 12, width));
  }
  if (place.note)
    append(lines, hanging("Note", printable(remark_text(*place.note, style)), 12, width));
  return lines;
}

Lines list(const PlacesReport& report, const TextStyle& style, int width) {
  const bool near = !report.distance_km.empty();
  const int fixed = 4 + 6 + 8 + 8 + (near ? 12 : 0);
  int longest = 12;
  for (const Place& place : report.places)
    longest = std::max(longest, columns(printable(place.name)));
  const int name = std::min(longest, std::max(16, width - fixed - 2));
  Lines lines;
  lines.push_back(pad_right("", name) + pad_left("", 4) + pad_left("zone", 6) + pad_left("Jan", 8) +
                  pad_left("Jul", 8) + (near ? pad_left("away", 12) : ""));
  for (std::size_t i = 0; i < report.places.size(); ++i) {
    const Place& place = report.places[i];
    const auto means = monthly_means(place.normals);
    lines.push_back(
        pad_right(cut_to(printable(place.name), name, style), name) + pad_left(place.country, 4) +
        pad_left(zone_text(place), 6) + pad_left(temperature(means[0], style), 8) +
        pad_left(temperature(means[6], style), 8) +
        (near ? pad_left(distance_text(Millimetres{1e6 * report.distance_km[i]}, style), 12) : ""));
  }
  append(lines, wrap(fmt::format("Jan and Jul: mean temperature, {}. ~: zone estimated from the "
                                 "normals.",
                                 style.units == Units::inches ? "°F" : "°C"),
                     width));
  return lines;
}

std::string csv_row(const Place& place, std::optional<double> distance_km) {
  std::string row =
      fmt::format("{},{},{:g},{:g},{},{},{}", text_cell(place.name), text_cell(place.country),
                  rounded(place.latitude, 0.01), rounded(place.longitude, 0.01),
                  place.elevation_m ? fmt::format("{:g}", rounded(*place.elevation_m, 1.0)) : "",
                  place.zone, place.zone.empty() ? "" : fmt::format("{}", place.zone_estimated));
  for (const auto& values : {place.normals.tmin_c, place.normals.tmax_c}) {
    for (const double value : values) row += fmt::format(",{:.1f}", rounded(value, 0.1));
  }
  for (std::size_t m = 0; m < 12; ++m) {
    row += place.rain_mm ? fmt::format(",{:.0f}", rounded((*place.rain_mm)[m], 1.0)) : ",";
  }
  if (distance_km) row += fmt::format(",{:.1f}", rounded(*distance_km, 0.1));
  return row + fmt::format(",{},{}\r\n", text_cell(place.source), text_cell(place.confidence));
}

}  // namespace

std::string places_text(const PlacesReport& report, const TextStyle& style) {
  const int width = text_width(style);
  Lines lines;
  if (!report.profile && report.places.size() == 1 && report.distance_km.empty()) {
    lines = card(report.places.front(), style, width);
  } else {
    if (report.profile) {
      append(lines, card(*report.profile, style, width));
      lines.emplace_back();
    }
    append(lines,
           wrap(fmt::format("{}: {}", report.question,
                            counted(static_cast<int>(report.places.size()), "place", "places")),
                width));
    append(lines, list(report, style, width));
  }
  for (std::string& line : lines) line = in_style(line, style);
  return joined(lines);
}

std::string places_json(const PlacesReport& report) {
  Json json = document("bulbwright.places/1");
  json["request"] = flags_json(report.request);
  if (report.profile) json["profile"] = place_json(*report.profile);
  Json places = Json::array();
  for (std::size_t i = 0; i < report.places.size(); ++i) {
    Json place = place_json(report.places[i]);
    if (!report.distance_km.empty()) place["distance_km"] = rounded(report.distance_km[i], 0.1);
    places.push_back(std::move(place));
  }
  json["places"] = std::move(places);
  return document_text(json);
}

std::string places_csv(const PlacesReport& report) {
  const bool near = !report.distance_km.empty();
  std::string csv = "name,country,latitude,longitude,elevation_m,zone,zone_estimated";
  for (const char* stem : {"tmin_c", "tmax_c", "rain_mm"}) {
    for (int m = 1; m <= 12; ++m) csv += fmt::format(",{}_{:02}", stem, m);
  }
  csv += near ? ",distance_km,source,confidence\r\n" : ",source,confidence\r\n";
  // The profile of a position is a place like any other; that of a zone lies nowhere.
  if (report.profile && report.profile->stations == 0) {
    csv += csv_row(*report.profile, near ? std::optional{0.0} : std::nullopt);
  }
  for (std::size_t i = 0; i < report.places.size(); ++i) {
    csv += csv_row(report.places[i], near ? std::optional{report.distance_km[i]} : std::nullopt);
  }
  return csv;
}

}  // namespace bulbwright::report
