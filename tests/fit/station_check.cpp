// Which stations of data/places_dense/places_dense.csv cannot be where or as high as they say.
// Use: station_check > data/places_dense/left_out.csv
//
// Each station is blended from those around it. One whose year is off by more than 3 K and by more
// than four times the error expected there is left out, the worst first and one of a neighbourhood
// at a time, until none is left.
#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include <fmt/core.h>

#include "base/csv.hpp"
#include "climate/blend.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

constexpr double most_off_k = 3.0, most_deviations = 2.5;
constexpr std::size_t kept_near = 40;  // neighbours remembered, some of which may be left out
constexpr std::size_t one_of = 12;     // a neighbourhood, of which one goes at a time

struct Row {
  Station station;
  std::vector<std::size_t> near;
  bool left_out = false;
  double off_k = 0.0, deviations = 0.0;
};

double number(const std::string& text) {
  double value = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::vector<Row> rows_of(const CsvTable& table) {
  std::vector<Row> rows(table.records.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto& fields = table.records[i].fields;
    const auto value = [&](const std::string& name) { return number(fields[table.column(name)]); };
    Station& station = rows[i].station;
    station.name = fields[table.column("site")];
    station.country = fields[table.column("country")];
    station.number = fields[table.column("station")];
    station.position = {value("lat"), value("lon")};
    station.elevation_m = value("elev_m");
    for (std::size_t m = 0; m < 12; ++m) {
      station.normals.tmin_c[m] = value(fmt::format("tmin_{:02}", m + 1));
      station.normals.tmax_c[m] = value(fmt::format("tmax_{:02}", m + 1));
    }
  }
  return rows;
}

void find_neighbours(std::vector<Row>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::vector<std::pair<double, std::size_t>> all;
    for (std::size_t j = 0; j < rows.size(); ++j) {
      if (j != i)
        all.emplace_back(distance_km(rows[i].station.position, rows[j].station.position), j);
    }
    std::partial_sort(all.begin(), all.begin() + kept_near, all.end());
    for (std::size_t k = 0; k < kept_near; ++k) rows[i].near.push_back(all[k].second);
  }
}

void judge(std::vector<Row>& rows, Row& row) {
  std::vector<Station> around;
  for (const std::size_t j : row.near) {
    if (!rows[j].left_out && around.size() < blended_stations) around.push_back(rows[j].station);
  }
  const Blend blend = blended(around, row.station.position, row.station.elevation_m);
  double off = 0.0, expected = 0.0;
  const auto own = monthly_means(row.station.normals), theirs = monthly_means(blend.normals);
  for (std::size_t m = 0; m < 12; ++m) {
    off += (own[m] - theirs[m]) / 12;
    expected += blend.error_k[m] / 12;
  }
  row.off_k = off;
  row.deviations = std::abs(off) / expected;
}

/// @returns how many went.
int leave_out_the_worst(std::vector<Row>& rows) {
  std::vector<std::size_t> suspects;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].left_out) continue;
    judge(rows, rows[i]);
    if (std::abs(rows[i].off_k) > most_off_k && rows[i].deviations > most_deviations) {
      suspects.push_back(i);
    }
  }
  std::sort(suspects.begin(), suspects.end(),
            [&](std::size_t a, std::size_t b) { return rows[a].deviations > rows[b].deviations; });
  std::set<std::size_t> gone;
  for (const std::size_t i : suspects) {
    const auto& near = rows[i].near;
    if (std::any_of(near.begin(), near.begin() + one_of,
                    [&](std::size_t j) { return gone.count(j) > 0; })) {
      continue;
    }
    rows[i].left_out = true;
    gone.insert(i);
  }
  return static_cast<int>(gone.size());
}

}  // namespace

int main() {
  std::ifstream file{fixture::source_path("data/places_dense/places_dense.csv")};
  const std::string text{std::istreambuf_iterator<char>{file}, {}};
  const CsvTable table = read_csv(text, "places_dense.csv");
  std::vector<Row> rows = rows_of(table);
  find_neighbours(rows);
  while (leave_out_the_worst(rows) > 0) {
  }
  fmt::print("station,site,country,elev_m,off_k,deviations\n");
  for (const Row& row : rows) {
    if (!row.left_out) continue;
    fmt::print("{},{},{},{:.0f},{:+.1f},{:.1f}\n", row.station.number, csv_field(row.station.name),
               row.station.country, row.station.elevation_m, row.off_k, row.deviations);
  }
}
