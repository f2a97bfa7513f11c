#include "report/plan_json.hpp"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "input/pot_file_writer.hpp"
#include "report/common_json.hpp"
#include "report/date_text.hpp"
#include "report/notice_json.hpp"
#include "report/notice_text.hpp"
#include "report/place_json.hpp"
#include "report/section_json.hpp"
#include "report/sheet/words.hpp"

namespace bulbwright::report {
namespace {

/// To 0.1, never -0; null where there is nothing to measure.
Json tenth(double value) {
  if (!std::isfinite(value)) return nullptr;
  return rounded(value, 0.1);
}
template <class Unit>
Json tenth(Quantity<Unit> quantity) {
  return tenth(quantity.value());
}

void put_day(Json& json, const char* key, const std::optional<Day>& day) {
  if (day) json[key] = to_iso(*day);
}

Json profile_json(const PlannedPot& pot) {
  return list_of(pot.profile, [&](const ProfileLevel& level) {
    const Section section{pot.shape, level.length, level.width,
                          pot.shape == Shape::rectangle ? pot.corner : Millimetres{}};
    return Json{{"height_mm", tenth(level.height)}, {"section", section_json(section)}};
  });
}

Json pot_json(const PlannedPot& pot) {
  Json json = Json::object();
  put_text(json, "name", pot.name);
  json["shape"] = word_of(pot.shape);
  json["rim"] = section_json(pot.rim);
  json["base"] = section_json(pot.base);
  json["height_mm"] = tenth(pot.height);
  json["headspace_mm"] = tenth(pot.headspace);
  json["volume_litres"] = tenth(pot.volume);
  put_text(json, "material", pot.material);
  json["profile"] = profile_json(pot);
  return json;
}

Json bulbs_json(const LayerBulbs& bulbs) {
  Json json{{"taxon", bulbs.taxon},
            {"count", bulbs.count},
            {"diameter_mm", tenth(bulbs.diameter)},
            {"name", bulbs.name}};
  put_text(json, "label", bulbs.label);
  put_text(json, "grade", bulbs.grade);
  return json;
}

Json position_json(const BulbPosition& bulb) {
  return Json{{"taxon", bulb.taxon},
              {"x_mm", rounded(bulb.x_mm, 1e-6)},
              {"y_mm", rounded(bulb.y_mm, 1e-6)},
              {"diameter_mm", tenth(bulb.diameter)}};
}

Json layer_json(const PlannedLayer& layer) {
  Json json{{"level", layer.level},
            {"depth_mm", tenth(layer.depth)},
            {"below_rim_mm", tenth(layer.below_rim)},
            {"fill_below_rim_mm", tenth(layer.fill_below_rim)},
            {"section", section_json(layer.section)},
            {"gap_mm", tenth(layer.gap)},
            {"count", layer.count},
            {"upper_bound", layer.upper_bound},
            {"bulbs", list_of(layer.bulbs, bulbs_json)},
            {"positions", list_of(layer.positions, position_json)},
            {"above_floor_mm", tenth(layer.above_floor)},
            {"bulb_height_mm", tenth(layer.bulb_height)},
            {"cover_mm", tenth(layer.cover)},
            {"least_gap_mm", tenth(layer.least_gap)},
            {"wall_mm", tenth(layer.wall)}};
  put_text(json, "bound", layer.bound_name);
  if (layer.count_set_close > 0) json["count_set_close"] = layer.count_set_close;
  json["count_given"] = layer.count_given;
  json["own"] = layer.own ? layer.count : 0;
  json["pattern"] = word_of(layer.pattern);
  if (layer.pattern != Pattern::dense) {
    json["sets"] = layer.sets;
    json["dense_count"] = layer.dense_count;
  }
  return json;
}

Json taxon_cold_json(const TaxonCold& cold) {
  Json json{{"taxon", cold.taxon},
            {"need_weeks",
             {{"least", tenth(cold.need.least)},
              {"recommended", tenth(cold.need.recommended)},
              {"most", tenth(cold.need.most)}}},
            {"natural_weeks",
             {{"normal", tenth(cold.natural.normal)},
              {"mild", tenth(cold.natural.mild)},
              {"cold", tenth(cold.natural.cold)}}},
            {"storage_weeks", tenth(cold.storage_weeks)}};
  put_day(json, "natural_until", cold.natural_until);
  put_day(json, "storage_start", cold.storage_start);
  put_day(json, "storage_end", cold.storage_end);
  json["storage_temperature_c"] = tenth(cold.storage_temperature);
  json["chilled_in_pot"] = cold.chilled_in_pot;
  json["already_weeks"] = tenth(cold.already_weeks);
  json["missing_weeks"] = tenth(cold.missing_weeks);
  json["chance_least_met"] = rounded(cold.chance_least_met, 0.001);
  json["use"] = cold.use == Use::forcing ? "forcing" : "outdoors";
  json["name"] = cold.name;
  return json;
}

/// The refrigerator's temperature: that of the first kind that goes into it, or of the first kind.
Json cold_json(const Plan& plan) {
  Json json{{"place", plan.place.label}};
  const auto stored = std::find_if(plan.cold.begin(), plan.cold.end(),
                                   [](const TaxonCold& cold) { return cold.storage_weeks > 0.0; });
  if (!plan.cold.empty()) {
    const TaxonCold& shown = stored == plan.cold.end() ? plan.cold.front() : *stored;
    json["storage_temperature_c"] = tenth(shown.storage_temperature);
  }
  json["taxa"] = list_of(plan.cold, taxon_cold_json);
  return json;
}

Json date_json(const PlannedDate& date) {
  Json json{{"date", to_iso(date.date)}};
  put_day(json, "until", date.until);
  json["what"] = word_of(date.task);
  if (!date.kinds.empty()) json["taxon"] = date.kinds.front().taxon;
  if (date.layer > 0) json["layer"] = date.layer;
  json["text"] = plain_text(date);
  return json;
}

/// Why the dates of a wave are only a guide.
Json low_because(const PlannedWave& wave) {
  Json reasons = Json::array();
  if (!wave.confident) reasons.push_back("little-cold");
  if (!wave.observed) reasons.push_back("never-dated");
  return reasons;
}

Json wave_json(const PlannedWave& wave) {
  Json json{{"taxon", wave.taxon},
            {"layer", wave.layer},
            {"first", to_iso(wave.first)},
            {"peak", to_iso(wave.peak)},
            {"last", to_iso(wave.last)},
            {"range",
             {{"earliest_first", to_iso(wave.earliest_first)},
              {"latest_last", to_iso(wave.latest_last)},
              {"share", range_share}}},
            {"confidence", wave.confident && wave.observed ? "normal" : "low"},
            {"flowers", wave.flowers},
            {"name", wave.name}};
  if (Json reasons = low_because(wave); !reasons.empty()) json["low_because"] = std::move(reasons);
  json["deeper_mm"] = rounded(wave.deeper_cm * 10.0, 1.0);
  return json;
}

/// Each wave with the one after it; nothing of a display whose waves are not in the document.
Json between_json(const Display& display, std::span<const PlannedWave> waves) {
  Json list = Json::array();
  if (waves.empty()) return list;
  const auto wave = [&](std::size_t i) {
    return Json{{"taxon", waves[i].taxon}, {"layer", waves[i].layer}};
  };
  for (const WaveJoint& joint : display.joints) {
    list.push_back({{"before", wave(joint.before)},
                    {"after", wave(joint.after)},
                    {"gap_days", joint.gap_days},
                    {"gap_chance", rounded(joint.gap_chance, 0.001)}});
  }
  return list;
}

Json display_json(const Display& display, std::span<const PlannedWave> waves = {}) {
  Json json = display_object(display);
  json["between"] = between_json(display, waves);
  return json;
}

Json wanted_json(const WantedReport& wanted) {
  Json json{{"window", days_json(wanted.wanted)},
            {"predicted", to_iso(wanted.predicted)},
            {"open", wanted.open},
            {"days_off", wanted.days_off},
            {"met", wanted.met}};
  if (wanted.limit) json["limit"] = plain_text(*wanted.limit);
  return json;
}

Json spread_json(const SpreadReport& spread) {
  return Json{
      {"plant_before", to_iso(spread.plant_before)},
      {"storage_weeks_before", list_of(spread.weeks_before, [](double w) { return tenth(w); })},
      {"display_before", display_json(spread.before)}};
}

Json materials_json(const PlanMaterials& materials) {
  Json json{{"mix_litres", tenth(materials.mix_settled)},
            {"perlite_litres", tenth(materials.perlite)},
            {"mesh_mm", tenth(materials.mesh_disc)},
            {"pins", materials.pins},
            {"filled_weight_kg", tenth(materials.filled_weight)},
            {"filled_weight_low_kg", tenth(materials.filled_weight_low)},
            {"filled_weight_high_kg", tenth(materials.filled_weight_high)},
            {"mix_loose_litres", tenth(materials.mix_loose)},
            {"mix_by_step_litres",
             list_of(materials.mix_by_step, [](Litres step) { return tenth(step); })},
            {"mesh_width_mm", tenth(materials.mesh_width)},
            {"mesh_opening_mm", tenth(materials.mesh_opening)},
            {"mesh_beneath_mm", tenth(materials.mesh_beneath)},
            {"mesh_beneath_width_mm", tenth(materials.mesh_beneath_width)},
            {"mesh_beneath_opening_mm", tenth(materials.mesh_beneath_opening)},
            {"labels", materials.labels},
            {"shell_weight_kg", tenth(materials.shell_weight)}};
  put_text(json, "lifting", word_of(materials.lifting));
  json["lift_one_kg"] = tenth(materials.lift_one);
  json["lift_two_kg"] = tenth(materials.lift_two);
  return json;
}

Json shopping_json(const ShoppingNeed& need) {
  Json json{{"item", need.taxon}, {"need", need.need}, {"spares", need.spares}, {"buy", need.buy},
            {"unit", "bulb"},     {"name", need.name}, {"layer", need.layer}};
  json["own"] = need.own ? need.need : 0;
  put_text(json, "grade", need.grade);
  put_text(json, "label", need.label);
  put_text(json, "pot_name", need.pot);
  return json;
}

Json climate_json(const PlacePicture& place) {
  Json json{{"place", place.label},
            {"latitude", rounded(place.latitude, 0.01)},
            {"hemisphere", place.hemisphere == Hemisphere::south ? "south" : "north"}};
  if (place.basis) json["basis"] = plain_text(*place.basis);
  json["mix_mean_c"] = list_of(place.mix_mean_c, [](double mean) { return tenth(mean); });
  put_day(json, "measured_until", place.measured_until);
  put_account(json, place.account);
  json["winter"] = word_of(place.winter);
  json["winter_given"] = place.winter_given;
  return json;
}

Json window_json(const PlantingWindow& window) {
  Json json = Json::object();
  put_text(json, "taxon", window.taxon);
  if (window.days) {
    json["from"] = to_iso(window.days->first);
    json["to"] = to_iso(window.days->last);
  }
  json["reason"] = plain_text(window.reason);
  return json;
}

}  // namespace

Json caution_object(const Caution& caution) {
  Json json{{"code", caution.code}, {"text", caution.text}, {"source", caution.source}};
  put_text(json, "severity", word_of(caution.severity));
  put_text(json, "short_text", caution_line(caution, TextStyle{}));
  return json;
}

Json display_object(const Display& display) {
  Json json = Json::object();
  put_day(json, "first", display.first);
  put_day(json, "last", display.last);
  json["days_in_flower"] = display.days_in_flower;
  json["gaps"] = list_of(display.gaps, [](const DayGap& gap) {
    return Json{
        {"from", to_iso(gap.from)}, {"to", to_iso(gap.to)}, {"chance", rounded(gap.chance, 0.001)}};
  });
  if (display.longest) json["longest_run"] = days_json(*display.longest);
  return json;
}

Json plan_object(const Plan& plan) {
  Json json = document("bulbwright.plan/1");
  json["request"] = input::pot_file_object(plan.request);
  json["pot"] = pot_json(plan.pot);
  json["layers"] = list_of(plan.layers, layer_json);
  json["cold"] = cold_json(plan);
  json["dates"] = list_of(plan.dates, date_json);
  json["waves"] = list_of(plan.waves, wave_json);
  json["display"] = display_json(plan.display, plan.waves);
  json["materials"] = materials_json(plan.materials);
  json["shopping"] = list_of(plan.shopping, shopping_json);
  json["notices"] = list_of(plan.notices, notice_json);
  json["cautions"] = list_of(plan.cautions, caution_object);
  json["ok"] = plan.ok;
  json["season"] = plan.season;
  json["plant"] = to_iso(plan.plant);
  json["plant_given"] = plan.plant_given;
  json["climate"] = climate_json(plan.place);
  json["windows"] = list_of(plan.windows, window_json);
  if (plan.wanted) json["wanted"] = wanted_json(*plan.wanted);
  if (plan.spread) json["spread"] = spread_json(*plan.spread);
  return json;
}

std::string plan_json(const Plan& plan) {
  return document_text(plan_object(plan));
}

}  // namespace bulbwright::report
