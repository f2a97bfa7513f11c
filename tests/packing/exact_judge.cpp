#include "exact_judge.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include <fmt/core.h>

#include "packing/pattern.hpp"

using namespace bulbwright;

namespace judge {
namespace {

/// What places are whole in, and what a distance may lack, in the same.
struct Grain {
  double to_mm = 100.0;
  std::int64_t allowed = 0;

  [[nodiscard]] std::int64_t of(double mm) const { return std::llround(mm * to_mm); }
  [[nodiscard]] std::int64_t of(Millimetres length) const { return of(length.value()); }
  [[nodiscard]] bool is_whole(double mm) const {
    return std::fabs(mm * to_mm - static_cast<double>(of(mm))) < 1e-6 * to_mm / 100.0;
  }
};
constexpr Grain hundredths{100.0, 0};
/// Of layouts in which nothing can move.
constexpr Grain millionths{1e6, 2};

/// Distance to an ellipse of these semi-axes about the origin, by golden sections around the
/// nearest of many of its points.
long double distance_to_ellipse(long double a, long double b, long double x, long double y) {
  const auto at = [&](long double t) {
    return std::hypot(a * std::cos(t) - x, b * std::sin(t) - y);
  };
  constexpr int points = 720;
  const long double step = 2.0L * std::numbers::pi_v<long double> / points;
  long double least = 1e9L, nearest = 0.0L;
  for (int k = 0; k < points; ++k) {
    const long double d = at(step * k);
    if (d >= least) continue;
    least = d;
    nearest = step * k;
  }
  long double low = nearest - step, high = nearest + step;
  for (int i = 0; i < 80; ++i) {
    const long double third = (high - low) / 3.0L;
    (at(low + third) < at(high - third) ? high : low) =
        at(low + third) < at(high - third) ? high - third : low + third;
  }
  return std::min(least, at((low + high) / 2.0L));
}

/// The bulb's disc with its clearance, `reach` hundredths, stays within the outline.
bool inside(const Section& s, const Grain& grain, std::int64_t x, std::int64_t y,
            std::int64_t reach) {
  const std::int64_t length = grain.of(s.length), width = grain.of(s.width);
  switch (s.shape) {
    case Shape::round: {
      const std::int64_t room = length - 2 * reach;  // the diameter left
      return room >= 0 && 4 * (x * x + y * y) <= room * room;
    }
    case Shape::rectangle: {
      if (2 * (std::abs(x) + reach) > length || 2 * (std::abs(y) + reach) > width) return false;
      const std::int64_t corner = grain.of(s.corner);
      const std::int64_t dx = 2 * std::abs(x) - (length - 2 * corner);
      const std::int64_t dy = 2 * std::abs(y) - (width - 2 * corner);
      if (dx <= 0 || dy <= 0) return true;
      const std::int64_t room = 2 * (corner - reach);
      return room >= 0 && dx * dx + dy * dy <= room * room;
    }
    case Shape::half_round:
      if (y < reach) return false;
      [[fallthrough]];
    case Shape::oval: {
      const long double a = static_cast<long double>(length) / 200.0L;
      const long double b =
          static_cast<long double>(width) / (s.shape == Shape::oval ? 200.0L : 100.0L);
      const long double px = static_cast<long double>(x) / 100.0L,
                        py = static_cast<long double>(y) / 100.0L;
      if (px * px / (a * a) + py * py / (b * b) > 1.0L) return false;
      return distance_to_ellipse(a, b, px, py) >= static_cast<long double>(reach) / 100.0L - 1e-6L;
    }
  }
  return false;
}

/// Random numbers of the k-th question.
class Draw {
 public:
  explicit Draw(std::size_t k) : state_{0x9e3779b97f4a7c15ULL * (k + 1)} {}
  std::uint64_t below(std::uint64_t n) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return (state_ >> 33U) % n;
  }
  /// Whole tenths of a millimetre.
  double tenths(double low, double high) {
    const auto steps = static_cast<std::uint64_t>(std::llround((high - low) * 10.0)) + 1;
    return low + static_cast<double>(below(steps)) / 10.0;
  }

 private:
  std::uint64_t state_;
};

Millimetres mm_in_tenths(double value) {
  return Millimetres{std::round(value * 10.0) / 10.0};
}

}  // namespace

std::string fault_of(const Section& section, const std::vector<PackKind>& kinds,
                     const Packing& packing, Millimetres gap, Millimetres wall) {
  struct Placed {
    std::int64_t x = 0, y = 0, diameter = 0;
  };
  const auto whole_in = [&](const Grain& grain) {
    return std::all_of(packing.bulbs.begin(), packing.bulbs.end(), [&](const PlacedBulb& bulb) {
      return grain.is_whole(bulb.x_mm) && grain.is_whole(bulb.y_mm);
    });
  };
  const Grain grain = whole_in(hundredths) ? hundredths : millionths;
  if (!whole_in(grain)) return "a place off the grid";
  std::vector<Placed> all;
  for (const PlacedBulb& bulb : packing.bulbs) {
    const Placed p{grain.of(bulb.x_mm), grain.of(bulb.y_mm), grain.of(kinds[bulb.kind].diameter)};
    const std::int64_t reach = p.diameter / 2 + grain.of(wall) - grain.allowed;
    if (!inside(section, grain, p.x, p.y, reach))
      return fmt::format("a wall broken at {}, {}", p.x, p.y);
    all.push_back(p);
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const std::int64_t dx = all[i].x - all[j].x, dy = all[i].y - all[j].y;
      const std::int64_t want =
          (all[i].diameter + all[j].diameter) / 2 + grain.of(gap) - grain.allowed;
      if (dx * dx + dy * dy < want * want) {
        return fmt::format("bulbs {} and {} nearer than {} units", i, j, want);
      }
    }
  }
  if (packing.bulbs.size() > packing.upper_bound) return "more bulbs than the bound";
  return {};
}

std::string fault_of_case(std::size_t k) {
  Draw draw{k};
  Section section;
  section.shape = static_cast<Shape>(draw.below(4));
  section.length = mm_in_tenths(draw.tenths(90.0, 560.0));
  section.width = section.length;
  if (section.shape != Shape::round) section.width = mm_in_tenths(draw.tenths(70.0, 420.0));
  if (section.shape == Shape::rectangle && draw.below(2) == 0) {
    section.corner =
        mm_in_tenths(draw.tenths(0.0, std::min(section.length, section.width).value() / 2.0 - 1.0));
  }
  const Millimetres gap = mm_in_tenths(draw.tenths(0.0, 30.0));
  const Millimetres wall = mm_in_tenths(draw.tenths(0.0, 15.0));
  std::vector<PackKind> kinds{{mm_in_tenths(draw.tenths(18.0, 60.0)), 1.0, 0}};
  const std::uint64_t question =
      draw.below(10);  // of ten: 5 most, 2 mixtures, 2 own counts, 1 pattern
  const auto effort = draw.below(40) == 0 ? Effort::normal : Effort::quick;
  const std::string asked = fmt::format(
      "case {}: {} {} x {}, corner {}, bulb {}, gap {}, wall {}, question {}: ", k,
      word_of(section.shape), section.length.value(), section.width.value(), section.corner.value(),
      kinds[0].diameter.value(), gap.value(), wall.value(), question);
  std::string fault;
  if (question < 5) {
    fault = fault_of(section, kinds, pack_most(section, kinds, gap, wall, effort), gap, wall);
  } else if (question < 7) {
    for (std::uint64_t more = 1 + draw.below(2); more > 0; --more) {
      kinds.push_back(
          {mm_in_tenths(draw.tenths(15.0, 45.0)), static_cast<double>(1 + draw.below(4)), 0});
    }
    const Arrange arrange = draw.below(3) == 0 ? Arrange::drift : Arrange::mixed;
    fault =
        fault_of(section, kinds, pack_most(section, kinds, gap, wall, effort, arrange), gap, wall);
  } else if (question < 9) {
    kinds[0].count = static_cast<int>(1 + draw.below(30));
    const Packing own = place_count(section, kinds, 3_mm, wall, effort);
    fault = fault_of(section, kinds, own, own.gap, wall);
    const auto wanted = static_cast<std::size_t>(kinds[0].count);
    if (fault.empty() && !own.bulbs.empty() && own.bulbs.size() != wanted) fault = "another count";
  } else {
    const Pattern pattern = draw.below(2) == 0 ? Pattern::rings : Pattern::rows;
    fault = fault_of(section, kinds, lay_pattern(section, kinds[0], gap, wall, pattern).packing,
                     gap, wall);
  }
  return fault.empty() ? fault : asked + fault;
}

}  // namespace judge
