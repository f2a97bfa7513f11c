#include "packing/round_table.hpp"

#include <charconv>
#include <string_view>

namespace bulbwright {

namespace embedded {
extern const std::string_view round_layouts_csv;
}  // namespace embedded

namespace packing {
namespace {

/// A centre is five characters of base 64 ("A-Za-z0-9-_"), the highest first: fifteen bits for x,
/// then for y, each 16383 (1 + coordinate).
constexpr double middle = 16383.0;
constexpr std::size_t characters = 5;

unsigned value_of(char c) {
  if (c >= 'A' && c <= 'Z') return static_cast<unsigned>(c - 'A');
  if (c >= 'a' && c <= 'z') return static_cast<unsigned>(c - 'a') + 26;
  if (c >= '0' && c <= '9') return static_cast<unsigned>(c - '0') + 52;
  return c == '-' ? 62 : 63;
}

struct Row {
  double ratio = 0.0;
  std::string_view places;
};

Row row_of(std::string_view line) {
  const std::size_t first = line.find(','), second = line.find(',', first + 1);
  Row row;
  std::from_chars(line.data() + first + 1, line.data() + second, row.ratio);
  row.places = line.substr(second + 1);
  return row;
}

/// The rows of n = 1, 2, ...
const std::vector<Row>& rows() {
  static const std::vector<Row> all = [] {
    std::vector<Row> read;
    std::string_view text = embedded::round_layouts_csv;
    for (bool header = true; !text.empty(); header = false) {
      const std::size_t end = text.find('\n');
      if (!header) read.push_back(row_of(text.substr(0, end)));
      text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return read;
  }();
  return all;
}

}  // namespace

std::size_t round_table_size() {
  return rows().size();
}

std::size_t round_table_count(double ratio) {
  std::size_t n = 0;
  while (n < rows().size() && rows()[n].ratio <= ratio) ++n;
  return n;
}

double round_table_ratio(std::size_t n) {
  return rows()[n - 1].ratio;
}

std::vector<Point> round_table_layout(std::size_t n) {
  const std::string_view text = rows()[n - 1].places;
  std::vector<Point> points;
  for (std::size_t at = 0; at + characters <= text.size(); at += characters) {
    unsigned whole = 0;
    for (const char c : text.substr(at, characters)) whole = 64 * whole + value_of(c);
    points.push_back({(whole / 32768 - middle) / middle, (whole % 32768 - middle) / middle});
  }
  return points;
}

}  // namespace packing
}  // namespace bulbwright
