#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "base/quantity.hpp"
#include "catalogue/taxon.hpp"
#include "plan/request.hpp"
#include "pot/section.hpp"

namespace bulbwright {

/// A plan is the whole answer for one pot: plain data, everything computed, nothing left to a
/// renderer.

/// The pot as planned with: inner sizes.
struct PlannedPot {
  std::string name;
  Shape shape = Shape::round;
  Section rim;                        ///< inner outline at the rim
  Section base;                       ///< inner outline at the floor
  Millimetres height;                 ///< inner
  Millimetres headspace;              ///< rim to mix surface
  Litres volume;                      ///< to the rim
  std::string material;               ///< resolved, never empty
  std::vector<ProfileLevel> profile;  ///< inner, floor first; two levels for a plain taper
  Millimetres corner;
};

struct LayerBulbs {
  std::string taxon;  ///< id
  std::string name;   ///< for people
  std::string label;  ///< the grower's own name for the lot, may be empty
  std::string grade;  ///< circumference as bought, "12" or "10/14" (cm)
  int count = 0;
  Millimetres diameter;
};

/// x, y from the section's origin, along its length and width; multiples of 0.1 mm.
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
  Millimetres gap;             ///< asked for, or reached with own bulbs
  Millimetres least_gap;       ///< measured in the printed positions
  Millimetres wall;
  int count = 0;
  int upper_bound = 0;  ///< proven most at `gap`
  std::string bound_name;
  int count_set_close = 0;  ///< how many would fit with 10 mm between; 0 when not computed
  bool own_count = false;   ///< the grower's own number of bulbs
  std::vector<LayerBulbs> bulbs;
  std::vector<BulbPosition> positions;
};

struct WeekNeed {
  double least = 0.0;
  double recommended = 0.0;
  double most = 0.0;
};

/// Cold weeks that the pot gives after planting, by kind of winter.
struct NaturalCold {
  double normal = 0.0;
  double mild = 0.0;
  double cold = 0.0;
};

struct TaxonCold {
  std::string taxon;
  std::string name;
  Use use = Use::outdoors;
  WeekNeed need;
  NaturalCold natural;
  double already_weeks = 0.0;   ///< the bulbs came with these
  double storage_weeks = 0.0;   ///< to give before planting; 0 is an answer
  bool chilled_in_pot = false;  ///< moist-only kinds: potted at once, the pot is chilled
  std::optional<Day> storage_start;
  std::optional<Day> storage_end;  ///< the planting day
  double missing_weeks = 0.0;     ///< recommended less everything, in the poorest winter; 0 or more
  double chance_least_met = 1.0;  ///< probability over the winters that the least is reached
  Celsius storage_temperature{5.0};
};

/// What is to be done or seen on a day. Stable words for JSON are in to_string().
enum class Task {
  order_by,       ///< have ordered
  bulbs_arrive,   ///< earliest day bulbs can be had
  storage_start,  ///< into the refrigerator
  storage_check,  ///< look over: firm, shrivelled, mouldy, rotten, sprouted
  pot_and_chill,  ///< moist-only kinds are potted and the pot chilled
  soak,           ///< hours before planting
  plant,
  water_in,
  top_up,  ///< mix has settled
  keep_moist,
  shelter,          ///< from hard frost
  uncover,          ///< lift mesh or cover at the first noses
  shoots,           ///< expected
  flower,           ///< a wave, first to last
  bring_in,         ///< forcing: from the cold to a light room
  after_flowering,  ///< discard, keep and feed, or dry off
};
const char* to_string(Task task);

struct PlannedDate {
  Day date;
  std::optional<Day> until;
  Task task = Task::plant;
  std::string taxon;  ///< may be empty
  int layer = 0;      ///< 0: the whole pot
  std::string text;   ///< in a gardener's words, for people
};

struct PlannedWave {
  std::string taxon;
  std::string name;
  int layer = 1;
  Day first, peak, last;
  Day earliest_first, latest_last;  ///< over the winters
  bool confident = true;            ///< false: under-chilled, dates are only a guide
  bool flowers = true;              ///< false: none this season; the days are the season's last
};

struct DayGap {
  Day from;  ///< first day without a flower
  Day to;    ///< last day without a flower
};

struct Display {
  std::optional<Day> first, last;
  int days_in_flower = 0;  ///< days on which something is open
  std::vector<DayGap> gaps;
  std::optional<DayWindow> longest;  ///< run of days with something open, the earliest of equals
};

struct PlanMaterials {
  Litres mix_settled;               ///< in the pot, bulbs taken off
  Litres mix_loose;                 ///< to buy, before settling, perlite included
  Litres perlite;                   ///< of mix_loose
  std::vector<Litres> mix_by_step;  ///< settled, under layer 1, between the layers, and on top
  Millimetres mesh_disc;            ///< along x; 0: none
  Millimetres mesh_width;           ///< along y; as mesh_disc for a round pot
  Millimetres mesh_opening;         ///< at most; 0: none
  int pins = 0;
  int labels = 0;
  Kilograms filled_weight;  ///< watered and drained
  /// The same for the lightest and heaviest mixes measured and a shell a quarter off.
  Kilograms filled_weight_low, filled_weight_high;
  Kilograms shell_weight;
  std::string lifting;           ///< "one person", "two people" or "do not lift", by guideline
  Kilograms lift_one, lift_two;  ///< the guideline used
};

struct ShoppingNeed {
  std::string taxon;
  std::string name;
  std::string grade;
  std::string label;
  std::string pot;
  int layer = 1;
  int need = 0;      ///< bulbs to plant
  int spares = 0;    ///< for losses before planting
  int buy = 0;       ///< need and spares; 0 where the grower has them
  bool own = false;  ///< the grower has them already
};

struct PlanCaution {
  std::string code;
  std::string severity;    ///< "high", "medium", "low"
  std::string text;        ///< hazard and advice in full
  std::string short_text;  ///< one line for the bench
  std::string source;
};

/// Days on which a kind may go into the mix.
struct PlantingWindow {
  std::string taxon;  ///< empty: the pot, the intersection
  std::optional<DayWindow> days;
  std::string reason;  ///< what bounds it, in words
};

struct PlacePicture {
  std::string label;  ///< "zone 9b", "San Francisco", "your normals"
  double latitude = 0.0;
  Hemisphere hemisphere = Hemisphere::north;
  std::string basis;                    ///< how the winters were made, in words
  std::array<double, 12> mix_mean_c{};  ///< monthly means of the pot's mix in the normal winter
  std::optional<Day> measured_until;    ///< with records of a running winter
};

/// Of a plan made backward from a wanted day or window of flower.
struct WantedReport {
  DayWindow wanted;   ///< one day: first = last
  Day predicted;      ///< the day of most flower
  int open = 0;       ///< of a day: kinds open on it; of a window: its days with something open
  int days_off = 0;   ///< predicted less wanted; of a window: from it to the nearest flower
  bool met = false;   ///< as much open as can be: see WantedAnswer
  std::string limit;  ///< what keeps it from nearer, in words; empty where nothing is off
};

/// Of a plan whose waves were to follow each other: what an ordinary plan would have given.
struct SpreadReport {
  Day plant_before;
  std::vector<double> weeks_before;  ///< of storage, by kind, bottom layer first
  Display before;
};

struct Plan {
  bool ok = true;
  int season = 0;
  PlannedPot pot;
  PlacePicture place;
  Day plant;
  bool plant_given = false;  ///< by the grower, else chosen
  std::vector<PlannedLayer> layers;
  std::vector<TaxonCold> cold;
  std::vector<PlantingWindow> windows;
  std::vector<PlannedDate> dates;
  std::vector<PlannedWave> waves;
  Display display;
  std::optional<WantedReport> wanted;
  std::optional<SpreadReport> spread;
  PlanMaterials materials;
  std::vector<ShoppingNeed> shopping;
  std::vector<Notice> notices;
  std::vector<PlanCaution> cautions;
};

}  // namespace bulbwright
