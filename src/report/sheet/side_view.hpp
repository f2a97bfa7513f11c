#pragma once

#include <string>
#include <vector>

#include "plan/plan.hpp"
#include "report/text_layout.hpp"

namespace bulbwright::report {

/// The raster of a side view of a pot: row r ends (r + 1) * row_mm below the rim. A character is
/// taken to be twice as high as wide.
struct Raster {
  int rows = 14;
  double row_mm = 25.0;
  double column_mm = 12.5;
  bool squeezed = false;  ///< narrower than to scale
};

/// About `rows` rows, fewer where `most_columns` asks for it, more in a tall pot, so that every
/// level of the plan has a row of its own; narrower than to scale only where that needs it.
Raster choose_raster(const Plan& plan, int rows, int most_columns);

/// The row whose lower edge lies nearest to `below_rim`; -1 is the rim.
int row_ending_at(Millimetres below_rim, const Raster& raster);

/// A side view in ASCII characters: the walls, what is put between them, and labels at the right.
class SideView {
 public:
  SideView(const PlannedPot& pot, const Raster& raster);

  /// Sets a mark if it lies between the walls.
  void put(int row, int column, char mark);
  /// The surface of the mix at the lower edge of `row`, -1 to the last row.
  void fill_to(int row);
  /// Labels are set from the bottom up. The lines after the first go into the rows below where
  /// those are free; else `cut` stands alone.
  void label(int row, const Lines& text, const std::string& cut);

  [[nodiscard]] int middle() const { return middle_; }     ///< column right of the middle
  [[nodiscard]] int width() const { return 2 * middle_; }  ///< columns, walls included
  /// From the rim to the floor, labels from column width() + 2 on; `floor` labels the floor.
  [[nodiscard]] Lines lines(const std::string& floor) const;

 private:
  [[nodiscard]] int left(int row) const;   ///< first column inside the walls
  [[nodiscard]] int right(int row) const;  ///< last one
  void draw_walls();

  Raster raster_;
  int middle_;
  std::vector<int> half_;  ///< inner half width by row, columns
  std::vector<std::string> rows_;
  std::vector<std::string> labels_;
  bool filled_to_rim_ = false;
};

}  // namespace bulbwright::report
