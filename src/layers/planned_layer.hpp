#pragma once

#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "packing/pattern.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// A layer as planned: its bulbs, its level, every position.

struct LayerBulbs {
  std::string taxon;  ///< id
  std::string name;   ///< for people
  std::string label;  ///< the grower's own name for the lot, may be empty
  std::string grade;  ///< circumference to ask for, cm: "12", that was packed
  int count = 0;
  Millimetres diameter;
};

/// x, y from the section's origin, along its length and width; multiples of 0.01 mm.
struct BulbPosition {
  std::string taxon;
  double x_mm = 0.0;
  double y_mm = 0.0;
  Millimetres diameter;
};

struct PlannedLayer {
  int level = 1;               ///< from the bottom, 1 first
  Millimetres depth;           ///< mix surface to bulb base
  Millimetres below_rim;       ///< rim to bulb base: what a ruler reads
  Millimetres fill_below_rim;  ///< level on which the bulbs are set, firmed
  Millimetres above_floor;     ///< inner floor to bulb base
  Millimetres bulb_height;     ///< tallest bulb of the layer
  Millimetres cover;           ///< mix above its nose, to the surface
  Section section;             ///< the smallest cut that the bulbs meet
  Millimetres gap;             ///< asked for, or reached with the bulbs counted
  Millimetres least_gap;       ///< measured in the printed positions
  Millimetres wall;
  int count = 0;
  int upper_bound = 0;  ///< proven most at `gap`
  std::string bound_name;
  int count_set_close = 0;           ///< how many would fit with 10 mm between; 0 when not computed
  bool count_given = false;          ///< the grower said how many bulbs
  bool own = false;                  ///< and has them: nothing to buy
  Arrange arrange = Arrange::mixed;  ///< of several kinds
  Pattern pattern = Pattern::dense;
  std::vector<int> sets;  ///< bulbs of each ring from the rim inwards, or of each row
  int dense_count = 0;    ///< with a pattern: what the densest layout found holds
  std::vector<LayerBulbs> bulbs;
  std::vector<BulbPosition> positions;
};

}  // namespace bulbwright
