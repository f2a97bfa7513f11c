// Build-time tool: makes the table of stations that the program carries.
// Use: compact_places places_dense.csv left_out.csv land.csv OUT.cpp
// What is written is described in src/climate/station_table.hpp.
#include <charconv>
#include <cmath>
#include <cstdint>
#include <exception>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/csv.hpp"
#include "station_names.hpp"

namespace {

using bulbwright::CsvRecord;
using bulbwright::CsvTable;

CsvTable read(const std::string& path) {
  std::ifstream file{path, std::ios::binary};
  if (!file) throw std::runtime_error{"cannot read " + path};
  const std::string text{std::istreambuf_iterator<char>{file}, {}};
  return bulbwright::read_csv(text, path);
}

class Bytes {
 public:
  void u8(long value) { put(value, 1, 0, 0xFF); }
  void u16(long value) { put(value, 2, 0, 0xFFFF); }
  void i16(long value) { put(value, 2, -0x8000, 0x7FFF); }
  void u32(long value) { put(value, 4, 0, 0xFFFFFFFFL); }
  void text(std::string_view text) { bytes_ += text; }
  [[nodiscard]] const std::string& all() const { return bytes_; }

 private:
  void put(long value, int count, long least, long most) {
    if (value < least || value > most) {
      throw std::runtime_error{std::to_string(value) + " does not fit the table"};
    }
    for (int i = 0; i < count; ++i) bytes_ += static_cast<char>((value >> (8 * i)) & 0xFF);
  }

  std::string bytes_;
};

double number(const CsvTable& table, const CsvRecord& record, std::size_t column) {
  const std::string& field = record.fields[column];
  double value = 0.0;
  const auto [end, fault] = std::from_chars(field.data(), field.data() + field.size(), value);
  if (fault != std::errc{} || end != field.data() + field.size()) {
    throw std::runtime_error{table.file + ":" + std::to_string(record.line) + ": " +
                             table.header[column] + " is no number"};
  }
  return value;
}

std::string month_column(const char* stem, int month) {
  return std::string{stem} + (month < 10 ? "_0" : "_") + std::to_string(month);
}

struct Names {
  Bytes offsets, bytes;
};

/// Rows of the table, as three columns of bytes.
struct Table {
  Bytes positions, climates;
  Names names;
  long count = 0;
};

Table compacted(const CsvTable& places, const std::set<std::string>& left_out) {
  const auto column = [&](const std::string& name) { return places.column(name); };
  const std::size_t site = column("site"), country = column("country"), lat = column("lat"),
                    lon = column("lon"), elevation = column("elev_m"), id = column("station");
  Table table;
  for (const CsvRecord& record : places.records) {
    const std::string& station = record.fields[id];
    if (left_out.count(station) > 0) continue;
    const auto tenth = [&](const std::string& name, double scale) {
      return std::lround(number(places, record, column(name)) * scale);
    };
    table.positions.i16(std::lround(number(places, record, lat) * 100));
    table.positions.i16(std::lround(number(places, record, lon) * 100));
    table.positions.i16(std::lround(number(places, record, elevation)));
    for (int m = 1; m <= 12; ++m) table.climates.i16(tenth(month_column("tmin", m), 10));
    for (int m = 1; m <= 12; ++m) {
      table.climates.u8(tenth(month_column("tmax", m), 10) - tenth(month_column("tmin", m), 10));
    }
    for (int m = 1; m <= 12; ++m) table.climates.u16(tenth(month_column("prec", m), 1));
    const auto name =
        bulbwright::data::mended_name(record.fields[site], record.fields[country], station);
    table.names.offsets.u32(static_cast<long>(table.names.bytes.all().size()));
    if (record.fields[country].size() != 2 || station.size() != 12) {
      throw std::runtime_error{places.file + ":" + std::to_string(record.line) +
                               ": country or station number of another length"};
    }
    table.names.bytes.text(record.fields[country]);
    table.names.bytes.text(name.region.empty() ? "  " : name.region);
    table.names.bytes.text(station);
    table.names.bytes.text(name.name);
    ++table.count;
  }
  table.names.offsets.u32(static_cast<long>(table.names.bytes.all().size()));
  return table;
}

struct Land {
  Bytes rows, runs;
  long count = 0;
};

Land land_of(const CsvTable& table) {
  Land land;
  const std::size_t row_column = table.column("row"), runs_column = table.column("runs");
  long row = 0;
  const auto begin_rows = [&](long until) {
    for (; row <= until; ++row) land.rows.u16(land.count);
  };
  for (const CsvRecord& record : table.records) {
    begin_rows(std::lround(number(table, record, row_column)));
    const std::string& runs = record.fields[runs_column];
    for (std::size_t at = 0; at < runs.size();) {
      const std::size_t dash = runs.find('-', at);
      const std::size_t end = std::min(runs.find(' ', at), runs.size());
      land.runs.u16(std::stol(runs.substr(at, dash - at)));
      land.runs.u16(std::stol(runs.substr(dash + 1, end - dash - 1)));
      ++land.count;
      at = end + 1;
    }
  }
  begin_rows(720);
  return land;
}

void write(const std::string& path, const std::string& bytes) {
  std::ofstream out{path, std::ios::binary};
  out << "#include <string_view>\n\nnamespace bulbwright::embedded {\n"
         "extern const std::string_view places_dense;\nconst std::string_view places_dense{\n";
  constexpr std::size_t bytes_a_line = 100;
  constexpr char digits[] = "01234567";
  for (std::size_t at = 0; at < bytes.size(); at += bytes_a_line) {
    out << '"';
    for (const char c : std::string_view{bytes}.substr(at, bytes_a_line)) {
      const auto byte = static_cast<unsigned char>(c);
      if (byte >= ' ' && byte < 127 && c != '"' && c != '\\' && c != '?') {
        out << c;
      } else {
        out << '\\' << digits[byte >> 6] << digits[(byte >> 3) & 7] << digits[byte & 7];
      }
    }
    out << "\"\n";
  }
  out << ", " << bytes.size() << "};\n}  // namespace bulbwright::embedded\n";
  if (!out.flush()) throw std::runtime_error{"cannot write " + path};
}

int compact(const std::vector<std::string>& files) {
  if (files.size() != 4) throw std::runtime_error{"four files expected"};
  const CsvTable left_out = read(files[1]);
  std::set<std::string> numbers;
  for (const CsvRecord& record : left_out.records) {
    numbers.insert(record.fields[left_out.column("station")]);
  }
  const Table table = compacted(read(files[0]), numbers);
  const Land land = land_of(read(files[2]));
  Bytes all;
  all.text("BWST");
  all.u32(table.count);
  all.u32(land.count);
  all.u32(static_cast<long>(table.names.bytes.all().size()));
  for (const Bytes* part : {&table.positions, &table.climates, &table.names.offsets,
                            &table.names.bytes, &land.rows, &land.runs}) {
    all.text(part->all());
  }
  write(files[3], all.all());
  return 0;
}

}  // namespace

int main(int count, char** values) {
  try {
    return compact({values + 1, values + count});
  } catch (const std::exception& fault) {
    std::cerr << "compact_places: " << fault.what() << '\n';
    return 1;
  }
}
