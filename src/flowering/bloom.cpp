#include "flowering/bloom.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "climate/day_length.hpp"

namespace bulbwright {
namespace {

constexpr double air_share = 0.5;        // a shoot stands half in the air, half in the mix
constexpr double roots_level_c = 15.0;   // warmer mix makes no roots faster
constexpr double noses_above_c = 2.0;    // none break a mix that is frozen or nearly so
constexpr double clock_latitude = 45.0;  // whose day length tells the time of year
constexpr double own_light = 0.35;       // of the own latitude about that clock
constexpr int blast_days = 10;           // before the first flower
constexpr double reference_c = 10.0;     // flower_days is meant at this temperature
constexpr double least_wave_c = 2.0, most_wave_c = 22.0;
constexpr double one_side_80 = 1.2816;      // normal quantile of 0.9
constexpr double least_depth_factor = 0.7;  // however shallow
constexpr double most_depth_days = 30.0;
constexpr double margin = 1e-9;          // a sum this near its threshold has reached it
constexpr double indoor_light_h = 12.5;  // does best by the forcing tables (docs/bloom_model.md)

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

/// Mean of the days before day i on which the buds swell.
double mean_before(const BloomSeason& season, std::size_t i) {
  const std::size_t from = i - std::min(i, static_cast<std::size_t>(blast_days));
  double sum = 0.0;
  for (std::size_t d = from; d <= i; ++d) sum += season.days[d].mean_c;
  return sum / static_cast<double>(i - from + 1);
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

double first_spread(const BloomParameters& kind, const Wave& wave, double winters_sd, bool low) {
  const double stored = wave.stored_weeks >= 1.0 ? kind.stored_spread_days : 0.0;
  const double sd = std::hypot(std::hypot(kind.winter_share * winters_sd, kind.spread_days),
                               std::hypot(stored, depth_doubt * wave.depth_days));
  return one_side_80 * sd * (low ? low_confidence_factor : 1.0);
}

WaveForecast with_range(const BloomParameters& kind, const Wave& wave, double winters_sd, bool low,
                        std::optional<Day> planted) {
  const int days = static_cast<int>(std::lround(first_spread(kind, wave, winters_sd, low)));
  WaveForecast forecast{wave, wave.first - days, wave.last + days, winters_sd};
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

double BloomDay::heat_above(double base_c) const {
  const double at = std::clamp(base_c - least_base_c, 0.0, static_cast<double>(base_count - 1));
  const std::size_t below = std::min(static_cast<std::size_t>(at), base_count - 2);
  const double share = at - static_cast<double>(below);
  return heat[below] * (1.0 - share) + heat[below + 1] * share;
}

BloomSeason bloom_season(const PotWinter& winter) {
  BloomSeason season{winter.name, winter.first, {}};
  season.days.reserve(winter.days.size());
  for (std::size_t i = 0; i < winter.days.size(); ++i) {
    const PotDay& day = winter.days[i];
    const Day date = winter.first + static_cast<int>(i);
    // The swing of the mix about the mean of the shoot.
    const double swing = std::max(0.0, (day.max_c - day.min_c) / 2);
    const auto above = [&](double mean, double base_c) {
      return mean_over_anomalies(mean, day.anomaly_sd_k, [&](double t) {
        return degree_days(t - swing, t + swing, base_c);
      });
    };
    BloomDay felt;
    felt.mean_c = air_share * day.air_mean_c + (1.0 - air_share) * day.mean_c;
    const double too_warm = above(felt.mean_c, level_above_c);
    for (std::size_t b = 0; b < base_count; ++b) {
      felt.heat[b] = above(felt.mean_c, least_base_c + static_cast<double>(b)) - too_warm;
    }
    felt.root_heat = above(day.mean_c, 0.0) - above(day.mean_c, roots_level_c);
    const double clock = winter.latitude < 0 ? -clock_latitude : clock_latitude;
    felt.day_length_h =
        day_length_hours(clock + own_light * (winter.latitude - clock), date.day_of_year());
    felt.cold_hours = day.cold_hours;
    felt.cold_kept = day.cold_kept;
    season.days.push_back(felt);
  }
  return season;
}

BloomSeason indoor_season(Day first, int days, Celsius temperature) {
  const double t = temperature.value();
  BloomDay day;
  day.mean_c = t;
  for (std::size_t b = 0; b < base_count; ++b) {
    day.heat[b] = std::max(0.0, std::min(t, level_above_c) - least_base_c - static_cast<double>(b));
  }
  day.root_heat = std::clamp(t, 0.0, roots_level_c);
  day.day_length_h = indoor_light_h;
  day.cold_hours = 24.0 * cold_response(t);
  day.cold_kept = std::pow(cold_kept_per_hour(t), 24.0);
  return {"indoors", first,
          std::vector<BloomDay>(static_cast<std::size_t>(std::max(days, 1)), day)};
}

Wave predict_wave(const BloomParameters& kind, const BloomSeason& season,
                  const BloomPlanting& planting) {
  Wave wave;
  wave.shoots = wave.first = wave.peak = wave.last = season.last();
  wave.stored_weeks = planting.stored.value();
  const double stored = std::max(0.0, planting.stored.value());
  // What was taken in store stays; what the pot gives comes on top and can be undone by warmth.
  const double before_planting = std::max(0.0, planting.cold.weeks().value());
  const double counted = before_planting + (kind.storage_credit - 1.0) * stored;
  const double relief = kind.storage_relief * std::min(1.0, stored / kind.relief_weeks);
  const double needed =
      kind.heat_sum * std::max(least_depth_factor, 1.0 + kind.depth_share * planting.deeper_cm);
  const double most_a_day = kind.heat_sum / kind.least_days;
  ColdState cold;
  double sum = planting.state == BulbState::in_growth ? kind.shoots_share * needed : 0.0;
  double roots = planting.state == BulbState::dry ? kind.rooting_heat : 0.0;
  bool shoots = false;
  const auto from = static_cast<std::size_t>(std::max(0, planting.planted - season.first));
  for (std::size_t i = from; i < season.days.size(); ++i) {
    const BloomDay& day = season.days[i];
    if (planting.grows_from && season.first + static_cast<int>(i) < *planting.grows_from) {
      roots -= day.root_heat;
      continue;
    }
    cold.add(day.cold_hours, day.cold_kept);
    const double natural = cold.weeks().value();
    const double before = sum;
    // Of the day on which the roots are made the rest is left for the shoot.
    const double rooted = roots <= 0.0            ? 1.0
                          : day.root_heat > roots ? 1.0 - roots / day.root_heat
                                                  : 0.0;
    roots -= day.root_heat;
    const double heat = day.heat_above(kind.base_c);
    if (heat > 0.0 && rooted > 0.0) {
      sum += rooted * std::min(most_a_day, heat * chill_rate(kind, counted + natural) *
                                               light_rate(kind, day.day_length_h, relief));
    }
    if (!shoots && reached(sum, kind.shoots_share * needed) &&
        (day.mean_c > noses_above_c || reached(sum, needed))) {
      shoots = true;
      wave.shoots = season.first + static_cast<int>(i);
      wave.cold = Weeks{before_planting + natural};
    }
    if (!reached(sum, needed)) continue;
    if (mean_before(season, i) > kind.blast_c) {
      wave.blasted = true;
      wave.stored_weeks = 0.0;
      break;
    }
    const double first = meeting(i, before, sum, needed);
    const WaveCourse course = follow_wave(kind, season, first);
    const auto date = [&](double x) {
      return season.first + static_cast<int>(std::floor(x + margin));
    };
    wave.first_exact = season.first.serial() + first;
    wave.peak_exact = season.first.serial() + course.peak;
    wave.first = season.first + static_cast<int>(i);
    wave.peak = std::max(wave.first, date(course.peak));
    wave.last = std::max(wave.peak, date(course.last));
    wave.flowers = true;
    wave.depth_days =
        std::min(most_depth_days, std::abs(needed - kind.heat_sum) / std::max(sum - before, 1e-9));
    break;
  }
  if (!shoots) wave.cold = Weeks{before_planting + cold.weeks().value()};
  const bool chilled = wave.cold.value() >= planting.least.value() - margin;
  wave.confidence = chilled && wave.flowers ? BloomConfidence::ordinary : BloomConfidence::low;
  return wave;
}

WaveForecast forecast_of_three(const BloomParameters& kind, const Wave& normal, const Wave& mild,
                               const Wave& cold, std::optional<Day> planted) {
  const bool low = normal.confidence == BloomConfidence::low ||
                   mild.confidence == BloomConfidence::low ||
                   cold.confidence == BloomConfidence::low;
  const double half = (cold.first_exact - mild.first_exact) / 2;
  return with_range(kind, normal, normal.flowers && mild.flowers && cold.flowers ? half : 0.0, low,
                    planted);
}

WaveForecast forecast_of_years(const BloomParameters& kind, std::span<const Wave> years,
                               std::optional<Day> planted) {
  std::vector<Wave> sorted(years.begin(), years.end());
  std::ranges::stable_sort(sorted, {}, &Wave::first);
  double mean = 0.0, squares = 0.0;
  bool low = false, all_flower = true;
  for (const Wave& wave : sorted) mean += wave.first_exact / static_cast<double>(sorted.size());
  for (const Wave& wave : sorted) {
    squares += (wave.first_exact - mean) * (wave.first_exact - mean);
    low = low || wave.confidence == BloomConfidence::low;
    all_flower = all_flower && wave.flowers;
  }
  const auto n = static_cast<double>(sorted.size());
  // A year without a flower has no day of its own.
  const double sd = sorted.size() > 1 && all_flower ? std::sqrt(squares / (n - 1.0)) : 0.0;
  return with_range(kind, sorted[(sorted.size() - 1) / 2], sd, low, planted);
}

}  // namespace bulbwright
