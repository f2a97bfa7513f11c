#include "climate/frost_climate.hpp"

#include <algorithm>

namespace bulbwright {
namespace {

constexpr int fewest_days_of_month = 20;
constexpr int fewest_days_of_year = 300;

}  // namespace

FrostClimate frost_climate(const Place& place) {
  const auto means = monthly_means(place.normals);
  const auto coldest =
      static_cast<std::size_t>(std::min_element(means.begin(), means.end()) - means.begin());
  return {place.latitude, static_cast<int>(coldest) + 1, place.normals.tmin_c[coldest],
          place.normals.tmax_c[coldest], annual_low(place)};
}

RecordedNormals::RecordedNormals(std::span<const RecordedDay> days) {
  for (const RecordedDay& day : days) add(day);
}

void RecordedNormals::add(const RecordedDay& day) {
  Month& month = months_[{day.day.year(), day.day.month()}];
  month.lowest_c = month.days == 0 ? day.air.tmin_c : std::min(month.lowest_c, day.air.tmin_c);
  month.tmin_sum_c += day.air.tmin_c;
  month.tmax_sum_c += day.air.tmax_c;
  ++month.days;
}

std::array<RecordedNormals::Month, 12> RecordedNormals::of_all_years() const {
  std::array<Month, 12> all{};
  for (const auto& [when, month] : months_) {
    Month& into = all[when.second - 1];
    into.days += month.days;
    into.tmin_sum_c += month.tmin_sum_c;
    into.tmax_sum_c += month.tmax_sum_c;
  }
  return all;
}

std::optional<MonthlyNormals> RecordedNormals::normals() const {
  const std::array<Month, 12> all = of_all_years();
  MonthlyNormals normals;
  for (std::size_t m = 0; m < 12; ++m) {
    if (all[m].days < fewest_days_of_month) return std::nullopt;
    normals.tmin_c[m] = all[m].tmin_sum_c / all[m].days;
    normals.tmax_c[m] = all[m].tmax_sum_c / all[m].days;
  }
  return normals;
}

std::optional<Celsius> RecordedNormals::annual_low(Hemisphere hemisphere) const {
  std::map<int, Month> years;
  for (const auto& [when, month] : months_) {
    Month& year = years[season_of(Day{when.first, when.second, 1}, hemisphere)];
    year.lowest_c = year.days == 0 ? month.lowest_c : std::min(year.lowest_c, month.lowest_c);
    year.days += month.days;
  }
  double sum = 0.0;
  int count = 0;
  for (const auto& [season, year] : years) {
    if (year.days < fewest_days_of_year) continue;
    sum += year.lowest_c;
    ++count;
  }
  if (count == 0) return std::nullopt;
  return Celsius{sum / count};
}

std::optional<FrostClimate> RecordedNormals::frost(double latitude,
                                                   const std::optional<Place>& place) const {
  Place known;
  known.latitude = latitude;
  if (const auto own = normals()) {
    known.normals = *own;
  } else if (place) {
    known.normals = place->normals;
  } else {
    const std::array<Month, 12> all = of_all_years();
    std::optional<FrostClimate> coldest;
    for (std::size_t m = 0; m < 12; ++m) {
      if (all[m].days < fewest_days_of_month) continue;
      const double tmin_c = all[m].tmin_sum_c / all[m].days;
      const double tmax_c = all[m].tmax_sum_c / all[m].days;
      if (coldest && coldest->tmin_c + coldest->tmax_c <= tmin_c + tmax_c) continue;
      coldest = FrostClimate{latitude, static_cast<int>(m) + 1, tmin_c, tmax_c};
    }
    if (!coldest) return std::nullopt;
    known.normals.tmin_c.fill(coldest->tmin_c);
    known.normals.tmax_c.fill(coldest->tmax_c);
    coldest->annual_low = estimated_annual_low(known);
    return coldest;
  }
  FrostClimate frost = frost_climate(known);
  const Hemisphere hemisphere = latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
  if (const auto low = annual_low(hemisphere)) {
    frost.annual_low = *low;
  } else if (place) {
    frost.annual_low = bulbwright::annual_low(*place);
  }
  return frost;
}

}  // namespace bulbwright
