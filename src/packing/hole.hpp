#pragma once

#include "packing/outline.hpp"
#include "packing/random.hpp"
#include "packing/seeds.hpp"

namespace bulbwright::packing {

/// Of `draws` points drawn at least `margin` deep the one with the most room, room_at(point) being
/// its distance to what stands already, or anything that grows with it.
template <class RoomAt>
Point widest_hole(const Outline& outline, double margin, int draws, Random& random,
                  RoomAt room_at) {
  Point best = outline.deepest();
  double widest = -1e300;
  for (int k = 0; k < draws; ++k) {
    const Point p = random_point(outline, margin, random);
    const double room = room_at(p);
    if (room <= widest) continue;
    widest = room;
    best = p;
  }
  return best;
}

}  // namespace bulbwright::packing
