#include "cli/cold_command.hpp"

#include <algorithm>
#include <array>
#include <memory>

#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/common_options.hpp"
#include "cli/pot_options.hpp"
#include "cold/cold_table.hpp"
#include "input/place_resolver.hpp"
#include "input/records_reader.hpp"
#include "input/resolve.hpp"
#include "report/cold_report.hpp"

namespace bulbwright::cli {
namespace {

/// Normals are the same in every year; a winter without 29 February stands for them.
constexpr int any_year = 2026;
constexpr int longest_period_days = 366;

struct ColdOptions {
  CommonOptions common;
  std::optional<std::string> file;
  PotOptions pot;
  std::string from, to;
};

/// A day, or a day of every year.
struct End {
  std::optional<Day> day;
  std::optional<MonthDay> yearly;
};

End parse_end(const char* option, const std::string& text) {
  try {
    if (text.size() == 5) return {std::nullopt, parse_month_day(text)};
    return {parse_day(text), std::nullopt};
  } catch (const InvalidValue& fault) {
    throw InvalidValue{option, fault.expectation()};
  }
}

ColdPeriod parse_period(const ColdOptions& options, Hemisphere hemisphere) {
  ColdPeriod period = half_year(hemisphere);
  if (options.from.empty() && options.to.empty()) return period;
  if (options.from.empty() || options.to.empty()) {
    throw InvalidValue{options.from.empty() ? "--from" : "--to",
                       "missing; --from and --to go together"};
  }
  const End from = parse_end("--from", options.from), to = parse_end("--to", options.to);
  if (from.day.has_value() != to.day.has_value()) {
    throw InvalidValue{"--to",
                       "one end has a year, the other none; give both as dates, or both as "
                       "days of every year such as 11-01"};
  }
  if (from.yearly) {
    period.from = *from.yearly;
    period.to = *to.yearly;
    return period;
  }
  if (*to.day < *from.day) {
    throw InvalidValue{"--to",
                       fmt::format("{} is before --from, {}", to_iso(*to.day), to_iso(*from.day))};
  }
  period.exact = DayWindow{*from.day, *to.day};
  return period;
}

/// One winter over the days asked for and the lead of the pot, from normals.
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

void note(report::ColdReport& report, const char* code, Severity severity, std::string text) {
  report.notices.push_back({code, severity, std::move(text)});
}

void from_normals(report::ColdReport& report, const Place& place, const ColdPeriod& period,
                  const PotThermal& pot) {
  const DayWindow window = period.exact ? *period.exact : period.starting_in(any_year);
  if (window.last - window.first + 1 > longest_period_days) {
    throw InvalidValue{"--to", "more than a year after --from; normals are the same every year"};
  }
  report.kind = report::ColdReport::Kind::three;
  for (const Winter& winter : winters_over(place, window)) {
    report.winters.push_back(cold_table(winter, window, pot, report.exposure));
  }
  const auto deviation = winter_deviation_k(place);
  double apart = 0.0;
  for (const double k : deviation) apart += k / 12.0;
  report.basis = place.stations > 0
                     ? fmt::format(
                           "the normals of {} stations; mild and cold lie {:.1f} °C from the "
                           "normal winter",
                           place.stations, rounded(apart, 0.1))
                     : fmt::format(
                           "monthly normals ({}); mild and cold lie {:.1f} °C from the normal "
                           "winter",
                           place.source, rounded(apart, 0.1));
  if (place.stations > 0) {
    note(report, "zone-alone", Severity::note,
         fmt::format(
             "A zone tells only the lowest temperature of a year: its stations differ by "
             "{:.1f} °C (one standard deviation) in January and {:.1f} °C in July beside the "
             "{:.1f} °C from year to year. A site or your own normals narrow every figure.",
             rounded(place.spread_k[0], 0.1), rounded(place.spread_k[6], 0.1),
             rounded(year_to_year_sd_k(place.normals), 0.1)));
  }
  if (!place.note.empty()) {
    note(report, "zone-stations", Severity::note, fmt::format("About this zone: {}.", place.note));
  }
  note(report, "normals-no-winter", Severity::note,
       "Normals hold no cold or warm spells: hours at 0-7.2 °C can be wrong by a factor of two, "
       "portions by a tenth. Records of real winters do better.");
  const auto& totals = report.winters;
  const double best = std::max(
      {totals[0].total.cold_weeks, totals[1].total.cold_weeks, totals[2].total.cold_weeks});
  if (rounded(best, 0.1) <= 0.0) {
    note(report, "no-natural-cold", Severity::warning,
         "There is no natural cold here: all of it must come from the refrigerator.");
  }
}

void note_frost(report::ColdReport& report, const Place& place, const PotThermal& pot) {
  const double low = lowest_in_frost(place, pot, report.exposure).value();
  if (low >= roots_hurt_below_c) return;
  note(report, "pot-freezes", Severity::warning,
       fmt::format(
           "In a usual year's hardest frost (air {:.0f} °C) the mix of this pot falls to about "
           "{:.0f} °C; roots in pots are hurt below -4 °C. Shelter it, or sink it in the "
           "ground.",
           rounded(annual_low(place).value(), 1.0), rounded(low, 1.0)));
}

std::string winter_name(DayWindow window) {
  if (window.first.year() == window.last.year()) return fmt::format("{}", window.first.year());
  return fmt::format("{}/{:02}", window.first.year(), window.last.year() % 100);
}

void note_record(report::ColdReport& report) {
  const RecordSummary& record = *report.record;
  if (record.filled_hours > 0 || record.filled_days > 0) {
    note(report, "gaps-filled", Severity::note,
         fmt::format("{} hours (gaps up to {}) and {} days (gaps up to {}) were filled by straight "
                     "lines.",
                     record.filled_hours, longest_filled_hours, record.filled_days,
                     longest_filled_days));
  }
  if (record.rejected > 0) {
    note(report, "values-rejected", Severity::note,
         fmt::format("{} values that failed the station's own checks, or cannot be, were left out.",
                     record.rejected));
  }
  int missing = 0;
  for (const ColdTable& table : report.winters) missing += table.missing_days;
  if (missing > 0 && report.kind == report::ColdReport::Kind::exact) {
    note(report, "days-missing", Severity::warning,
         fmt::format("{} of the days have no readings: the totals are too low.", missing));
  }
}

/// The period of a record needs its latitude, which a NOAA file tells only when it is read.
class RecordRun {
 public:
  RecordRun(const ColdOptions& options, const input::LocatedRequest& asked,
            const std::optional<Place>& place, const PotThermal& pot)
      : options_{options}, asked_{asked}, place_{place}, pot_{pot} {
    latitude_ = input::latitude_of(asked, place);
  }

  void run(report::ColdReport& report, input::InputFiles& inputs) {
    report.record = input::read_records(
        input::records_path(asked_), inputs,
        [&](const RecordedDay& day, const RecordSummary& so_far) { take(day, so_far); });
    report.latitude = latitude_;
    report.winters = survey_->finish();
    if (period_.exact) {
      exact(report);
    } else {
      yearly(report);
    }
    report.basis = basis(report);
    note_record(report);
  }

  [[nodiscard]] const ColdPeriod& period() const { return period_; }

 private:
  void take(const RecordedDay& day, const RecordSummary& so_far) {
    if (!survey_) start(so_far, day.hours.has_value());
    survey_->add(day);
  }

  void start(const RecordSummary& so_far, bool hourly) {
    if (!latitude_) latitude_ = so_far.latitude;
    const bool dated = !options_.from.empty();
    if (!latitude_ && !(hourly && dated)) {
      throw InvalidValue{"--latitude",
                         "missing; daily records need the latitude, in degrees, south "
                         "negative"};
    }
    const double latitude = latitude_.value_or(45.0);
    period_ = parse_period(options_, latitude < 0.0 ? Hemisphere::south : Hemisphere::north);
    std::function<DayExtremes(Day)> expected;
    if (place_ && period_.exact) {
      const auto winters = winters_over(*place_, *period_.exact);
      expected = [winter = winters[0]](Day day) {
        const int last = static_cast<int>(winter.days.size()) - 1;
        return winter.days[static_cast<std::size_t>(std::clamp(day - winter.first, 0, last))];
      };
    }
    survey_.emplace(period_, latitude, pot_, asked_.request.place->exposure, std::move(expected));
  }

  void exact(report::ColdReport& report) const {
    report.kind = report::ColdReport::Kind::exact;
    const DayWindow window = *period_.exact;
    const RecordSummary& record = *report.record;
    if (!place_ && (window.first < record.first || window.last > record.last)) {
      throw InvalidValue{
          "--from",
          fmt::format("the record covers {} to {}, not all of {} to {}; give --site, --zone "
                      "or other days",
                      to_iso(record.first), to_iso(record.last), to_iso(window.first),
                      to_iso(window.last))};
    }
    if (report.winters.empty()) {
      throw InvalidValue{"--from", "none of the days has readings"};
    }
    report.winters.front().name = winter_name(window);
  }

  void yearly(report::ColdReport& report) const {
    report.kind = report::ColdReport::Kind::yearly;
    std::vector<ColdTable> complete;
    for (ColdTable& table : report.winters) {
      table.name = winter_name(table.window);
      if (is_complete(table)) complete.push_back(table);
    }
    if (complete.empty()) {
      throw InvalidValue{
          "--records",
          fmt::format(
              "the record, {} to {}, holds no whole winter from {} to {}; give --from and --to "
              "for the days it has",
              to_iso(report.record->first), to_iso(report.record->last), to_iso(period_.from),
              to_iso(period_.to))};
    }
    report.mean = mean_of(complete);
    report.low = quantile_of(complete, 0.1);
    report.middle = quantile_of(complete, 0.5);
    report.high = quantile_of(complete, 0.9);
  }

  [[nodiscard]] std::string basis(const report::ColdReport& report) const {
    const RecordSummary& record = *report.record;
    std::string text = fmt::format("{} records, {} to {}", record.format, to_iso(record.first),
                                   to_iso(record.last));
    if (report.kind == report::ColdReport::Kind::exact) {
      const int expected = report.winters.front().expected_days;
      if (expected > 0) {
        text += fmt::format("; {} days filled or from the normals{}", expected,
                            place_ ? fmt::format(" of {}", place_->name) : "");
      }
    }
    return text;
  }

  const ColdOptions& options_;
  const input::LocatedRequest& asked_;
  const std::optional<Place>& place_;
  const PotThermal& pot_;
  std::optional<double> latitude_;
  ColdPeriod period_;
  std::optional<ColdSurvey> survey_;
};

Pot pot_of(const Request& request) {
  if (request.pot.top || !request.pot.profile.empty()) return make_pot(request.pot);
  return example_pot();
}

CommandResult run(const ColdOptions& options, const Terminal& terminal, input::InputFiles& inputs) {
  const input::LocatedRequest asked =
      pot_request(options.file, options.pot, inputs, Need::whatever_is_given);
  const Request& request = asked.request;
  if (!request.place || (!request.place->zone && !request.place->site && !request.place->normals &&
                         !request.place->records_file)) {
    throw InvalidValue{"cold",
                       "no place is given; name one with --site, --zone or --records, or a "
                       "pot file with a place"};
  }
  const PlaceCatalogue places = input::load_places(options.common.data, inputs);
  const std::optional<Place> place = input::resolve_place(asked, places);
  const Pot pot = pot_of(request);
  const PotThermal thermal = pot_thermal(pot);

  report::ColdReport report;
  report.exposure = request.place->exposure;
  report.pot_litres = thermal.volume.value();
  report.pot = fmt::format(
      "{}{} pot of {:.0f} litres", pot.name.empty() ? "a " : fmt::format("\"{}\", a ", pot.name),
      pot.material.empty() ? "terracotta" : pot.material, rounded(report.pot_litres, 1.0));
  report.tau_hours = PotTemperature{thermal, report.exposure}.tau_hours();
  report.swing_left = lag_amplitude(report.tau_hours, 24.0);
  report.place = request.place->records_file ? "your records" : place->name;
  if (place) report.latitude = place->latitude;

  CommandResult result;
  result.out = options.common.out;
  ColdPeriod period;
  if (request.place->records_file) {
    RecordRun records{options, asked, place, thermal};
    records.run(report, inputs);
    period = records.period();
    if (!report.record->station.empty()) report.place = report.record->station;
    if (place) report.place = fmt::format("{}, continued with {}", report.place, place->name);
  } else {
    period = parse_period(options, hemisphere_of(*place));
    from_normals(report, *place, period, thermal);
  }
  if (place) note_frost(report, *place, thermal);
  report.from = period.exact ? to_iso(period.exact->first) : to_iso(period.from);
  report.to = period.exact ? to_iso(period.exact->last) : to_iso(period.to);

  if (options.common.format == "json") {
    result.document = report::cold_json(report);
  } else if (options.common.format == "csv") {
    result.document = report::cold_csv(report);
  } else {
    result.document = report::cold_text(report, text_style(options.common, terminal));
  }
  return result;
}

}  // namespace

Command cold_command() {
  auto options = std::make_shared<ColdOptions>();
  Command command{"cold", "What a winter gives a pot, month by month", {}, {}, {}};
  OptionGroup{command.options, ""}.text("file", options->file, "FILE",
                                        "pot file with place and pot (else the example pot)");
  PotOptionGroups groups;
  groups.dates = groups.layers = groups.storage = groups.winter = false;
  declare_pot(command.options, options->pot, groups);
  OptionGroup days{command.options, "Days"};
  days.text("--from", options->from, "DAY", "first day: 2026-11-01, or 11-01 of every year");
  days.text("--to", options->to, "DAY", "last day (by default of the winter half year)");
  declare_common(command.options, options->common, {"text", "json", "csv"});
  command.footer =
      "Example:\n  bulbwright cold --site \"San Francisco\" --from 2026-11-01 --to 2027-02-28\n\n"
      "Exit status: 0 done; 2 wrong input or usage; 3 writing failed.";
  command.run = [options](const Terminal& terminal, input::InputFiles& inputs) {
    return run(*options, terminal, inputs);
  };
  return command;
}

}  // namespace bulbwright::cli
