#include "input/yearless.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/text.hpp"
#include "input/field_values.hpp"
#include "input/located_request.hpp"

namespace bulbwright::input {
namespace {

MonthDay month_day_of(Day day) {
  return {day.month(), day.day()};
}

Day day_in(MonthDay yearly, int season, Hemisphere hemisphere) {
  const DayWindow days = season_days(season, hemisphere);
  const auto in_year = [&](int year) {
    const bool there = is_date(year, yearly.month, yearly.day);
    return Day{year, yearly.month, there ? yearly.day : 28U};
  };
  const Day day = in_year(days.first.year());
  return day >= days.first ? day : in_year(days.last.year());
}

bool is_month_day(std::string_view text) {
  const std::string_view day = trimmed(text);
  return day.size() == 5 && day[2] == '-';
}

std::optional<MonthDay> read_month_day(const Field& field, std::string_view text, Faults& faults) {
  try {
    return parse_month_day(trimmed(text));
  } catch (const InvalidValue& fault) {
    faults.add(field, fault.what());
    return std::nullopt;
  }
}

}  // namespace

bool says_no_year(std::string_view text) {
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos) return is_month_day(text);
  return is_month_day(text.substr(0, dots)) && is_month_day(text.substr(dots + 2));
}

void read_plant(const Field& field, std::string_view text, LocatedRequest& asked, Faults& faults) {
  if (says_no_year(text) && is_month_day(text)) {
    asked.yearless.plant = read_month_day(field, text, faults);
  } else {
    asked.request.plant = read_day(field, text, faults);
  }
}

void read_flower(const Field& field, std::string_view text, LocatedRequest& asked, Faults& faults) {
  if (!says_no_year(text)) {
    asked.request.flower = read_window(field, text, faults);
    return;
  }
  const std::size_t dots = text.find("..");
  const auto first = read_month_day(field, text.substr(0, dots), faults);
  const auto last =
      dots == std::string_view::npos ? first : read_month_day(field, text.substr(dots + 2), faults);
  if (first && last) asked.yearless.flower = std::pair{*first, *last};
}

void forget_years(LocatedRequest& asked) {
  Request& request = asked.request;
  YearlessDays& yearless = asked.yearless;
  if (request.plant) {
    yearless.plant = month_day_of(*request.plant);
    yearless.plant_was = request.plant;
    request.plant.reset();
  }
  if (request.flower) {
    yearless.flower =
        std::pair{month_day_of(request.flower->first), month_day_of(request.flower->last)};
    yearless.flower_was = request.flower;
    request.flower.reset();
  }
  for (std::size_t i = 0; i < request.layers.size(); ++i) {
    if (request.layers[i].received)
      yearless.received.emplace_back(i, month_day_of(*request.layers[i].received));
  }
}

std::vector<std::string> settle_years(LocatedRequest& asked, int season, Hemisphere hemisphere) {
  Request& request = asked.request;
  const YearlessDays& yearless = asked.yearless;
  std::vector<std::string> moved;
  if (yearless.plant) {
    request.plant = day_in(*yearless.plant, season, hemisphere);
    if (yearless.plant_was && *yearless.plant_was != *request.plant) {
      moved.push_back(fmt::format("plant: {} is taken as {}", to_iso(*yearless.plant_was),
                                  to_iso(*request.plant)));
    }
  }
  if (yearless.flower) {
    request.flower = DayWindow{day_in(yearless.flower->first, season, hemisphere),
                               day_in(yearless.flower->second, season, hemisphere)};
    if (yearless.flower_was && *yearless.flower_was != *request.flower) {
      moved.push_back(fmt::format("flower: {} is taken as {}", to_iso(yearless.flower_was->first),
                                  to_iso(request.flower->first)));
    }
  }
  for (const auto& [layer, day] : yearless.received) {
    if (layer < request.layers.size())
      request.layers[layer].received = day_in(day, season, hemisphere);
  }
  asked.yearless = {};
  return moved;
}

}  // namespace bulbwright::input
