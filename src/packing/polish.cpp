#include "packing/polish.hpp"

#include <array>

#include "packing/newton.hpp"
#include "packing/relax.hpp"

namespace bulbwright::packing {
namespace {

/// Tried one after the other, in least distances: as the search does, and nearer to the layout.
constexpr std::array squeezes{5e-4, 1e-4, 2e-5, 4e-6};
constexpr long most_work = 20'000'000;

/// A squeezed layout whose overlaps are this many times the squeeze, in the mean, does not fit.
constexpr double near_overlaps = 1.2;
constexpr long most_work_near = 3'000'000;

}  // namespace

bool polish(const Outline& outline, const Discs& discs, double allowed, Coordinates& x) {
  long work = 0;
  Energy energy{outline, discs};
  Relaxer<double> relaxer;
  Coordinates start = x;
  relaxer.relax(energy, x, {0.25 * allowed * allowed, 0.0, 0.0, 200});
  bool fits = energy.worst_overlap(x) <= allowed;
  for (const double squeeze : squeezes) {
    if (fits) break;
    x = start;
    energy.set_extra(squeeze * energy.length());
    relaxer.relax(energy, x, {0.0, 0.0, 0.0, 400});
    double touching = 0.0;
    Tightener tightener;
    fits = tightener.let_out(energy, x, {allowed, most_work}, touching, work);
  }
  return fits;
}

bool polish_if_near(const Outline& outline, const Discs& discs, double allowed, Coordinates& x,
                    long& work) {
  Energy energy{outline, discs};
  Relaxer<double> relaxer;
  const double squeeze = squeezes.front() * energy.length();
  energy.set_extra(squeeze);
  relaxer.relax(energy, x, {0.0, 0.0, 0.0, 400});
  bool fits = energy.worst_overlap(x) <= allowed;
  if (!fits && energy.mean_overlap(x) <= near_overlaps * squeeze) {
    double touching = 0.0;
    Tightener tightener;
    fits = tightener.let_out(energy, x, {allowed, most_work_near}, touching, work);
  }
  work += energy.work();
  return fits;
}

}  // namespace bulbwright::packing
