#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

#include "report/plan_text_parts.hpp"
#include "report/plan_text_words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// Columns kept free at the right for "  275 mm  bottom: 19 Triumph tulips".
constexpr int least_label_columns = 30;
/// A character is about twice as high as wide.
constexpr double row_to_column = 2.0;
constexpr int fewest_rows = 6, most_rows = 24;

/// The raster of the drawing: row r ends (r + 1) * row_mm below the rim.
struct Raster {
  int rows = 14;
  double row_mm = 25.0;
  double column_mm = 12.5;
  bool squeezed = false;  ///< narrower than to scale
};

/// The row whose lower edge lies nearest to `below_rim_mm`.
int row_ending_at(double below_rim_mm, const Raster& raster) {
  return static_cast<int>(std::lround(below_rim_mm / raster.row_mm)) - 1;
}

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
  int above = row_ending_at(plan.pot.headspace.value(), raster);
  for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
    const int row = row_ending_at(layer->below_rim.value(), raster);
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

/// The most rows up to `rows` that keep the levels apart and the width to scale; failing that, the
/// fewest that keep the levels apart, narrower than to scale if need be.
Raster choose_raster(const Plan& plan, int rows, int most_columns) {
  for (int tried = rows; tried >= fewest_rows; --tried) {
    const Raster raster = raster_of(plan.pot, tried, most_columns);
    if (!raster.squeezed && levels_apart(plan, raster)) return raster;
  }
  for (int tried = fewest_rows; tried < most_rows; ++tried) {
    const Raster raster = raster_of(plan.pot, tried, most_columns);
    if (levels_apart(plan, raster) && (tried >= rows || raster.squeezed)) return raster;
  }
  return raster_of(plan.pot, most_rows, most_columns);
}

/// A picture of ASCII characters with labels at the right of its rows.
class Canvas {
 public:
  Canvas(const PlannedPot& pot, const Raster& raster)
      : raster_{raster},
        middle_{static_cast<int>(std::ceil(widest(pot) / 2.0 / raster.column_mm)) + 1},
        rows_(static_cast<std::size_t>(raster.rows),
              std::string(static_cast<std::size_t>(2 * middle_), ' ')),
        labels_(rows_.size()) {
    for (int row = 0; row < raster.rows; ++row) {
      half_.push_back(half_width(pot, (row + 0.5) * raster.row_mm));
    }
    draw_walls();
  }

  void put(int row, int column, char mark) {
    if (row < 0 || row >= raster_.rows || column < left(row) || column > right(row)) return;
    rows_[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = mark;
  }
  void label(int row, const std::string& text) {
    std::string& held = labels_[static_cast<std::size_t>(std::clamp(row, 0, raster_.rows - 1))];
    held += (held.empty() ? "" : "; ") + text;
  }
  [[nodiscard]] int left(int row) const { return middle_ - half_[static_cast<std::size_t>(row)]; }
  [[nodiscard]] int right(int row) const {
    return middle_ + half_[static_cast<std::size_t>(row)] - 1;
  }
  [[nodiscard]] int middle() const { return middle_; }
  [[nodiscard]] int width() const { return 2 * middle_; }
  [[nodiscard]] const std::vector<std::string>& rows() const { return rows_; }
  [[nodiscard]] const std::vector<std::string>& labels() const { return labels_; }

 private:
  [[nodiscard]] int half_width(const PlannedPot& pot, double below_rim_mm) const {
    const double half = width_below_rim(pot, below_rim_mm) / 2.0 / raster_.column_mm;
    return std::clamp(static_cast<int>(std::lround(half)), 1, middle_ - 1);
  }
  void draw_walls() {
    for (int row = 0; row < raster_.rows; ++row) {
      const auto at = static_cast<std::size_t>(row);
      const int below = at + 1 < half_.size() ? half_[at + 1] : half_[at];
      const bool narrows = below<half_[at], widens = below> half_[at];
      rows_[at][static_cast<std::size_t>(left(row) - 1)] = narrows ? '\\' : widens ? '/' : '|';
      rows_[at][static_cast<std::size_t>(right(row) + 1)] = narrows ? '/' : widens ? '\\' : '|';
    }
  }

  Raster raster_;
  int middle_;
  std::vector<std::string> rows_;
  std::vector<std::string> labels_;
  std::vector<int> half_;
};

/// One bulb's characters in row `up` (0 the lowest) of `high`, `wide` columns. A letter fills it
/// where kinds are told apart.
std::string bulb_row(int up, int high, int wide, char letter) {
  const auto n = static_cast<std::size_t>(wide);
  const bool nose = up == high - 1 && high > 1;
  if (nose) {
    const std::string tip = wide % 2 == 0 ? "/\\" : "^";
    const std::size_t side = (n - std::min(n, tip.size())) / 2;
    return std::string(side, ' ') + tip + std::string(side, ' ');
  }
  if (wide == 1) return letter == 0 ? "o" : std::string(1, letter);
  const char inside = letter != 0 ? letter : up == 0 ? '_' : ' ';
  if (wide == 2 && letter != 0) return std::string(2, letter);
  return "(" + std::string(n - 2, inside) + ")";
}

/// The bulbs that the cut through the middle shows: nearest to it first, none over another.
std::vector<const BulbPosition*> shown_bulbs(const PlannedLayer& layer, const Raster& raster) {
  std::vector<const BulbPosition*> sorted, shown;
  for (const BulbPosition& bulb : layer.positions) sorted.push_back(&bulb);
  std::stable_sort(sorted.begin(), sorted.end(), [](const BulbPosition* a, const BulbPosition* b) {
    return std::abs(a->y_mm) < std::abs(b->y_mm);
  });
  for (const BulbPosition* bulb : sorted) {
    const bool clear = std::all_of(shown.begin(), shown.end(), [&](const BulbPosition* other) {
      const double reach = (bulb->diameter + other->diameter).value() / 2.0;
      return std::abs(bulb->x_mm - other->x_mm) >= reach + raster.column_mm;
    });
    if (clear) shown.push_back(bulb);
  }
  return shown;
}

char letter_of(const PlannedLayer& layer, const std::string& taxon) {
  if (layer.bulbs.size() < 2) return 0;
  for (std::size_t i = 0; i < layer.bulbs.size(); ++i) {
    if (layer.bulbs[i].taxon == taxon) return static_cast<char>('a' + i % 26);
  }
  return '?';
}

void draw_layer(Canvas& canvas, const PlannedLayer& layer, const Raster& raster) {
  const int base = row_ending_at(layer.below_rim.value(), raster);
  const int high =
      std::max(1, static_cast<int>(std::lround(layer.bulb_height.value() / raster.row_mm)));
  for (const BulbPosition* bulb : shown_bulbs(layer, raster)) {
    const int wide =
        std::max(1, static_cast<int>(std::lround(bulb->diameter.value() / raster.column_mm)));
    const double edge = canvas.middle() + bulb->x_mm / raster.column_mm - wide / 2.0;
    const int start = static_cast<int>(std::lround(edge));
    for (int up = 0; up < high; ++up) {
      const std::string marks = bulb_row(up, high, wide, letter_of(layer, bulb->taxon));
      for (std::size_t i = 0; i < marks.size(); ++i) {
        canvas.put(base - up, start + static_cast<int>(i), marks[i]);
      }
    }
  }
}

std::string layer_label(const Plan& plan, const PlannedLayer& layer, const TextStyle& style) {
  std::vector<std::string> kinds;
  for (const LayerBulbs& bulbs : layer.bulbs) {
    const char letter = letter_of(layer, bulbs.taxon);
    const std::string text = bulbs_text(bulbs, style);
    kinds.push_back(letter == 0 ? text : fmt::format("{} ({})", text, letter));
  }
  const std::string which =
      plan.layers.size() <= 1 ? "" : layer_word(layer.level, plan.layers.size()) + ": ";
  return fmt::format("{}  {}{}", length_text(layer.fill_below_rim, style), which, listed(kinds));
}

void draw_surface(Canvas& canvas, const Plan& plan, const Raster& raster, const TextStyle& style) {
  const int row = row_ending_at(plan.pot.headspace.value(), raster);
  for (int column = row < 0 ? 1 : canvas.left(row); row >= 0 && column <= canvas.right(row);
       ++column) {
    canvas.put(row, column, '_');
  }
  canvas.label(row, length_text(plan.pot.headspace, style) + "  mix up to here");
}

}  // namespace

Lines drawing_lines(const Plan& plan, const Setting& setting) {
  if (plan.pot.height <= Millimetres{0.0} || plan.layers.empty()) return {};
  const TextStyle& style = setting.style;
  const int rows = std::max(10, 15 - setting.closeness);
  const int most_columns = std::max(16, setting.width - least_label_columns - 4);
  const Raster raster = choose_raster(plan, rows, most_columns);
  Canvas canvas{plan.pot, raster};
  draw_surface(canvas, plan, raster, style);
  for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
    draw_layer(canvas, *layer, raster);
    canvas.label(row_ending_at(layer->below_rim.value(), raster), layer_label(plan, *layer, style));
  }
  Lines lines{bold(fmt::format("Cut through the pot, {}; figures are below the rim:",
                               raster.squeezed ? "heights to scale" : "to scale"),
                   style)};
  const int label_columns = setting.width - canvas.width() - 2;
  for (std::size_t row = 0; row < canvas.rows().size(); ++row) {
    const std::string label = cut_to(canvas.labels()[row], label_columns, style);
    lines.push_back(canvas.rows()[row] + "  " + label);
  }
  const int last = raster.rows - 1;
  const auto floor_columns = static_cast<std::size_t>(canvas.right(last) - canvas.left(last) + 1);
  lines.push_back(
      std::string(static_cast<std::size_t>(canvas.left(last) - 1), ' ') + "+" +
      std::string(floor_columns, '-') + "+" +
      std::string(static_cast<std::size_t>(canvas.width() - canvas.right(last) - 2), ' ') + "  " +
      length_text(plan.pot.height, style) + "  floor");
  return lines;
}

}  // namespace bulbwright::report
