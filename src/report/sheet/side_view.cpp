#include "report/sheet/side_view.hpp"

#include <algorithm>
#include <cmath>

namespace bulbwright::report {
namespace {

constexpr double row_to_column = 2.0;
constexpr int fewest_rows = 6, most_rows = 24;
/// A row of a tall pot stands for no more than this.
constexpr double tallest_row_mm = 36.0;

double widest(const PlannedPot& pot) {
  double width = std::max(pot.rim.length.value(), pot.base.length.value());
  for (const ProfileLevel& level : pot.profile) width = std::max(width, level.length.value());
  return width;
}

/// Inner width at a level below the rim, linear between the levels of the profile.
double width_below_rim(const PlannedPot& pot, double below_rim_mm) {
  const double height = pot.height.value();
  const double z = std::clamp(height - below_rim_mm, 0.0, height);
  double z0 = 0.0, w0 = pot.base.length.value();
  for (const ProfileLevel& level : pot.profile) {
    const double z1 = level.height.value(), w1 = level.length.value();
    if (z <= z1) return z1 > z0 ? w0 + (w1 - w0) * (z - z0) / (z1 - z0) : w1;
    z0 = z1;
    w0 = w1;
  }
  const double w1 = pot.rim.length.value();
  return height > z0 ? w0 + (w1 - w0) * (z - z0) / (height - z0) : w1;
}

bool levels_apart(const Plan& plan, const Raster& raster) {
  int above = row_ending_at(plan.pot.headspace, raster);
  for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
    const int row = row_ending_at(layer->below_rim, raster);
    if (row <= above) return false;
    above = row;
  }
  return above < raster.rows;
}

Raster raster_of(const PlannedPot& pot, int rows, int most_columns) {
  Raster raster;
  raster.rows = rows;
  raster.row_mm = pot.height.value() / rows;
  raster.column_mm = raster.row_mm / row_to_column;
  raster.squeezed = widest(pot) / raster.column_mm > most_columns;
  if (raster.squeezed) raster.column_mm = widest(pot) / most_columns;
  return raster;
}

std::string blanks(int count) {
  return std::string(static_cast<std::size_t>(std::max(0, count)), ' ');
}

}  // namespace

int row_ending_at(Millimetres below_rim, const Raster& raster) {
  return static_cast<int>(std::lround(below_rim.value() / raster.row_mm)) - 1;
}

Raster choose_raster(const Plan& plan, int rows, int most_columns) {
  const int for_height = static_cast<int>(std::ceil(plan.pot.height.value() / tallest_row_mm));
  const int wanted = std::clamp(for_height, rows, std::max(rows, most_rows - 4));
  for (int tried = wanted; tried >= fewest_rows; --tried) {
    const Raster raster = raster_of(plan.pot, tried, most_columns);
    if (!raster.squeezed && levels_apart(plan, raster)) return raster;
  }
  for (int tried = fewest_rows; tried < most_rows; ++tried) {
    const Raster raster = raster_of(plan.pot, tried, most_columns);
    if (levels_apart(plan, raster) && (tried >= wanted || raster.squeezed)) return raster;
  }
  return raster_of(plan.pot, most_rows, most_columns);
}

SideView::SideView(const PlannedPot& pot, const Raster& raster)
    : raster_{raster},
      middle_{static_cast<int>(std::ceil(widest(pot) / 2.0 / raster.column_mm)) + 1},
      rows_(static_cast<std::size_t>(raster.rows), blanks(width())),
      labels_(rows_.size()) {
  for (int row = 0; row < raster.rows; ++row) {
    const double width_mm = width_below_rim(pot, (row + 0.5) * raster.row_mm);
    const int half = static_cast<int>(std::lround(width_mm / 2.0 / raster.column_mm));
    half_.push_back(std::clamp(half, 1, middle_ - 1));
  }
  draw_walls();
}

int SideView::left(int row) const {
  return middle_ - half_[static_cast<std::size_t>(row)];
}

int SideView::right(int row) const {
  return middle_ + half_[static_cast<std::size_t>(row)] - 1;
}

void SideView::draw_walls() {
  for (int row = 0; row < raster_.rows; ++row) {
    const auto at = static_cast<std::size_t>(row);
    const int below = at + 1 < half_.size() ? half_[at + 1] : half_[at];
    const bool narrows = below<half_[at], widens = below> half_[at];
    rows_[at][static_cast<std::size_t>(left(row) - 1)] = narrows ? '\\' : widens ? '/' : '|';
    rows_[at][static_cast<std::size_t>(right(row) + 1)] = narrows ? '/' : widens ? '\\' : '|';
  }
}

void SideView::put(int row, int column, char mark) {
  if (row < 0 || row >= raster_.rows || column < left(row) || column > right(row)) return;
  rows_[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = mark;
}

void SideView::fill_to(int row) {
  filled_to_rim_ = row < 0;
  for (int column = 0; row >= 0 && column < width(); ++column) put(row, column, '_');
}

void SideView::label(int row, const Lines& text, const std::string& cut) {
  const auto at = static_cast<std::size_t>(std::clamp(row, 0, raster_.rows - 1));
  bool free = true;
  for (std::size_t i = 1; i < text.size(); ++i) {
    free = free && at + i < labels_.size() && labels_[at + i].empty();
  }
  labels_[at] += (labels_[at].empty() ? "" : "; ") + (free ? text.front() : cut);
  for (std::size_t i = 1; free && i < text.size(); ++i) labels_[at + i] = text[i];
}

Lines SideView::lines(const std::string& floor) const {
  Lines lines;
  if (filled_to_rim_) {
    lines.push_back(blanks(left(0)) + std::string(static_cast<std::size_t>(2 * half_[0]), '_'));
  }
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    lines.push_back(rows_[row] + "  " + labels_[row]);
  }
  const int last = raster_.rows - 1;
  const std::string bottom(static_cast<std::size_t>(2 * half_.back()), '-');
  lines.push_back(pad_right(blanks(left(last) - 1) + "+" + bottom + "+", width()) + "  " + floor);
  return lines;
}

}  // namespace bulbwright::report
