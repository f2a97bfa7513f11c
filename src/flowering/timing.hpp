#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/notice.hpp"
#include "climate/place_season.hpp"
#include "cold/cold_plan.hpp"
#include "cold/pot_temperature.hpp"
#include "flowering/bloom.hpp"
#include "flowering/bloom_parameters.hpp"
#include "flowering/observed.hpp"
#include "flowering/wave.hpp"

namespace bulbwright {

/// From a planting day to cold and waves: the piece that forward plans, wanted days, staggering and
/// suggestions all run on.

/// The winters that a schedule looks at.
struct SeasonView {
  int season = 0;
  Hemisphere hemisphere = Hemisphere::north;
  const PotWinter* normal = nullptr;
  const PotWinter* mild = nullptr;
  const PotWinter* cold = nullptr;
};

/// The winters of a place's season as felt in one pot.
struct PotSeason {
  int season = 0;
  Hemisphere hemisphere = Hemisphere::north;
  std::vector<PotWinter> winters;  ///< one for each winter of the place's season
  std::vector<BloomSeason> bloom;  ///< the same winters, ready for predict_wave()
  std::size_t normal = 0, mild = 0, cold = 0;
  bool recorded = false;  ///< winters are recorded years, not normal, mild and cold

  [[nodiscard]] SeasonView view() const;
};
PotSeason pot_season(const PlaceSeason& place_season, const PotThermal& pot);

/// One kind in one layer.
struct TimedKind {
  ColdAsk ask;
  BloomParameters bloom;
  int layer = 1;
  double deeper_cm = 0.0;            ///< than the kind is usually planted; negative: shallower
  BulbState state = BulbState::dry;  ///< when it goes into the pot
};

/// What follows for a kind from the planting day.
struct KindTiming {
  ColdPlan cold;
  PlannedWave wave;
  Day shoots;                   ///< first noses in the normal winter
  std::optional<Day> bring_in;  ///< forcing: the day the pot goes indoors
  bool blasted = false;         ///< no flowers because it is too hot for the buds
  Treatment treatment = Treatment::natural;
};

struct Timing {
  Day plant;
  std::vector<KindTiming> kinds;  ///< in the order asked
  Display display;
};

/// A pot brought in to flower stands at this temperature. common practice: 15 to 18 degC
inline constexpr Celsius indoors{16.0};

/// A tip that shows in a warm autumn waits out the winter and goes on taking cold: natural cold
/// counts until so long before the first flower. common practice: leaves lead flowers by four to
/// six weeks
inline constexpr int most_shoots_lead_days = 42;

/// Noses that the thaw brings out are followed by flowers at once, but not on the same day. common
/// practice: snowdrops, the quickest, show a week before they open
inline constexpr int least_shoots_lead_days = 7;

/// The day that ends the natural cold of a kind planted on a day with so much cold, in the normal
/// winter: its noses, though not sooner than most_shoots_lead_days before the flower; for forcing
/// the day it is brought in. At the kind's usual depth: layers of one kind want the same cold, and
/// go into the refrigerator together.
Day shoots_of(const TimedKind& kind, const PotSeason& season, Day planted, const ColdState& start);

/// Cold and wave of one kind planted on `planted`; `weeks` fixes its storage weeks.
KindTiming time_kind(const TimedKind& kind, const PotSeason& season, Day planted,
                     std::optional<double> weeks = std::nullopt);

/// What is wrong or risky about a kind's cold and flowering, for the grower.
std::vector<Notice> timing_notices(const TimedKind& kind, const KindTiming& timing, Day planted);

/// All kinds of a pot.
Timing time_pot(std::span<const TimedKind> kinds, const PotSeason& season, Day planted);

}  // namespace bulbwright
