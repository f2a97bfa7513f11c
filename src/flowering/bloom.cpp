#include "flowering/bloom.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "climate/day_length.hpp"

namespace bulbwright {
namespace {

constexpr double base_c = -1.0;    // growth ends here; chosen by error at places left out
constexpr double air_share = 0.5;  // a shoot stands half in the air, half in the mix
constexpr double full_relief_weeks = 8.0;
constexpr double reference_c = 10.0;  // flower_days is meant at this temperature
constexpr double least_wave_c = 2.0, most_wave_c = 22.0;
constexpr double one_side_80 = 1.2816;  // normal quantile of 0.9
constexpr double low_confidence_factor = 2.0;
constexpr double margin = 1e-9;          // a sum this near its threshold has reached it
constexpr double indoor_light_h = 12.5;  // does best by the forcing tables (docs/bloom.md)

/// Share of the full rate after c cold weeks.
double chill_rate(const BloomParameters& kind, double c) {
  if (kind.cold_scale <= 0.0) return 1.0;
  const double weeks = std::max(0.0, c / kind.cold_scale);
  return 1.0 / (1.0 + (1.0 / kind.unchilled_rate - 1.0) * std::exp(-weeks / kind.fold_weeks));
}

/// Share of the full rate at a day length, with the share of its effect that storage lifts.
double light_rate(const BloomParameters& kind, double day_length_h, double relief) {
  const double open =
      1.0 / (1.0 + std::exp(-(day_length_h - kind.half_light_h) / kind.light_width_h));
  const double rate = kind.dark_rate + (1.0 - kind.dark_rate) * open;
  return rate + relief * (1.0 - rate);
}

/// Share of the wave that passes in a day at this temperature.
double wave_rate(const BloomParameters& kind, double mean_c) {
  const double t = std::clamp(mean_c, least_wave_c, most_wave_c);
  return std::exp(kind.warmth_per_k * (t - reference_c)) / kind.flower_days;
}

/// The place in days at which a sum growing from `before` to `after` over day i meets `threshold`.
double meeting(std::size_t i, double before, double after, double threshold) {
  return static_cast<double>(i) + std::clamp((threshold - before) / (after - before), 0.0, 1.0);
}

bool reached(double sum, double threshold) {
  return sum >= threshold * (1.0 - margin);
}

/// Days from the season's first at which the wave has passed the peak's share and its end.
struct WaveCourse {
  double peak = 0.0, last = 0.0;
};

WaveCourse follow_wave(const BloomParameters& kind, const BloomSeason& season, double first) {
  WaveCourse course;
  double passed = 0.0, at = first;
  bool peaked = false;
  const auto day_of = [&](double x) {
    return std::min(static_cast<std::size_t>(x), season.days.size() - 1);
  };
  // Beyond the season's end its last day goes on: a wave always ends.
  for (;;) {
    const double rate = wave_rate(kind, season.days[day_of(at)].mean_c);
    const double step = std::floor(at) + 1.0 - at;
    if (!peaked && reached(passed + rate * step, kind.peak_share)) {
      course.peak = at + std::max(0.0, kind.peak_share - passed) / rate;
      peaked = true;
    }
    if (reached(passed + rate * step, 1.0)) {
      course.last = at + std::max(0.0, 1.0 - passed) / rate;
      return course;
    }
    passed += rate * step;
    at = std::floor(at) + 1.0;
  }
}

double first_spread(const BloomParameters& kind, double winters_sd, bool low) {
  const double sd = std::hypot(kind.winter_share * winters_sd, kind.spread_days);
  return one_side_80 * sd * (low ? low_confidence_factor : 1.0);
}

WaveForecast with_range(const BloomParameters& kind, const Wave& wave, double winters_sd, bool low,
                        std::optional<Day> planted) {
  const int days = static_cast<int>(std::lround(first_spread(kind, winters_sd, low)));
  WaveForecast forecast{wave, wave.first - days, wave.last + days};
  if (planted) forecast.earliest_first = std::max(forecast.earliest_first, *planted + 1);
  if (low) forecast.wave.confidence = BloomConfidence::low;
  return forecast;
}

}  // namespace

double degree_days(double min_c, double max_c, double above_c) {
  const double mean = (min_c + max_c) / 2 - above_c, swing = (max_c - min_c) / 2;
  if (mean >= swing) return std::max(mean, 0.0);
  if (mean <= -swing) return 0.0;
  const double angle = std::asin(-mean / swing);
  return (mean * (std::numbers::pi / 2 - angle) + swing * std::cos(angle)) / std::numbers::pi;
}

BloomSeason bloom_season(const PotWinter& winter) {
  BloomSeason season{winter.name, winter.first, {}};
  season.days.reserve(winter.days.size());
  for (std::size_t i = 0; i < winter.days.size(); ++i) {
    const PotDay& day = winter.days[i];
    const Day date = winter.first + static_cast<int>(i);
    // The swing of the mix about the mean of the shoot.
    const double swing = std::max(0.0, (day.max_c - day.min_c) / 2);
    const double growth = air_share * day.air_mean_c + (1.0 - air_share) * day.mean_c;
    const double heat = mean_over_anomalies(growth, day.anomaly_sd_k, [&](double t) {
      return degree_days(t - swing, t + swing, base_c);
    });
    season.days.push_back({growth, heat, day_length_hours(winter.latitude, date.day_of_year()),
                           day.cold_hours, day.cold_kept, day.measured});
  }
  return season;
}

BloomSeason indoor_season(Day first, int days, Celsius temperature) {
  const double t = temperature.value();
  const BloomDay day{t,
                     std::max(0.0, t - base_c),
                     indoor_light_h,
                     24.0 * cold_response(t),
                     std::pow(cold_kept_per_hour(t), 24.0),
                     false};
  return {"indoors", first,
          std::vector<BloomDay>(static_cast<std::size_t>(std::max(days, 1)), day)};
}

Wave predict_wave(const BloomParameters& kind, const BloomSeason& season,
                  const BloomPlanting& planting) {
  Wave wave;
  wave.shoots = wave.first = wave.peak = wave.last = season.last();
  const double stored = std::max(0.0, planting.stored.value());
  const double credit = (kind.storage_credit - 1.0) * stored;
  const double relief = kind.storage_relief * std::min(1.0, stored / full_relief_weeks);
  ColdState cold = planting.cold;
  double sum = 0.0;
  bool shoots = false;
  const auto from = static_cast<std::size_t>(std::max(0, planting.planted - season.first));
  const std::size_t rooted = from + static_cast<std::size_t>(std::max(0, planting.rooting_days));
  for (std::size_t i = from; i < season.days.size(); ++i) {
    const BloomDay& day = season.days[i];
    cold.add(day.cold_hours, day.cold_kept);
    const double before = sum;
    if (day.heat > 0.0 && i >= rooted) {
      sum += day.heat * chill_rate(kind, cold.weeks().value() + credit) *
             light_rate(kind, day.day_length_h, relief);
    }
    if (!shoots && reached(sum, kind.shoots_share * kind.heat_sum)) {
      shoots = true;
      wave.shoots = season.first + static_cast<int>(i);
      wave.cold = cold.weeks();
    }
    if (!reached(sum, kind.heat_sum)) continue;
    const double first = meeting(i, before, sum, kind.heat_sum);
    const WaveCourse course = follow_wave(kind, season, first);
    const auto date = [&](double x) {
      return season.first + static_cast<int>(std::floor(x + margin));
    };
    wave.flowers = true;
    wave.first_exact = season.first.serial() + first;
    wave.peak_exact = season.first.serial() + course.peak;
    wave.first = season.first + static_cast<int>(i);
    wave.peak = std::max(wave.first, date(course.peak));
    wave.last = std::max(wave.peak, date(course.last));
    break;
  }
  if (!shoots) wave.cold = cold.weeks();
  const bool chilled = wave.cold.value() >= planting.least.value() - margin;
  wave.confidence = chilled && wave.flowers ? BloomConfidence::ordinary : BloomConfidence::low;
  return wave;
}

WaveForecast forecast_of_three(const BloomParameters& kind, const Wave& normal, const Wave& mild,
                               const Wave& cold, std::optional<Day> planted) {
  const bool low = normal.confidence == BloomConfidence::low ||
                   mild.confidence == BloomConfidence::low ||
                   cold.confidence == BloomConfidence::low;
  const double half = std::abs(cold.first_exact - mild.first_exact) / 2;
  return with_range(kind, normal, normal.flowers && mild.flowers && cold.flowers ? half : 0.0, low,
                    planted);
}

WaveForecast forecast_of_years(const BloomParameters& kind, std::span<const Wave> years,
                               std::optional<Day> planted) {
  std::vector<Wave> sorted(years.begin(), years.end());
  std::ranges::stable_sort(sorted, {}, &Wave::first);
  double mean = 0.0, squares = 0.0;
  bool low = false;
  for (const Wave& wave : sorted) mean += wave.first_exact / static_cast<double>(sorted.size());
  for (const Wave& wave : sorted) {
    squares += (wave.first_exact - mean) * (wave.first_exact - mean);
    low = low || wave.confidence == BloomConfidence::low;
  }
  const auto n = static_cast<double>(sorted.size());
  const double sd = sorted.size() > 1 ? std::sqrt(squares / (n - 1.0)) : 0.0;
  return with_range(kind, sorted[(sorted.size() - 1) / 2], sd, low, planted);
}

}  // namespace bulbwright
