#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// What the bloom model (bloom.hpp) needs to know of one kind. Symbols are those of
/// docs/bloom_model.md.
struct BloomParameters {
  std::string taxon;

  /// F: heat from rooted bulbs to the first open flowers, degC d above base_c at full rate, planted
  /// at the usual depth.
  double heat_sum = 300.0;
  double base_c = 0.0;  ///< below this nothing grows, degC. -3 to 6
  /// s: cold weeks count for this kind as c / s; 1 for kinds that want a full winter (tulips),
  /// smaller for kinds that want less, 0 for kinds that want none.
  double cold_scale = 1.0;
  /// l_d: share of the full rate left in the shortest days, 0 to 1.
  double dark_rate = 0.1;
  /// L: days from first to last flower at 10 degC.
  double flower_days = 13.0;
  /// Standard deviation, in days, of published dates about the prediction that the three winters
  /// do not explain: site, stock, and how the source dates a bloom.
  double spread_days = 6.0;
  double stored_spread_days = 5.0;  ///< what storage before planting adds to it

  // Shared by all kinds.
  double winter_share = 0.5;    ///< of the spread between mild and cold winters that single years
                                ///< show: a whole season a standard deviation off is rare
  double fold_weeks = 3.3;      ///< k: weeks, x scale, in which the lack of rate falls by e
  double unchilled_rate = 0.2;  ///< r0: share of the full rate without cold
  double storage_credit = 1.5;  ///< rho: natural cold weeks worth one week in a cold store
  double half_light_h = 11.7;   ///< Nc: day length (of the clock, HeatDay) of half the full rate
  double light_width_h = 0.5;   ///< wN: width of the change about it
  double storage_relief = 0.3;  ///< u: share of the effect of short days that storage takes away
  double relief_weeks = 8.0;    ///< stored weeks that take away all that storage_relief says
  double rooting_heat = 100.0;  ///< of the mix above 0 degC that a dry bulb needs to root, degC d
  double least_days = 14.0;     ///< from rooted to first flower, however warm
  double depth_share = 0.008;   ///< more heat a centimetre deeper, of the heat sum
  double blast_c = 24.0;        ///< mean of the ten days before the flower above which buds dry up
  double peak_share = 0.4;      ///< share of the wave before its peak
  double warmth_per_k = 0.04;   ///< b: relative shortening of the wave per kelvin above 10 degC
  double shoots_share = 0.3;    ///< share of the heat sum at which noses break the surface
};

/// One figure of data/bloom.csv: taxon ("*" where shared by all), quantity, value and origin.
struct BloomFact {
  std::string taxon, quantity;
  double value = 0.0;
  std::string unit, origin, source;
};

/// Bloom parameters of every kind. A kind without rows of its own has those of its season class:
/// partial pooling taken to its end.
class BloomTable {
 public:
  /// CSV with the columns taxon, quantity, value, unit, origin, source, in any order.
  /// `kinds`: ids that may stand beside the classes; empty: any.
  /// @throws InputError naming every fault: unknown kind or quantity, value out of range, figure
  /// given twice.
  static BloomTable parse(std::string_view csv, const std::string& file,
                          std::span<const std::string_view> kinds = {});
  /// The table compiled in (data/bloom.csv).
  static BloomTable builtin();

  /// Rows of a later file replace those of the same taxon and quantity and add others.
  void merge(const BloomTable& other);

  /// Parameters of a kind: its own rows; else by its season class, forcing cold and flowering days.
  [[nodiscard]] BloomParameters of(const Taxon& taxon) const;

  [[nodiscard]] const std::vector<BloomFact>& facts() const { return facts_; }

 private:
  [[nodiscard]] const BloomFact* find(std::string_view taxon, std::string_view quantity) const;

  std::vector<BloomFact> facts_;
};

}  // namespace bulbwright
