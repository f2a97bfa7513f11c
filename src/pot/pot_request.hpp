#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// The pot as a file or the flags describe it: sizes as the grower gave them, nothing resolved.

/// One level of a pot's profile: inner sizes at a height above the inner floor.
struct ProfileLevel {
  Millimetres height;
  Millimetres length;  ///< along x (the width, for a half-round)
  Millimetres width;   ///< along y (the depth, for a half-round)

  bool operator==(const ProfileLevel&) const = default;
};

struct PotRequest {
  std::string name;   ///< may be empty
  std::string group;  ///< of pots that are looked at together; may be empty
  std::string note;   ///< the grower's own words, carried to the sheet; may be empty
  Shape shape = Shape::round;
  std::optional<LengthPair> top;   ///< `top`; for round sections both are the diameter
  std::optional<LengthPair> base;  ///< absent: a stated default proportion of the top
  std::optional<Millimetres> height;
  std::vector<ProfileLevel> profile;     ///< instead of top, base and height
  Millimetres corner;                    ///< rectangle only
  std::optional<Millimetres> thickness;  ///< present: top, base and height are outer sizes
  std::optional<Millimetres> headspace;
  std::string material;                  ///< "" or one of known_materials()
  std::optional<std::string> last_crop;  ///< a genus in lower case
  bool used_mix = false;

  bool operator==(const PotRequest&) const = default;
};

}  // namespace bulbwright
