#include "input/records_reader.hpp"

#include <algorithm>
#include <optional>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/text.hpp"
#include "input/csv_stream.hpp"
#include "input/file_reader.hpp"
#include "input/record_columns.hpp"
#include "input/record_time.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t most_faults = 100;
constexpr double gsod_missing = 9999.9;

using Fields = std::vector<std::string_view>;

bool is_missing(std::string_view text) {
  return text.empty() || text == "NA" || text == "NaN" || text == "nan";
}

std::optional<double> number(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  return plain_number(text);
}

class RecordsReader {
 public:
  RecordsReader(std::string file, const DaySink& sink)
      : file_{std::move(file)}, days_{sink, summary_}, hours_{days_, summary_} {}

  void line(int line_number, const Fields& fields) {
    line_ = line_number;
    if (!columns_) {
      header_.assign(fields.begin(), fields.end());
      columns_ = find_record_columns(file_, fields);
      summary_.format = word_of(columns_->format);
      return;
    }
    if (fields.size() != columns_->fields) {
      fault(fmt::format("{} fields where the header has {}", fields.size(), columns_->fields));
      return;
    }
    if (fields[columns_->date] == header_[columns_->date]) return;  // files joined end to end
    if (is_noaa()) note_station(fields);
    if (columns_->format == RecordFormat::hourly) {
      hour(fields);
    } else {
      day(fields);
    }
  }

  [[nodiscard]] bool has_room() const { return faults_.size() < most_faults; }

  RecordSummary finish() {
    if (!columns_) throw InputError{{file_, 1, 1}, "empty; expected a header line"};
    if (!faults_.empty()) throw InputError{std::move(faults_)};
    hours_.finish();
    if (summary_.days == 0) {
      throw InputError{{file_, 0, 0}, "the records hold no whole day of readings"};
    }
    return summary_;
  }

 private:
  [[nodiscard]] bool is_noaa() const {
    return columns_->format == RecordFormat::ghcn_daily || columns_->format == RecordFormat::gsod;
  }

  void fault(const std::string& message) {
    if (has_room()) faults_.push_back({{file_, line_, 1}, message});
  }

  /// A missing value is empty; a value that is wrong is a fault, or counted in a NOAA file.
  std::optional<double> temperature(const Fields& fields, const TemperatureColumn& column) {
    const std::string_view text = trimmed(fields[column.index]);
    if (is_missing(text)) return std::nullopt;
    const auto value = number(text);
    if (!value) {
      fault(fmt::format("{}: {} is no temperature", header_[column.index], in_quotes(text)));
      return std::nullopt;
    }
    if (is_noaa() && !is_good(fields, column, text, *value)) return std::nullopt;
    double t_c = *value;
    if (column.unit == TemperatureUnit::fahrenheit) t_c = from_fahrenheit(*value).value();
    if (column.unit == TemperatureUnit::tenths_celsius) t_c = *value / 10.0;
    if (t_c >= least_air_c && t_c <= most_air_c) {
      ++summary_.readings;
      return t_c;
    }
    if (is_noaa()) {
      ++summary_.rejected;
    } else {
      fault(fmt::format("{}: {} is impossible for air; expected {} to {} degC",
                        header_[column.index], in_quotes(text), least_air_c, most_air_c));
    }
    return std::nullopt;
  }

  bool is_good(const Fields& fields, const TemperatureColumn& column, std::string_view text,
               double value) {
    if (columns_->format == RecordFormat::gsod) return value < gsod_missing;
    if (text.find('.') != std::string_view::npos) {
      fault(
          fmt::format("{}: {} has a decimal point; GHCN-Daily gives whole tenths of a degree; for "
                      "degrees name the columns tmin_c and tmax_c",
                      header_[column.index], in_quotes(text)));
      return false;
    }
    if (!column.attributes) return true;
    // "measurement flag,quality flag,source flag": a quality flag says that a check failed.
    const std::string_view flags = fields[*column.attributes];
    const std::size_t comma = flags.find(',');
    if (comma == std::string_view::npos || comma + 1 >= flags.size()) return true;
    const char quality = flags[comma + 1];
    if (quality == ',' || quality == ' ') return true;
    ++summary_.rejected;
    return false;
  }

  void note_station(const Fields& fields) {
    const std::string_view station = fields[*columns_->station];
    if (station_.empty()) {
      station_ = station;
      summary_.station = station;
      if (columns_->name && !trimmed(fields[*columns_->name]).empty()) {
        summary_.station = trimmed(fields[*columns_->name]);
      }
      if (columns_->latitude) summary_.latitude = number(trimmed(fields[*columns_->latitude]));
      if (summary_.latitude && !(*summary_.latitude >= -90.0 && *summary_.latitude <= 90.0)) {
        summary_.latitude.reset();
      }
    } else if (station != station_) {
      fault(fmt::format("a second station, {}, after {}; one station a file", in_quotes(station),
                        in_quotes(station_)));
    }
  }

  void day(const Fields& fields) {
    const auto time = read_time(fields);
    if (!time) return;
    if (last_day_ && time->day <= *last_day_) {
      if (is_noaa() && time->day == *last_day_) return;
      fault(fmt::format("{} stands after {}; rows must run forward in time, a day once",
                        to_iso(time->day), to_iso(*last_day_)));
      return;
    }
    last_day_ = time->day;
    const auto low = temperature(fields, *columns_->tmin);
    const auto high = temperature(fields, *columns_->tmax);
    if (!low || !high) return;
    if (*low <= *high + chill_tie) {
      days_.add({time->day, {*low, std::max(*low, *high), true}, {}});
    } else if (is_noaa()) {
      ++summary_.rejected;
    } else {
      fault(fmt::format("{}: {} is above {} of the same day, {}", header_[columns_->tmin->index],
                        in_quotes(fields[columns_->tmin->index]), header_[columns_->tmax->index],
                        in_quotes(fields[columns_->tmax->index])));
    }
  }

  void hour(const Fields& fields) {
    const auto time = read_time(fields);
    if (!time) return;
    if (!time->hour) {
      fault(
          fmt::format("{}: {} has no time of day; hourly readings need one, daily ones the columns "
                      "tmin_c and tmax_c",
                      header_[columns_->date], in_quotes(fields[columns_->date])));
      return;
    }
    const long at = 24L * time->day.serial() + *time->hour;
    if (last_hour_ && at < *last_hour_) {
      fault(fmt::format("{} stands after a later row; rows must run forward in time",
                        in_quotes(fields[columns_->date])));
      return;
    }
    const auto t_c = temperature(fields, *columns_->temperature);
    if (t_c) hours_.add(at, *t_c);
    last_hour_ = at;
  }

  std::optional<RecordTime> read_time(const Fields& fields) {
    try {
      if (!columns_->time) return parse_record_time(trimmed(fields[columns_->date]));
      const std::string_view time = trimmed(fields[*columns_->time]);
      if (time.find('-', 1) != std::string_view::npos && time.size() >= 10) {
        return parse_record_time(time);
      }
      return parse_record_time(fmt::format("{}T{}", trimmed(fields[columns_->date]), time));
    } catch (const InvalidValue& invalid) {
      fault(fmt::format("{}: {}", header_[columns_->date], invalid.what()));
      return std::nullopt;
    }
  }

  static constexpr double chill_tie = 1e-9;  // degF extremes that were equal before conversion

  std::string file_;
  RecordSummary summary_;
  DayFiller days_;
  HourFiller hours_;
  std::optional<RecordColumns> columns_;
  std::vector<std::string> header_;
  std::vector<InputFault> faults_;
  std::string station_;
  std::optional<Day> last_day_;
  std::optional<long> last_hour_;
  int line_ = 0;
};

}  // namespace

RecordSummary read_records(const std::string& path, InputFiles& inputs, const DaySink& sink) {
  const std::string name = path == "-" ? "<stdin>" : path;
  RecordsReader reader{name, sink};
  CsvStream lines{name, [&](int number, const Fields& fields) { reader.line(number, fields); }};
  read_blocks(path, inputs, [&](std::string_view block) {
    lines.add(block);
    return reader.has_room();
  });
  lines.finish();
  return reader.finish();
}

}  // namespace bulbwright::input
