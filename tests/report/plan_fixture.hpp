#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "plan/plan.hpp"

/// Plans made by hand, for the tests of what prints them. The demo pot of the terrace of Saltmarsh
/// Lane Library: 380/290/360 mm terracotta, zone 9b, three layers. The figures hang together
/// (levels, counts, dates), but a renderer only has to print them.
namespace bulbwright::fixture {

/// Centres of a hexagonal lattice of pitch `pitch` within `reach` of the centre, from the middle
/// outwards.
inline std::vector<std::pair<double, double>> lattice(double pitch, double reach) {
  std::vector<std::pair<double, double>> centres;
  const int most = static_cast<int>(reach / pitch * 1.2) + 1;
  for (int row = -most; row <= most; ++row) {
    for (int column = -most; column <= most; ++column) {
      const double x = pitch * (column + 0.5 * (row % 2)), y = pitch * std::sqrt(0.75) * row;
      if (std::hypot(x, y) <= reach) centres.emplace_back(rounded(x, 0.1), rounded(y, 0.1));
    }
  }
  std::stable_sort(centres.begin(), centres.end(), [](const auto& a, const auto& b) {
    return rounded(std::hypot(a.first, a.second), 1.0) <
           rounded(std::hypot(b.first, b.second), 1.0);
  });
  return centres;
}

struct LayerSketch {
  std::string taxon, name, grade;
  double diameter_mm = 40.0, height_mm = 46.0, depth_mm = 250.0, section_mm = 311.3, gap_mm = 25.0;
  int close = 0;  ///< set close
};

inline PlannedLayer round_layer(int level, const LayerSketch& sketch) {
  constexpr double headspace = 25.0, pot_height = 360.0, wall = 10.0;
  PlannedLayer layer;
  layer.level = level;
  layer.depth = Millimetres{sketch.depth_mm};
  layer.below_rim = layer.fill_below_rim = Millimetres{sketch.depth_mm + headspace};
  layer.above_floor = Millimetres{pot_height - headspace - sketch.depth_mm};
  layer.bulb_height = Millimetres{sketch.height_mm};
  layer.cover = Millimetres{sketch.depth_mm - sketch.height_mm};
  layer.section = {Shape::round, Millimetres{sketch.section_mm}, Millimetres{sketch.section_mm},
                   Millimetres{0.0}};
  layer.gap = layer.least_gap = Millimetres{sketch.gap_mm};
  layer.wall = Millimetres{wall};
  const auto centres = lattice(sketch.diameter_mm + sketch.gap_mm,
                               (sketch.section_mm - sketch.diameter_mm) / 2.0 - wall);
  for (const auto& [x, y] : centres) {
    layer.positions.push_back({sketch.taxon, x, y, Millimetres{sketch.diameter_mm}});
  }
  layer.count = static_cast<int>(centres.size());
  layer.upper_bound = layer.count + 2;
  layer.bound_name = "Groemer";
  layer.count_set_close = sketch.close;
  layer.bulbs = {
      {sketch.taxon, sketch.name, "", sketch.grade, layer.count, Millimetres{sketch.diameter_mm}}};
  return layer;
}

inline TaxonCold taxon_cold(const LayerSketch& sketch, WeekNeed need, NaturalCold natural,
                            double weeks, Day plant) {
  TaxonCold cold;
  cold.taxon = sketch.taxon;
  cold.name = sketch.name;
  cold.need = need;
  cold.natural = natural;
  cold.storage_weeks = weeks;
  if (weeks > 0.0) {
    cold.storage_start = plant - static_cast<int>(std::lround(weeks * 7.0));
    cold.storage_end = plant;
  }
  cold.chance_least_met = 0.97;
  return cold;
}

inline Section round_section(double diameter_mm) {
  return {Shape::round, Millimetres{diameter_mm}, Millimetres{diameter_mm}, Millimetres{0.0}};
}

inline const LayerSketch& tulip() {
  static const LayerSketch sketch{"tulip-triumph", "Triumph tulip", "12", 38.2, 45.8,
                                  250.0,           311.3,           25.0, 26};
  return sketch;
}
inline const LayerSketch& daffodil() {
  static const LayerSketch sketch{
      "narcissus-large-cupped", "Large-cupped daffodil", "15", 47.7, 62.1, 179.0, 329.1, 25.0, 21};
  return sketch;
}
inline const LayerSketch& crocus() {
  static const LayerSketch sketch{
      "crocus-large", "Large Dutch crocus (Crocus vernus)", "9", 28.6, 24.6, 92.0, 350.8, 25.0, 62};
  return sketch;
}

inline void add_cold_and_dates(Plan& plan) {
  plan.cold = {
      taxon_cold(tulip(), {8, 11, 13}, {4.1, 1.9, 5.6}, 9.1, plan.plant),
      taxon_cold(daffodil(), {4, 7, 9}, {4.1, 1.9, 5.6}, 5.1, plan.plant),
      taxon_cold(crocus(), {6, 9, 12}, {3.6, 1.5, 5.0}, 7.5, plan.plant),
  };
  const auto start = [&](std::size_t i) { return *plan.cold[i].storage_start; };
  const auto kinds = [](const LayerSketch& sketch) {
    return std::vector<KindName>{{sketch.taxon, sketch.name}};
  };
  plan.dates = {
      {Day{2026, 9, 1}, {}, Task::order_by},
      {Day{2026, 9, 15}, {}, Task::bulbs_arrive},
      {start(0), {}, Task::storage_start, kinds(tulip()), 1},
      {start(2), {}, Task::storage_start, kinds(crocus()), 3},
      {start(1), {}, Task::storage_start, kinds(daffodil()), 2},
      {Day{2026, 11, 20}, Day{2027, 1, 7}, Task::storage_check},
      {plan.plant, {}, Task::plant},
      {plan.plant, {}, Task::water_in},
      {Day{2027, 1, 15}, {}, Task::top_up},
      {plan.plant, Day{2027, 4, 17}, Task::keep_moist},
      {Day{2027, 1, 30}, {}, Task::shoots, kinds(crocus()), 3},
      {Day{2027, 1, 30}, {}, Task::uncover},
      {Day{2027, 2, 18}, Day{2027, 3, 3}, Task::flower, kinds(crocus()), 3},
      {Day{2027, 3, 9}, Day{2027, 3, 25}, Task::flower, kinds(daffodil()), 2},
      {Day{2027, 3, 28}, Day{2027, 4, 10}, Task::flower, kinds(tulip()), 1},
      {Day{2027, 4, 11}, {}, Task::after_flowering, kinds(tulip()), 1, AfterFlowering::discard},
  };
}

inline void add_flowers(Plan& plan) {
  plan.waves = {
      {"crocus-large", crocus().name, 3, Day{2027, 2, 18}, Day{2027, 2, 24}, Day{2027, 3, 3},
       Day{2027, 2, 9}, Day{2027, 3, 12}, true},
      {"narcissus-large-cupped", daffodil().name, 2, Day{2027, 3, 9}, Day{2027, 3, 16},
       Day{2027, 3, 25}, Day{2027, 2, 27}, Day{2027, 4, 3}, true},
      {"tulip-triumph", tulip().name, 1, Day{2027, 3, 28}, Day{2027, 4, 3}, Day{2027, 4, 10},
       Day{2027, 3, 19}, Day{2027, 4, 21}, true},
  };
  plan.display = {
      Day{2027, 2, 18},
      Day{2027, 4, 10},
      45,
      {{Day{2027, 3, 4}, Day{2027, 3, 8}, 0.7}, {Day{2027, 3, 26}, Day{2027, 3, 27}, 0.55}},
      DayWindow{Day{2027, 3, 9}, Day{2027, 3, 25}},
      {{0, 1, 5, 0.7}, {1, 2, 2, 0.55}}};
}

inline void add_cautions(Plan& plan) {
  using enum CautionSeverity;
  const auto add = [&](const char* code, CautionSeverity severity, const char* line) {
    Caution caution;
    caution.code = code;
    caution.severity = severity;
    caution.text = std::string{code} + ": the hazard and the advice in full.";
    caution.short_text = line;
    caution.source = "common practice";
    plan.cautions.push_back(std::move(caution));
  };
  add("food-separate", high,
      "Refrigerate in a closed, labelled bag away from food: bulbs pass for onions.");
  add("food-label", high, "Label every bag: kind, date, poisonous, not food.");
  add("eaten-narcissus", high,
      "Poisonous if eaten: tulips and daffodils. Keep the bulbs from children and pets.");
  add("pets-tulip", high, "");
  add("legionella", high,
      "Open the bag of mix away from your face, wet the mix; mask, gloves; wash hands.");
  add("lift", high, "About 42 kg filled: fill it where it will stand; never lift it alone.");
  add("perlite-dust", medium,
      "Wet the perlite in its bag before pouring; mask and eye protection.");
  add("mesh-edge", medium,
      "Cut wire mesh stabs: thick gloves, eye protection; fold the ends under.");
  add("tulip-finger", medium, "Wear nitrile gloves: tulips and daffodils irritate the skin.");
  add("ethylene", medium, "No apples, pears or other ripening fruit in that refrigerator.");
  add("frost-crack", medium,
      "Frost splits this pot: feet under it, holes open, shelter from rain, wrap.");
  add("pest-squirrel", medium, "Squirrels eat the tulips and crocuses.");
  add("slugs", low, "");
}

/// The whole three-layer plan, north, planted on 8 January 2027.
inline Plan terrace_plan() {
  Plan plan;
  plan.season = 2026;
  plan.pot.name = "south steps";
  plan.pot.rim = round_section(380.0);
  plan.pot.base = round_section(290.0);
  plan.pot.height = Millimetres{360.0};
  plan.pot.headspace = Millimetres{25.0};
  plan.pot.volume = Litres{31.9};
  plan.pot.material = "terracotta";
  plan.pot.profile = {{Millimetres{0.0}, Millimetres{290.0}, Millimetres{290.0}},
                      {Millimetres{360.0}, Millimetres{380.0}, Millimetres{380.0}}};
  plan.place.label = "zone 9b";
  plan.place.latitude = 37.0;
  plan.place.basis = Remark{RemarkCode::from_stations,
                            {},
                            {{DetailName::stations, 12}, {DetailName::yearly, Kelvins{1.4}}}};
  plan.place.mix_mean_c = {9.8, 11.2, 12.9, 14.6, 17.3, 20.1, 22.4, 22.3, 20.9, 17.2, 12.9, 9.9};
  plan.plant = Day{2027, 1, 8};
  plan.plant_given = true;
  plan.layers = {round_layer(1, tulip()), round_layer(2, daffodil()), round_layer(3, crocus())};
  add_cold_and_dates(plan);
  plan.windows = {{"tulip-triumph",
                   DayWindow{Day{2026, 12, 5}, Day{2027, 1, 31}},
                   {RemarkCode::open_to_the_end}},
                  {"", DayWindow{Day{2026, 12, 5}, Day{2027, 1, 20}}, {RemarkCode::days_for_all}}};
  add_flowers(plan);
  plan.materials = {Litres{26.4},
                    Litres{30.4},
                    Litres{7.6},
                    {},
                    Millimetres{360.0},
                    Millimetres{360.0},
                    Millimetres{13.0},
                    4,
                    {},
                    {},
                    {},
                    3,
                    Kilograms{41.6},
                    Kilograms{32.6},
                    Kilograms{50.1},
                    Kilograms{9.7},
                    LiftVerdict::not_lifted,
                    Kilograms{16.0},
                    Kilograms{21.0}};
  plan.materials.mix_by_step = {Litres{5.9}, Litres{5.6}, Litres{6.0}, Litres{8.9}};
  for (const PlannedLayer& layer : plan.layers) {
    plan.shopping.push_back({layer.bulbs[0].taxon, layer.bulbs[0].name, layer.bulbs[0].grade, "",
                             plan.pot.name, layer.level, layer.count, 3, layer.count + 3, false});
  }
  plan.notices = {
      {NoticeCode::assumed,
       Severity::note,
       {},
       {{DetailName::why,
         std::vector<Remark>{{RemarkCode::base_share, {}, {{DetailName::share, 0.75}}}}}}},
      {NoticeCode::mix_warm,
       Severity::warning,
       {{"tulip-triumph", "Triumph tulip"}},
       {{DetailName::mix, Celsius{13.5}},
        {DetailName::advice,
         std::vector<Remark>{
             {RemarkCode::wait_for_day, {}, {{DetailName::day, Day{2027, 1, 20}}}}}}}},
  };
  add_cautions(plan);
  return plan;
}

}  // namespace bulbwright::fixture
