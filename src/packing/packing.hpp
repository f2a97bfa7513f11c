#pragma once

#include <cstddef>
#include <map>
#include <mutex>
#include <span>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "packing/choices.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// One kind of bulb in a layer.
struct PackKind {
  Millimetres diameter;  ///< above 0
  double share = 1.0;    ///< of the number of bulbs, above 0; relative to the other kinds
  int count = 0;         ///< own bulbs to place, used by place_count() only
};

/// One bulb placed. x, y in mm from the section's origin: multiples of 0.01 mm, in a layout in
/// which nothing can move of 0.000001 mm.
struct PlacedBulb {
  double x_mm = 0.0;
  double y_mm = 0.0;
  std::size_t kind = 0;  ///< index into the kinds asked for
};

/// A certified layout: the positions as given were re-checked, every pair has at least `gap` and
/// every bulb at least `wall` clear (in exact integer arithmetic where hundredths and the outline
/// allow it, else with a tolerance of up to 2e-6 mm).
struct Packing {
  std::vector<PlacedBulb> bulbs;
  std::size_t upper_bound = 0;  ///< proven most bulbs at `gap`; >= bulbs.size()
  std::string bound_name;       ///< which proof, for instance "Oler 1961"
  Millimetres gap;              ///< the gap that holds (asked for, or reached for own counts)
  Millimetres least_gap;        ///< measured over all pairs; infinity for fewer than two bulbs
  Millimetres least_wall;       ///< measured over all bulbs; infinity for none
};

/// A layer that might hold more bulbs than this is refused before any work, by layers and by `fit`:
/// so many are packed in well under a second for one kind, in about one for a mixture.
inline constexpr std::size_t most_bulbs_of_a_layer = 5000;

/// The most bulbs with `gap` between neighbours and `wall` to the outline. Shares are kept to the
/// nearest bulb; a mixture is never fewer than its largest kind alone. gap >= 0, wall >= 0. Never
/// fails: no room gives no bulbs.
Packing pack_most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                  Millimetres wall, Effort effort, Arrange arrange = Arrange::mixed);

/// Places exactly the kinds' `count` bulbs with the largest gap found, at most what spreads them
/// evenly over the section, and `wall` to the outline. An empty layout where they do not fit with
/// `least_gap`. Only where nothing else was found are kinds in larger clumps, or out of their
/// bands. Counts from 1 to 1000 in all.
Packing place_count(const Section& section, std::span<const PackKind> kinds, Millimetres least_gap,
                    Millimetres wall, Effort effort, Arrange arrange = Arrange::mixed);

/// A proven most number of points with mutual distance `spacing` and depth `margin`, with the name
/// of the proof.
struct CountBound {
  std::size_t most = 0;
  std::string name;
};
CountBound upper_bound(const Section& section, Millimetres spacing, Millimetres margin);

/// A proven most number of bulbs of these kinds, in their shares: what pack_most() answers with.
CountBound upper_bound(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                       Millimetres wall);

/// Points of the fullest hexagonal lattice found over 12 turns and 8 x 8 offsets, with mutual
/// distance `spacing` and depth `margin` in the section: a quick count that surely fits, a little
/// under what pack_most() finds.
std::size_t lattice_count(const Section& section, Millimetres spacing, Millimetres margin);

/// Remembers packings, so that a second pot with the same section and bulbs costs nothing. Belongs
/// to the caller, who makes one for a run; answers are those of pack_most() and place_count().
/// Several threads may ask at once: each problem is solved by one of them, the others wait for it.
class PackingCache {
 public:
  const Packing& most(const Section& section, std::span<const PackKind> kinds, Millimetres gap,
                      Millimetres wall, Effort effort, Arrange arrange);
  const Packing& count(const Section& section, std::span<const PackKind> kinds,
                       Millimetres least_gap, Millimetres wall, Effort effort, Arrange arrange);

 private:
  struct Entry {
    std::once_flag solved;
    Packing packing;
  };
  Entry& entry(std::vector<double> key);

  std::mutex mutex_;  ///< of known_, whose entries stay where they are
  std::map<std::vector<double>, Entry> known_;
};

}  // namespace bulbwright
