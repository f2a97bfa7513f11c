#include "climate/recorded_winters.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include <fmt/core.h>

#include "climate/frost_climate.hpp"
#include "climate/hourly_temperature.hpp"

namespace bulbwright {
namespace {

constexpr double least_share = 0.9;

/// A record with its days found by date.
class Days {
 public:
  explicit Days(std::span<const RecordedDay> days) : days_{days} {}

  [[nodiscard]] const RecordedDay* find(Day day) const {
    const auto at = std::lower_bound(days_.begin(), days_.end(), day,
                                     [](const RecordedDay& a, Day b) { return a.day < b; });
    return at != days_.end() && at->day == day ? &*at : nullptr;
  }
  [[nodiscard]] Day first() const { return days_.front().day; }
  [[nodiscard]] Day last() const { return days_.back().day; }
  [[nodiscard]] bool hourly() const { return days_.front().hours.has_value(); }

 private:
  std::span<const RecordedDay> days_;
};

/// Half a year of cold and the spring after it.
DayWindow core_days(int season, Hemisphere hemisphere) {
  if (hemisphere == Hemisphere::north) return {Day{season, 10, 1}, Day{season + 1, 5, 31}};
  return {Day{season, 4, 1}, Day{season, 11, 30}};
}

double known_share(const Days& days, DayWindow window) {
  int known = 0;
  for (Day day = window.first; day <= window.last; ++day)
    known += days.find(day) != nullptr ? 1 : 0;
  return static_cast<double>(known) / (window.last - window.first + 1);
}

std::string season_name(int season, Hemisphere hemisphere) {
  if (hemisphere == Hemisphere::south) return fmt::format("{}", season);
  return fmt::format("{}/{:02}", season, (season + 1) % 100);
}

/// The same date in another year; 28 February for a 29th that it lacks.
Day in_year(Day day, int year) {
  return is_date(year, day.month(), day.day()) ? Day{year, day.month(), day.day()}
                                               : Day{year, 2, 28};
}

using Expected = std::function<DayExtremes(Day)>;

/// A winter over `window`, each day from the record where `source` names a day of it, else
/// expected.
Winter assemble(const Days& days, std::string name, double latitude, DayWindow window,
                const std::function<Day(Day)>& source, const Expected& expected) {
  Winter winter{std::move(name), latitude, window.first, {}, {}};
  std::vector<const RecordedDay*> found;
  for (Day day = window.first; day <= window.last; ++day) {
    found.push_back(days.find(source(day)));
    winter.days.push_back(found.back() != nullptr ? found.back()->air : expected(day));
  }
  if (!days.hourly()) return winter;
  std::vector<double> hours = hourly_temperatures(winter);
  for (std::size_t d = 0; d < found.size(); ++d) {
    if (found[d] == nullptr) continue;
    std::copy(found[d]->hours->begin(), found[d]->hours->end(),
              hours.begin() + static_cast<std::ptrdiff_t>(24 * d));
  }
  winter.hours = std::move(hours);
  return winter;
}

Expected from_winter(const Winter& winter) {
  return [winter](Day day) {
    const int i = std::clamp(day - winter.first, 0, static_cast<int>(winter.days.size()) - 1);
    return winter.days[static_cast<std::size_t>(i)];
  };
}

double mean_over(const Winter& winter, DayWindow window) {
  double sum = 0.0;
  int count = 0;
  for (Day day = std::max(window.first, winter.first); day <= std::min(window.last, winter.last());
       ++day, ++count) {
    sum += winter.days[static_cast<std::size_t>(day - winter.first)].mean_c();
  }
  return count > 0 ? sum / count : 0.0;
}

/// Picks the winters that stand for normal, mild and cold by their rank in warmth.
void rank(RecordedWinters& result, DayWindow core) {
  std::vector<std::size_t> order(result.winters.size());
  std::iota(order.begin(), order.end(), 0U);
  std::vector<double> means;
  for (const Winter& winter : result.winters) {
    means.push_back(rounded(mean_over(winter, core), 1e-6));
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return means[a] < means[b]; });
  const auto ranked = [&](double share) {
    const double at = share * static_cast<double>(order.size() - 1);
    return order[static_cast<std::size_t>(std::lround(at))];
  };
  result.cold = ranked(0.16);
  result.normal = ranked(0.5);
  result.mild = ranked(0.84);
}

class Builder {
 public:
  Builder(std::span<const RecordedDay> days, double latitude, int season,
          const std::optional<Place>& continued_with)
      : days_{days},
        latitude_{latitude},
        season_{season},
        hemisphere_{latitude < 0.0 ? Hemisphere::south : Hemisphere::north},
        window_{winter_days(season, hemisphere_)},
        core_{core_days(season, hemisphere_)} {
    if (continued_with) {
      place_ = *continued_with;
    } else if (const auto normals = RecordedNormals{days}.normals()) {
      place_.emplace();
      place_->normals = *normals;
      place_->latitude = latitude;
      own_normals_ = true;
    }
    if (place_) expected_ = winters_from_normals(*place_, season);
  }

  RecordedWinters build() {
    const DayWindow season = season_days(season_, hemisphere_);
    if (days_.last() >= season.first && days_.first() <= season.last) return running(season);
    return recorded_years();
  }

 private:
  /// The season planned is in the record.
  RecordedWinters running(DayWindow season) {
    RecordedWinters result;
    const auto same = [](Day day) { return day; };
    if (days_.last() < season.last) result.measured_until = days_.last();
    if (known_share(days_, season) > 0.99 && place_) {
      result.winters.push_back(assemble(days_, season_name(season_, hemisphere_), latitude_,
                                        window_, same, from_winter(expected_[0])));
      result.basis = {RemarkCode::from_this_season};
      return result;
    }
    if (place_ && !own_normals_) {
      for (const Winter& winter : expected_) {
        result.winters.push_back(
            assemble(days_, winter.name, latitude_, window_, same, from_winter(winter)));
      }
      result.mild = 1;
      result.cold = 2;
      result.recorded = false;
      result.basis = {RemarkCode::from_records_and_normals,
                      {},
                      {{DetailName::last, days_.last()}, {DetailName::place, place_->name}}};
      return result;
    }
    for (const int year : complete_seasons()) {
      if (year == season_) continue;
      const Winter past = shifted(year);
      result.winters.push_back(
          assemble(days_, past.name, latitude_, window_, same, from_winter(past)));
    }
    if (result.winters.empty()) refuse();
    result.basis = {RemarkCode::from_running_records,
                    {},
                    {{DetailName::last, days_.last()},
                     {DetailName::count, static_cast<int>(result.winters.size())}}};
    rank(result, core_);
    return result;
  }

  RecordedWinters recorded_years() {
    RecordedWinters result;
    for (const int year : complete_seasons()) result.winters.push_back(shifted(year));
    if (result.winters.empty() && place_ && !own_normals_) return normals_alone();
    if (result.winters.empty()) refuse();
    const std::string &first = result.winters.front().name, &last = result.winters.back().name;
    if (result.winters.size() == 1) {
      result.basis = {RemarkCode::from_one_winter, {}, {{DetailName::winter, first}}};
    } else {
      result.basis = {RemarkCode::from_winters,
                      {},
                      {{DetailName::count, static_cast<int>(result.winters.size())},
                       {DetailName::start, first},
                       {DetailName::last, last}}};
    }
    rank(result, core_);
    return result;
  }

  /// The record tells nothing of the season planned.
  [[nodiscard]] RecordedWinters normals_alone() const {
    RecordedWinters result;
    result.winters.assign(expected_.begin(), expected_.end());
    result.mild = 1;
    result.cold = 2;
    result.recorded = false;
    result.basis = {RemarkCode::from_normals_beside_records,
                    {},
                    {{DetailName::start, days_.first()},
                     {DetailName::last, days_.last()},
                     {DetailName::place, place_->name}}};
    return result;
  }

  [[nodiscard]] std::vector<int> complete_seasons() const {
    std::vector<int> seasons;
    for (int year = days_.first().year() - 1; year <= days_.last().year(); ++year) {
      if (known_share(days_, core_days(year, hemisphere_)) >= least_share) seasons.push_back(year);
    }
    return seasons;
  }

  /// A recorded season moved to the dates of the one planned.
  [[nodiscard]] Winter shifted(int year) const {
    const auto source = [&](Day day) { return in_year(day, day.year() + year - season_); };
    Expected expected = [](Day) { return DayExtremes{}; };
    if (place_) expected = from_winter(expected_[0]);
    if (!place_) {
      // Outside the core the nearest recorded day stands in; no plan needs more than that.
      expected = [&](Day day) {
        const Day wanted = source(day);
        for (int step = 1; step < 366; ++step) {
          for (const int side : {-1, 1}) {
            if (const RecordedDay* found = days_.find(wanted + side * step)) {
              return DayExtremes{found->air.tmin_c, found->air.tmax_c, false};
            }
          }
        }
        return DayExtremes{};
      };
    }
    return assemble(days_, season_name(year, hemisphere_), latitude_, window_, source, expected);
  }

  [[noreturn]] void refuse() const {
    throw InvalidValue{
        "records",
        fmt::format("the record, {} to {}, holds no whole winter ({}); give a site, a zone or "
                    "normals too, to continue it",
                    to_iso(days_.first()), to_iso(days_.last()),
                    hemisphere_ == Hemisphere::north ? "October to May" : "April to November")};
  }

  Days days_;
  double latitude_;
  int season_;
  Hemisphere hemisphere_;
  DayWindow window_, core_;
  std::optional<Place> place_;
  bool own_normals_ = false;
  std::array<Winter, 3> expected_;
};

}  // namespace

RecordedWinters winters_from_record(std::span<const RecordedDay> days, double latitude, int season,
                                    const std::optional<Place>& continued_with) {
  if (days.empty()) throw InvalidValue{"records", "no day of readings"};
  return Builder{days, latitude, season, continued_with}.build();
}

}  // namespace bulbwright
