#include "cold/cold_answer.hpp"

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "base/error.hpp"
#include "climate/climate.hpp"
#include "climate/frost_climate.hpp"
#include "cold/cold_notices.hpp"
#include "cold/cold_survey.hpp"
#include "cold/hard_frost.hpp"

namespace bulbwright {
namespace {

/// Normals are the same in every year; a winter without 29 February stands for them.
constexpr int any_year = 2026;
constexpr int longest_period_days = 366;

/// What is known of the pot before any winter is looked at.
ColdReport about_pot(const ColdQuestion& question, const PotThermal& thermal) {
  ColdReport report;
  report.pot_name = question.pot.name;
  report.material = question.pot.material;
  report.pot_volume = thermal.volume;
  report.exposure = question.exposure;
  report.lag_hours = PotTemperature{thermal, question.exposure}.tau_hours();
  report.swing_left = lag_amplitude(report.lag_hours, 24.0);
  return report;
}

/// The normal, mild and cold winter over the days asked for and the lead of the pot.
std::array<Winter, 3> winters_over(const Place& place, DayWindow window) {
  const Hemisphere hemisphere = hemisphere_of(place);
  const int first = season_of(window.first - pot_lead_days, hemisphere);
  std::array<Winter, 3> winters = winters_from_normals(place, first);
  // A period longer than a season goes on with the next one's days.
  for (int season = first + 1; winters[0].last() < window.last; ++season) {
    const auto next = winters_from_normals(place, season);
    for (std::size_t i = 0; i < winters.size(); ++i) {
      const int have = winters[i].last() + 1 - next[i].first;
      winters[i].days.insert(winters[i].days.end(), next[i].days.begin() + have,
                             next[i].days.end());
    }
  }
  return winters;
}

void add(std::vector<Notice> more, ColdReport& report) {
  for (Notice& notice : more) report.notices.push_back(std::move(notice));
}

void add_frost(const FrostClimate& climate, const ColdQuestion& question, const PotThermal& thermal,
               ColdReport& report) {
  const Celsius lowest = lowest_in_frost(climate, thermal, question.exposure);
  if (auto notice = frost_notice(climate, lowest)) report.notices.push_back(std::move(*notice));
}

std::string winter_name(DayWindow window) {
  if (window.first.year() == window.last.year()) return fmt::format("{}", window.first.year());
  return fmt::format("{}/{:02}", window.first.year(), window.last.year() % 100);
}

/// Takes the days of a record. The period and the hours of a day depend on the latitude, which a
/// NOAA file tells only as it is read.
class RecordRun {
 public:
  RecordRun(const ColdQuestion& question, const std::optional<Place>& place,
            std::optional<double> latitude, const PotThermal& pot)
      : question_{question}, place_{place}, latitude_{latitude}, pot_{pot} {
    if (place) comparison_.emplace(*place);
  }

  void take(const RecordedDay& day, const RecordSummary& so_far) {
    if (!survey_) start(so_far, day.hours.has_value());
    survey_->add(day);
    normals_.add(day);
    if (comparison_) comparison_->add(day);
  }

  void finish(ColdReport& report) {
    if (!survey_) throw InvalidValue{"place.records", "holds no days"};
    report.latitude = latitude_;
    report.period = period_;
    report.winters = survey_->finish();
    if (comparison_) report.account.record_offset = comparison_->result();
    if (period_.exact) {
      exact(report);
    } else {
      yearly(report);
    }
  }

  /// Nothing where the latitude is not known.
  [[nodiscard]] std::optional<FrostClimate> frost() const {
    return latitude_ ? normals_.frost(*latitude_, place_) : std::nullopt;
  }

 private:
  void start(const RecordSummary& so_far, bool hourly) {
    if (!latitude_) latitude_ = so_far.latitude;
    const bool dated = question_.period.has_value();
    if (!latitude_ && !(hourly && dated)) {
      throw InvalidValue{"place.latitude",
                         "missing; daily records need the latitude, in degrees, south negative"};
    }
    const double latitude = latitude_.value_or(45.0);
    period_ = question_.period.value_or(
        half_year(latitude < 0.0 ? Hemisphere::south : Hemisphere::north));
    std::function<DayExtremes(Day)> expected;
    if (place_ && period_.exact) {
      const auto winters = winters_over(*place_, *period_.exact);
      expected = [winter = winters[0]](Day day) {
        const int last = static_cast<int>(winter.days.size()) - 1;
        return winter.days[static_cast<std::size_t>(std::clamp(day - winter.first, 0, last))];
      };
    }
    survey_.emplace(period_, latitude, pot_, question_.exposure, std::move(expected));
  }

  void exact(ColdReport& report) const {
    report.kind = ColdReport::Kind::exact;
    const DayWindow window = *period_.exact;
    const RecordSummary& record = *report.record;
    if (!place_ && (window.first < record.first || window.last > record.last)) {
      throw InvalidValue{
          "from",
          fmt::format("the record covers {} to {}, not all of {} to {}; give a site, a zone "
                      "or other days",
                      to_iso(record.first), to_iso(record.last), to_iso(window.first),
                      to_iso(window.last))};
    }
    if (report.winters.empty()) throw InvalidValue{"from", "none of the days has readings"};
    report.winters.front().name = winter_name(window);
  }

  void yearly(ColdReport& report) const {
    report.kind = ColdReport::Kind::yearly;
    std::vector<ColdTable> complete;
    for (ColdTable& table : report.winters) {
      table.name = winter_name(table.window);
      if (is_complete(table)) complete.push_back(table);
    }
    if (complete.empty() && place_) {
      report.winters.clear();
      report.kind = ColdReport::Kind::three;
      return;
    }
    if (complete.empty()) {
      throw InvalidValue{
          "place.records",
          fmt::format("the record, {} to {}, holds no whole winter from {} to {}; ask for the "
                      "days it has, from and to",
                      to_iso(report.record->first), to_iso(report.record->last),
                      to_iso(period_.from), to_iso(period_.to))};
    }
    report.mean = mean_of(complete);
    report.low = quantile_of(complete, 0.1);
    report.middle = quantile_of(complete, 0.5);
    report.high = quantile_of(complete, 0.9);
  }

  const ColdQuestion& question_;
  const std::optional<Place>& place_;
  std::optional<double> latitude_;
  const PotThermal& pot_;
  ColdPeriod period_;
  std::optional<ColdSurvey> survey_;
  std::optional<RecordComparison> comparison_;
  RecordedNormals normals_;
};

/// The three winters of the normals over the days asked for.
void answer_from_normals(const Place& place, const ColdQuestion& question,
                         const PotThermal& thermal, ColdReport& report) {
  report.latitude = place.latitude;
  report.period = question.period.value_or(half_year(hemisphere_of(place)));
  const DayWindow window =
      report.period.exact ? *report.period.exact : report.period.starting_in(any_year);
  if (window.last - window.first + 1 > longest_period_days) {
    throw InvalidValue{"to",
                       "more than a year after the first day; normals are the same every year"};
  }
  for (const Winter& winter : winters_over(place, window)) {
    report.winters.push_back(cold_table(winter, window, thermal, question.exposure));
  }
  for (const double k : winter_deviation_k(place)) report.winters_apart_k += k / 12.0;
  add(normals_notices(report), report);
}

}  // namespace

ColdReport cold_answer(const Place& place, const ColdQuestion& question) {
  const PotThermal thermal = pot_thermal(question.pot);
  ColdReport report = about_pot(question, thermal);
  report.place = place;
  report.account = account_of(place);
  answer_from_normals(place, question, thermal, report);
  add(place_notices(report.account), report);
  add_frost(frost_climate(place), question, thermal, report);
  return report;
}

ColdReport cold_answer(const RecordSource& record, const std::optional<Place>& place,
                       std::optional<double> latitude, const ColdQuestion& question) {
  const PotThermal thermal = pot_thermal(question.pot);
  ColdReport report = about_pot(question, thermal);
  report.place = place;
  if (place) report.account = account_of(*place);
  RecordRun run{question, place, latitude, thermal};
  report.record =
      record([&](const RecordedDay& day, const RecordSummary& so_far) { run.take(day, so_far); });
  run.finish(report);
  if (report.kind == ColdReport::Kind::three)
    answer_from_normals(*place, question, thermal, report);
  add(record_notices(report), report);
  add(place_notices(report.account), report);
  if (const auto frost = run.frost()) add_frost(*frost, question, thermal, report);
  return report;
}

}  // namespace bulbwright
