#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/core.h>

#include "report/sheet/parts.hpp"
#include "report/sheet/side_view.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// Columns kept free at the right for "275 mm  bottom: 19 Triumph tulips".
constexpr int least_label_columns = 34;

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

void draw_layer(SideView& view, const PlannedLayer& layer, const Raster& raster) {
  const int base = row_ending_at(layer.below_rim, raster);
  const int high =
      std::max(1, static_cast<int>(std::lround(layer.bulb_height.value() / raster.row_mm)));
  for (const BulbPosition* bulb : shown_bulbs(layer, raster)) {
    const int wide =
        std::max(1, static_cast<int>(std::lround(bulb->diameter.value() / raster.column_mm)));
    const double edge = view.middle() + bulb->x_mm / raster.column_mm - wide / 2.0;
    const int start = static_cast<int>(std::lround(edge));
    for (int up = 0; up < high; ++up) {
      const std::string marks = bulb_row(up, high, wide, letter_of(layer, bulb->taxon));
      for (std::size_t i = 0; i < marks.size(); ++i) {
        view.put(base - up, start + static_cast<int>(i), marks[i]);
      }
    }
  }
}

/// Ruler figures, right-aligned, with what lies there beside them.
class Ruler {
 public:
  Ruler(const Plan& plan, const TextStyle& style, int width) : style_{style}, width_{width} {
    note(plan.pot.height);
    note(plan.pot.headspace);
    for (const PlannedLayer& layer : plan.layers) note(layer.fill_below_rim);
  }
  [[nodiscard]] Lines mark(Millimetres below_rim, const std::string& what) const {
    return hanging(figure(below_rim), what, columns_ + 2, width_);
  }
  void put(SideView& view, int row, Millimetres below_rim, const std::string& what) const {
    const std::string whole = figure(below_rim) + "  " + what;
    view.label(row, mark(below_rim, what), cut_to(whole, width_, style_));
  }

 private:
  void note(Millimetres length) {
    columns_ = std::max(columns_, columns(length_text(length, style_)));
  }
  [[nodiscard]] std::string figure(Millimetres below_rim) const {
    return pad_left(length_text(below_rim, style_), columns_);
  }
  const TextStyle& style_;
  int width_;
  int columns_ = 0;
};

std::string layer_label(const Plan& plan, const PlannedLayer& layer, const TextStyle& style) {
  std::vector<std::string> kinds;
  for (const LayerBulbs& bulbs : layer.bulbs) {
    const char letter = letter_of(layer, bulbs.taxon);
    const std::string text = bulbs_text(bulbs, style);
    kinds.push_back(letter == 0 ? text : fmt::format("{} ({})", text, letter));
  }
  const std::string which =
      plan.layers.size() <= 1 ? "" : layer_word(layer.level, plan.layers.size()) + ": ";
  return which + listed(kinds);
}

}  // namespace

Lines drawing_lines(const Plan& plan, const SheetLayout& layout) {
  if (plan.pot.height <= Millimetres{0.0} || plan.layers.empty()) return {};
  const TextStyle& style = layout.style;
  const int rows = std::max(10, 15 - layout.closeness);
  const int most_columns = std::max(14, layout.width - least_label_columns - 4);
  const Raster raster = choose_raster(plan, rows, most_columns);
  SideView view{plan.pot, raster};
  const Ruler ruler{plan, style, layout.width - view.width() - 2};
  for (const PlannedLayer& layer : plan.layers) {
    draw_layer(view, layer, raster);
    ruler.put(view, row_ending_at(layer.below_rim, raster), layer.fill_below_rim,
              layer_label(plan, layer, style));
  }
  const int surface = row_ending_at(plan.pot.headspace, raster);
  view.fill_to(surface);
  ruler.put(view, surface, plan.pot.headspace, "mix up to here");
  const std::string heading = fmt::format("Cut through the pot, {}; figures are below the rim:",
                                          raster.squeezed ? "heights to scale" : "to scale");
  Lines lines;
  for (const std::string& line : wrap(heading, layout.width)) lines.push_back(bold(line, style));
  append(lines, view.lines(ruler.mark(plan.pot.height, "floor").front()));
  return lines;
}

}  // namespace bulbwright::report
