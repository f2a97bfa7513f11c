#include "cold/hard_frost.hpp"

#include <algorithm>

#include "catalogue/taxon.hpp"
#include "climate/hourly_temperature.hpp"

namespace bulbwright {
namespace {

constexpr int frost_days = 5;
/// Of the frost of a pot on the ground what soil at that depth feels: at 15 cm it rarely falls
/// below -4 degC even in zone 4, -2 to -8 in the coldest places. from memory
constexpr double ground_share = 0.3;
constexpr int tender_from_zone = 8;

bool is_tender(const Taxon& taxon) {
  return taxon.hardiness_min_zone >= tender_from_zone;
}

/// Of kinds of which nothing is printed: as tulips, tender ones as freesias.
Figure lethal_of(const Taxon& taxon) {
  return taxon.frost_lethal_c.value_or(is_tender(taxon) ? Figure{-3.0, -4.0, -3.0}
                                                        : Figure{-10.0, -12.0, -10.0});
}

}  // namespace

Celsius lowest_in_frost(const FrostClimate& climate, const PotThermal& pot, Exposure exposure) {
  const double low = std::min(climate.annual_low.value(), climate.tmin_c);
  const int middle_of_month = (climate.month - 1) * 30 + 15;
  const DayExtremes before{climate.tmin_c, climate.tmax_c, false};
  const DayExtremes frost{low, low + climate.tmax_c - climate.tmin_c, false};
  const auto hours = [&](const DayExtremes& yesterday, const DayExtremes& today) {
    return hourly_temperatures(climate.latitude, middle_of_month, yesterday, today, today);
  };
  PotTemperature mix{pot, exposure};
  mix.add(hours(before, before));
  double lowest = mix.add(hours(before, frost)).min_c;
  for (int day = 1; day < frost_days; ++day)
    lowest = std::min(lowest, mix.add(hours(frost, frost)).min_c);
  // The ground below gives heat to what is sunk in it, and snow keeps it.
  if (exposure == Exposure::plunged) lowest = std::max(lowest, ground_share * lowest);
  return Celsius{rounded(lowest, 1.0)};
}

std::optional<Notice> frost_notice(const FrostClimate& climate, Celsius lowest_mix) {
  if (lowest_mix >= hurtful_frost) return std::nullopt;
  return Notice{NoticeCode::pot_freezes,
                Severity::warning,
                {},
                {{DetailName::air, Celsius{rounded(climate.annual_low.value(), 1.0)}},
                 {DetailName::lowest, lowest_mix},
                 {DetailName::hurtful, hurtful_frost}}};
}

Celsius frost_lethal(const Taxon& taxon) {
  return Celsius{lethal_of(taxon).value};
}

FrostHarm frost_harm(const Taxon& taxon, Celsius lowest_mix) {
  const Figure lethal = lethal_of(taxon);
  if (lowest_mix.value() >= lethal.value) return FrostHarm::none;
  return is_tender(taxon) && lowest_mix.value() < lethal.low ? FrostHarm::dies : FrostHarm::hurt;
}

}  // namespace bulbwright
