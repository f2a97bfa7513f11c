#include "input/records_reader.hpp"

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <unistd.h>

#include "base/error.hpp"
#include "climate/temperature_record.hpp"
#include "input/csv_stream.hpp"
#include "input/record_time.hpp"

using namespace bulbwright;

namespace {

/// A file that lasts as long as the object.
class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& text)
      : path_{(std::filesystem::temp_directory_path() /
               ("bulbwright-records-" + std::to_string(::getpid()) + ".csv"))
                  .string()} {
    std::ofstream{path_, std::ios::binary} << text;
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile() { std::filesystem::remove(path_); }
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

struct Read {
  std::vector<RecordedDay> days;
  RecordSummary summary;
};

Read read(const std::string& text) {
  const TemporaryFile file{text};
  Read result;
  input::InputFiles inputs;
  result.summary =
      input::read_records(file.path(), inputs,
                          [&](const RecordedDay& day, const auto&) { result.days.push_back(day); });
  return result;
}

std::string fault_of(const std::string& text) {
  try {
    read(text);
  } catch (const InputError& error) {
    const auto& fault = error.faults().front();
    return std::to_string(fault.place.line) + ": " + fault.message;
  }
  return "no fault";
}

std::string hourly(int days, double t_c = 5.0) {
  std::string text = "time,temperature_c\n";
  for (int h = 0; h < 24 * days; ++h) {
    char line[64];
    std::snprintf(line, sizeof line, "%sT%02d:00,%.1f\n", to_iso(Day{2026, 11, 1} + h / 24).c_str(),
                  h % 24, t_c + h % 24);
    text += line;
  }
  return text;
}

std::string without(std::string text, const std::string& line_start) {
  const std::size_t at = text.find(line_start);
  return text.erase(at, text.find('\n', at) - at + 1);
}

}  // namespace

TEST_CASE("columns stand in any order and others are passed over", "[records]") {
  const Read daily = read(
      "\xef\xbb\xbfrain,tmax_f,note,date,tmin_f\r\n"
      "0,50,\"wet, windy\",2026-11-01,32\r\n"
      "0,50,\"a \"\"quote\"\"\",2026-11-02,41.0\r\n\r\n");
  REQUIRE(daily.days.size() == 2);
  CHECK(daily.summary.format == "daily");
  CHECK(daily.days[0].air.tmin_c == Approx(0.0).margin(1e-12));
  CHECK(daily.days[1].air.tmin_c == Approx(5.0));
  CHECK(daily.days[1].air.tmax_c == Approx(10.0));
  CHECK_FALSE(daily.days[0].hours.has_value());
}

TEST_CASE("hourly records make whole days", "[records]") {
  const Read record = read(hourly(3));
  REQUIRE(record.days.size() == 3);
  CHECK(record.summary.format == "hourly");
  CHECK(record.summary.readings == 72);
  CHECK(record.days[1].air.tmin_c == 5.0);
  CHECK(record.days[1].air.tmax_c == 28.0);
  CHECK(record.days[1].hours->at(7) == 12.0);
}

TEST_CASE("short gaps are filled by straight lines and counted", "[records]") {
  std::string text = hourly(3);
  for (const char* hour : {"2026-11-02T05", "2026-11-02T06"}) text = without(text, hour);
  Read record = read(text);
  REQUIRE(record.days.size() == 3);
  CHECK(record.summary.filled_hours == 2);
  CHECK(record.days[1].hours->at(5) == Approx(10.0));

  // Daily: three missing days are filled, four are not.
  record = read("date,tmin_c,tmax_c\n2026-11-01,0,8\n2026-11-05,4,16\n2026-11-10,1,2\n");
  REQUIRE(record.days.size() == 6);
  CHECK(record.summary.filled_days == 3);
  CHECK(record.days[2].air.tmin_c == Approx(2.0));
  CHECK(record.days[2].air.tmax_c == Approx(12.0));
  CHECK_FALSE(record.days[2].air.measured);
  CHECK(record.summary.gap_count == 1);
  CHECK(record.summary.gaps.at(0) == DayWindow{Day{2026, 11, 6}, Day{2026, 11, 9}});
}

TEST_CASE("the first hours may be missing, a long gap leaves its day to its neighbours",
          "[records]") {
  std::string text = hourly(4);
  text = without(text, "2026-11-01T00");  // as in files of hourly normals, 8,759 rows
  for (int hour = 3; hour < 12; ++hour) {
    text = without(text, "2026-11-03T" + std::string(hour < 10 ? "0" : "") + std::to_string(hour));
  }
  const Read record = read(text);
  REQUIRE(record.days.size() == 4);
  CHECK(record.days[0].hours->at(0) == record.days[0].hours->at(1));
  CHECK_FALSE(record.days[2].air.measured);
  CHECK(record.summary.filled_days == 1);
}

TEST_CASE("an hour that comes twice is averaged, and readings within an hour are", "[records]") {
  std::string text = hourly(2);
  const std::size_t at = text.find("2026-11-01T01");
  text.insert(at, "2026-11-01T01:00,16.0\n");
  text.insert(at, "2026-11-01T01:30:00.5-08:00,26.0\n");
  const Read record = read(text);
  CHECK(record.days[0].hours->at(1) == Approx((6.0 + 16.0 + 26.0) / 3));
}

// 45.0 degF is 7.222... degC; 64.4 degF is 18 degC exactly, and must not fall past the Utah step.
TEST_CASE("Fahrenheit is converted exactly", "[records]") {
  const Read record = read("date,tmin_f,tmax_f\n2026-11-01,45.0,64.4\n");
  CHECK(record.days[0].air.tmin_c == Approx(65.0 / 9.0).epsilon(1e-15));
  CHECK(std::abs(record.days[0].air.tmax_c - 18.0) < 1e-12);
}

TEST_CASE("a time column beside a date column is joined to it", "[records]") {
  const Read record = read([] {
    std::string text = "date,time,temperature_c\n";
    for (int h = 0; h < 24; ++h) {
      text += "2026-11-01," + std::string(h < 10 ? "0" : "") + std::to_string(h) + ":00,4\n";
    }
    return text;
  }());
  CHECK(record.days.size() == 1);
}

// The columns, quoting, padding and missing marks of the two NOAA products as published: GHCN-Daily
// by station (tenths of degC, flags "measurement,quality,source") and GSOD (degF, 9999.9).
// Source: GHCN-Daily readme and GSOD readme of NOAA NCEI, from memory; the values are invented.
TEST_CASE("a GHCN-Daily station file is read as published", "[records]") {
  const Read record = read(
      R"("STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"
"XX000000001","2026-11-01","47.4","-122.3","  100.0","SALTMARSH LANE, XX","    0",",,X","  150",",,X","   50",",,X"
"XX000000001","2026-11-02","47.4","-122.3","  100.0","SALTMARSH LANE, XX","    0",",,X","  990",",I,X","   40",",,X"
"XX000000001","2026-11-03","47.4","-122.3","  100.0","SALTMARSH LANE, XX","    0",",,X","","","   30",",,X"
"XX000000001","2026-11-04","47.4","-122.3","  100.0","SALTMARSH LANE, XX","    0",",,X","  110",",,X","  -10",",,X"
)");
  REQUIRE(record.days.size() == 4);
  CHECK(record.summary.format == "GHCN-Daily");
  CHECK(record.summary.latitude == 47.4);
  CHECK(record.summary.station == "SALTMARSH LANE, XX");
  CHECK(record.summary.rejected == 1);
  CHECK(record.summary.filled_days == 2);
  CHECK(record.days[0].air.tmax_c == 15.0);
  CHECK(record.days[3].air.tmin_c == -1.0);
}

TEST_CASE("a GSOD file is read as published", "[records]") {
  const Read record = read(
      R"("STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","TEMP","TEMP_ATTRIBUTES","MAX","MAX_ATTRIBUTES","MIN","MIN_ATTRIBUTES","PRCP"
"99999900001","2026-11-01","-31.9","115.9","20.0","SALTMARSH LANE, XX","  45.9","24","  50.0","*","  41.0"," "," 0.00"
"99999900001","2026-11-02","-31.9","115.9","20.0","SALTMARSH LANE, XX","  45.9","24","9999.9"," ","9999.9"," "," 0.00"
"99999900001","2026-11-03","-31.9","115.9","20.0","SALTMARSH LANE, XX","  45.9","24","  59.0"," ","  32.0","*"," 0.00"
)");
  REQUIRE(record.days.size() == 3);
  CHECK(record.summary.format == "GSOD");
  CHECK(record.summary.latitude == -31.9);
  CHECK(record.days[0].air.tmax_c == Approx(10.0));
  CHECK(record.days[2].air.tmin_c == Approx(0.0).margin(1e-12));
}

TEST_CASE("what cannot be read is refused with its line", "[records][input]") {
  const std::string daily = "date,tmin_c,tmax_c\n2026-11-01,1,9\n";
  CHECK(fault_of("") == "1: empty; expected a header line");
  CHECK(
      fault_of("date,temp\n") ==
      "1: column \"temp\" has no unit; name it temperature_c or temperature_f (hourly), tmin_c and "
      "tmax_c or tmin_f and tmax_f (daily)");
  CHECK(fault_of("date,tmin_c\n") == "1: tmin is there but tmax_c or tmax_f is missing");
  CHECK(fault_of("date,tmin_c,tmin_f,tmax_c\n") ==
        "1: both tmin_c and tmin_f are there; leave one out");
  CHECK(fault_of("dat,tmin_c,tmax_c\n") ==
        "1: no column \"date\" or \"time\"; did you mean \"date\"?");
  CHECK(fault_of("date,temperatur_c\n") ==
        "1: unknown temperature column \"temperatur_c\"; did you mean \"temperature_c\"?");
  CHECK(fault_of(daily + "2026-11-02,12,11\n") ==
        "3: tmin_c: \"12\" is above tmax_c of the same day, \"11\"");
  CHECK(fault_of(daily + "2026-11-02,1,71\n") ==
        "3: tmax_c: \"71\" is impossible for air; expected -90 to 60 degC");
  CHECK(fault_of(daily + "2026-11-02,1,warm\n") == "3: tmax_c: \"warm\" is no temperature");
  CHECK(fault_of(daily + "2026-11-02,1,inf\n").starts_with("3: tmax_c: "));
  CHECK(fault_of(daily + "2026-11-02,1\n") == "3: 2 fields where the header has 3");
  CHECK(fault_of(daily + "2026-11-01,1,9\n") ==
        "3: 2026-11-01 stands after 2026-11-01; rows must run forward in time, a day once");
  CHECK(fault_of(daily + "2027-02-29,1,9\n").starts_with("3: date: "));
  CHECK(fault_of(daily + "\"2026-11-02,1,9\n") == "3: a quoted field is not closed on its line");
  CHECK(
      fault_of("date,temperature_c\n2026-11-01,4\n").starts_with("2: date: \"2026-11-01\" has no"));
  CHECK(fault_of("date,tmin_c,tmax_c\n") == "0: the records hold no whole day of readings");
  CHECK(fault_of(std::string(70000, 'x')) == "1: the line is longer than 65536 bytes");
  CHECK(fault_of("STATION,DATE,TMAX,TMIN\nA,2026-11-01,12.8,5.0\n").find("decimal point") !=
        std::string::npos);
  CHECK(fault_of("STATION,DATE,TMAX,TMIN\nA,2026-11-01,128,50\nB,2026-11-02,128,50\n") ==
        "3: a second station, \"B\", after \"A\"; one station a file");
  input::InputFiles inputs;
  CHECK_THROWS_AS(input::read_records("/", inputs, [](const auto&, const auto&) {}), InputError);
  CHECK_THROWS_AS(input::read_records("no such file.csv", inputs, [](const auto&, const auto&) {}),
                  InputError);
}

TEST_CASE("every fault is told, up to a hundred", "[records][input]") {
  std::string text = "date,tmin_c,tmax_c\n";
  for (int i = 0; i < 5000; ++i) text += to_iso(Day{2000, 1, 1} + i) + ",1,99\n";
  try {
    read(text);
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 100);
    CHECK(error.faults()[41].place.line == 43);
  }
}

TEST_CASE("times are read to the hour in the forms of ISO 8601", "[records]") {
  using input::parse_record_time;
  for (const char* text : {"2012-11-01T05:00", "2012-11-01 05:00:00", "2012-11-01T05:59:59.999Z",
                           "2012-11-01T05:00:00-08:00", "2012-11-01T05:00+0530", "2012-11-01T05"}) {
    CAPTURE(text);
    CHECK(parse_record_time(text).day == Day{2012, 11, 1});
    CHECK(parse_record_time(text).hour == 5);
  }
  CHECK(parse_record_time("2012-12-31T24:00").day == Day{2013, 1, 1});
  CHECK_FALSE(parse_record_time("2012-02-29").hour.has_value());
  for (const char* text : {"", "2012", "2012-11-1", "2012-11-01T", "2012-11-01T25:00", "01/11/2012",
                           "2012-11-01T05:60", "2012-11-01T24:01", "2012-11-01X05:00", "1899-01-01",
                           "2201-01-01", "2012-11-01T05:00PM", "2012-11-31", "2012-11-01T5:00"}) {
    CAPTURE(text);
    CHECK_THROWS_AS(parse_record_time(text), InvalidValue);
  }
}

TEST_CASE("lines and fields do not depend on where the blocks are cut", "[records][law]") {
  const std::string text = "a,b\r\n\"x,\"\"y\",2\n\n3,\r\n,4";
  const auto cut_at = [&](std::size_t first, std::size_t second) {
    std::string seen;
    input::CsvStream stream{"f", [&](int line, const auto& fields) {
                              seen += std::to_string(line) + ":";
                              for (const auto field : fields)
                                seen += "[" + std::string{field} + "]";
                            }};
    stream.add(std::string_view{text}.substr(0, first));
    stream.add(std::string_view{text}.substr(first, second - first));
    stream.add(std::string_view{text}.substr(second));
    stream.finish();
    return seen;
  };
  for (std::size_t i = 0; i <= text.size(); ++i) {
    for (std::size_t j = i; j <= text.size(); ++j) {
      CHECK(cut_at(i, j) == "1:[a][b]2:[x,\"y][2]4:[3][]5:[][4]");
    }
  }
}
