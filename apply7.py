import os
os.chdir(os.environ['D'])
def rd(p): return open(p).read()
def wr(p,s): open(p,'w').write(s)
def rep(s,a,b):
    assert a in s, a
    return s.replace(a,b)
p='src/report/common_json.hpp'; s=rd(p)
s=rep(s,'''/// { from, to }, both days in.''','''/// What every answer begins with: { schema, program { name, version } }. docs/json.md has the
/// promise that all of them keep.
nlohmann::ordered_json document(const char* schema);

/// A document as text: two-space indent, bytes that are no UTF-8 replaced, a newline at the end.
std::string document_text(const nlohmann::ordered_json& json);

/// The flags that a command without a pot file was asked with: name without dashes, value.
using AskedFlags = std::vector<std::pair<std::string, std::string>>;
nlohmann::ordered_json flags_json(const AskedFlags& flags);

/// { from, to }, both days in.''')
s=rep(s,'#include <nlohmann/json.hpp>','#include <string>\n#include <utility>\n#include <vector>\n\n#include <nlohmann/json.hpp>')
wr(p,s)
p='src/report/common_json.cpp'; s=rd(p)
s=rep(s,'''Json days_json(''','''Json document(const char* schema) {
  return Json{{"schema", schema},
              {"program", {{"name", "bulbwright"}, {"version", BULBWRIGHT_VERSION}}}};
}

std::string document_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\\n";
}

Json flags_json(const AskedFlags& flags) {
  Json json = Json::object();
  for (const auto& [name, value] : flags) json[name] = value;
  return json;
}

Json days_json(''')
wr(p,s)
# AskedFlags must not drag json into cli: its own header
wr('src/report/asked_flags.hpp','''#pragma once

#include <string>
#include <utility>
#include <vector>

namespace bulbwright::report {

/// The flags that a command without a pot file was asked with: name without dashes, and value.
using AskedFlags = std::vector<std::pair<std::string, std::string>>;

}  // namespace bulbwright::report
''')
p='src/report/common_json.hpp'; s=rd(p)
s=rep(s,'''/// The flags that a command without a pot file was asked with: name without dashes, value.
using AskedFlags = std::vector<std::pair<std::string, std::string>>;
nlohmann''','''nlohmann''')
s=rep(s,'#include <string>\n#include <utility>\n#include <vector>\n','#include <string>\n')
s=rep(s,'#include "base/notice.hpp"\n','#include "base/notice.hpp"\n#include "report/asked_flags.hpp"\n')
wr(p,s)
p='src/CMakeLists.txt'; s=rd(p)
s=rep(s,'target_compile_definitions(bulbwright_cli PRIVATE BULBWRIGHT_VERSION="${PROJECT_VERSION}")\n','''# The two files that tell the version.
set_property(SOURCE cli/program.cpp report/common_json.cpp APPEND PROPERTY COMPILE_DEFINITIONS
             BULBWRIGHT_VERSION="${PROJECT_VERSION}")
''')
wr(p,s)
# plan
p='src/plan/plan.hpp'; s=rd(p)
s=rep(s,'''struct Plan {
  bool ok = true;
''','''struct Plan {
  Request request;  ///< as it was asked, before wishes were settled
  bool ok = true;
''')
s=rep(s,'#include "materials/plan_materials.hpp"\n','#include "materials/plan_materials.hpp"\n#include "plan/request.hpp"\n')
wr(p,s)
p='src/plan/planner.cpp'; s=rd(p)
s=rep(s,'''  plan.plant_given = request.plant.has_value();
''','''  plan.request = request;
  plan.plant_given = request.plant.has_value();
''')
wr(p,s)
p='src/plan/needs.cpp'; s=rd(p)
s=rep(s,'''  needs.mix = plan.materials.mix_loose - plan.materials.perlite;
''','''  if (!plan.ok) return needs;  // nothing is bought for it
  needs.mix = plan.materials.mix_loose - plan.materials.perlite;
''')
wr(p,s)
p='src/report/plan_json.cpp'; s=rd(p)
s=rep(s,'''  json["own_count"] = layer.own_count;''','''  json["count_given"] = layer.own_count;''')
s=rep(s,'''            {"unit", "bulb"},     {"name", need.name}, {"layer", need.layer},   {"own", need.own}};
  put_text(json, "grade", need.grade);
  put_text(json, "label", need.label);
  put_text(json, "pot", need.pot);
''','''            {"unit", "bulb"},     {"name", need.name}, {"layer", need.layer}};
  json["own"] = need.own ? need.need : 0;
  put_text(json, "grade", need.grade);
  put_text(json, "label", need.label);
  put_text(json, "pot_name", need.pot);
''')
s=rep(s,'''Json place_json(const PlacePicture& place) {
  Json json{{"label", place.label},''','''Json climate_json(const PlacePicture& place) {
  Json json{{"place", place.label},''')
a=s.index('  Json json{{"schema", "bulbwright.plan/1"},'); b=s.index('  if (plan.wanted) json')
s=s[:a]+'''  Json json = document("bulbwright.plan/1");
  json["request"] = input::pot_file_object(plan.request);
  json["pot"] = pot_json(plan.pot);
  json["layers"] = list_of(plan.layers, layer_json);
  json["cold"] = cold_json(plan);
  json["dates"] = list_of(plan.dates, date_json);
  json["waves"] = list_of(plan.waves, wave_json);
  json["display"] = display_json(plan.display);
  json["materials"] = materials_json(plan.materials);
  json["shopping"] = list_of(plan.shopping, shopping_json);
  json["notices"] = list_of(plan.notices, notice_json);
  json["cautions"] = list_of(plan.cautions, caution_json);
  json["ok"] = plan.ok;
  json["season"] = plan.season;
  json["plant"] = to_iso(plan.plant);
  json["plant_given"] = plan.plant_given;
  json["climate"] = climate_json(plan.place);
  json["windows"] = list_of(plan.windows, window_json);
'''+s[b:]
s=rep(s,'return plan_object(plan).dump(2, \' \', false, Json::error_handler_t::replace) + "\\n";','return document_text(plan_object(plan));')
s=rep(s,'#include "report/common_json.hpp"','#include "input/pot_file_writer.hpp"\n#include "report/common_json.hpp"')
s=rep(s,'''/// To 0.1, never -0; null where there is no number.''','''/// To 0.1, never -0; null where there is nothing to measure.''')
wr(p,s)
p='src/report/plan_json.hpp'; s=rd(p)
s=rep(s,'''chances to 0.001; no -0. A date, a weight or a text
/// that is not known is an absent key.''','''chances to 0.001; no -0. A date, a weight or a text
/// that is not known is an absent key; least_gap_mm of a single bulb is null.''')
wr(p,s)
# shop
p='src/report/shop_report.hpp'; s=rd(p)
s=rep(s,"""pieces are whole numbers, litres to 0.1. `sure` is null: a flat rate has no probability.
std::string shop_json(const ShoppingList& list);""","""pieces are whole numbers, litres to 0.1. `sure` is null: a flat rate has no probability.
/// `requests`: what was asked of each pot, in the order of the list.
std::string shop_json(const ShoppingList& list, std::span<const Request> requests);""")
s=rep(s,'#include <string>\n\n#include "report','#include <span>\n#include <string>\n\n#include "plan/request.hpp"\n#include "report')
wr(p,s)
p='src/report/shop_report.cpp'; s=rd(p)
s=rep(s,"""Json pot_json(const PotNeeds& pot) {
  Json json = Json::object();
""","""Json pot_json(const PotNeeds& pot, std::size_t index) {
  Json json{{"number", index + 1}};
""")
s=rep(s,'    layer["own"] = bulbs.own;','    layer["own"] = bulbs.own ? bulbs.count : 0;')
s=rep(s,'  json["mix_litres"] = rounded(pot.mix.value(), 0.1);','  json["mix_loose_litres"] = rounded((pot.mix + pot.perlite).value(), 0.1);')
s=rep(s,"""  Json json{{"pot", share.pot}};
  if (share.layer > 0) json["layer"] = share.layer;
  json["need"] = amount_json(item, share.need);
  if (share.own) json["own"] = true;
""","""  Json json{{"pot_number", share.pot + 1}};
  if (share.layer > 0) json["layer"] = share.layer;
  json["need"] = amount_json(item, share.need);
  if (item.kind == ItemKind::bulb) json["own"] = share.own ? amount_json(item, share.need) : Json(0);
""")
s=rep(s,'json["opening_mm"]','json["mesh_opening_mm"]')
a=s.index('std::string shop_json('); b=s.index('std::string shop_csv(')
s=s[:a]+"""std::string shop_json(const ShoppingList& list, std::span<const Request> requests) {
  Json json = document("bulbwright.shop/1");
  json["request"] = Json::array();
  for (const Request& request : requests)
    json["request"].push_back(input::pot_file_object(request));
  json["sure"] = nullptr;
  json["pots"] = Json::array();
  for (std::size_t i = 0; i < list.pots.size(); ++i)
    json["pots"].push_back(pot_json(list.pots[i], i));
  json["items"] = Json::array();
  for (const ShoppingItem& item : list.items) json["items"].push_back(item_json(item));
  return document_text(json);
}

"""+s[b:]
s=rep(s,'#include "report/section_json.hpp"','#include "input/pot_file_writer.hpp"\n#include "report/common_json.hpp"\n#include "report/section_json.hpp"')
wr(p,s)
p='src/cli/shop_command.cpp'; s=rd(p)
s=rep(s,"""    result.document = report::shop_json(list);""","""    std::vector<Request> requests;
    for (const Pot& pot : pots) requests.push_back(pot.request);
    result.document = report::shop_json(list, requests);""")
wr(p,s)
# suggest
p='src/suggest/suggestion.hpp'; s=rd(p)
s=rep(s,"""struct Suggestions {
""","""struct Suggestions {
  Request request;  ///< pot, place and dates asked for
  SuggestionWish wish;
""")
wr(p,s)
p='src/suggest/suggestion.cpp'; s=rd(p)
s=rep(s,"""  Suggestions result;
  result.place""","""  Suggestions result;
  result.request = request;
  result.wish = wish;
  result.place""")
wr(p,s)
p='src/report/suggest_report.cpp'; s=rd(p)
s=rep(s,'{"stretch", days_json(suggestion.stretch)}','{"longest_run", days_json(suggestion.stretch)}')
s=rep(s,"""}  // namespace

std::string suggest_json""","""template <class Word>
Json words_json(const std::vector<Word>& words) {
  Json list = Json::array();
  for (const Word word : words) list.push_back(to_string(word));
  return list;
}

/// The flags that say which stacks are wanted.
Json wish_json(const SuggestionWish& wish) {
  return Json{{"window", days_json(wish.window)},
              {"layers", wish.most_layers},
              {"no_storage", wish.no_storage},
              {"safe_for", words_json(wish.safe_for)},
              {"not_eaten_by", words_json(wish.not_eaten_by)},
              {"with", wish.with},
              {"without", wish.without},
              {"best", wish.count}};
}

}  // namespace

std::string suggest_json""")
s=rep(s,"""  Json json{{"schema", "bulbwright.suggest/1"}, {"searched", suggestions.stacks}};
""","""  Json json = document("bulbwright.suggest/1");
  json["request"] = input::pot_file_object(suggestions.request);
  json["wish"] = wish_json(suggestions.wish);
  json["searched"] = suggestions.stacks;
""")
s=rep(s,"""  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\\n";""","  return document_text(json);")
wr(p,s)
# cold
p='src/report/cold_report.hpp'; s=rd(p)
s=rep(s,'std::string cold_json(const ColdReport& report);','std::string cold_json(const ColdReport& report, const Request& request);')
s=rep(s,'#include "report/text_style.hpp"','#include "plan/request.hpp"\n#include "report/text_style.hpp"')
wr(p,s)
p='src/report/cold_report.cpp'; s=rd(p)
a=s.index('std::string cold_json('); b=s.index('  if (report.latitude)')
s=s[:a]+"""std::string cold_json(const ColdReport& report, const Request& request) {
  Json json = document("bulbwright.cold/1");
  json["request"] = input::pot_file_object(request);
  json["place"] = cold_place(report);
"""+s[b:]
a=s.index('  json["pot"] = {{"name"'); b=s.index('  const ColdPeriod& period')
s=s[:a]+"""  json["pot"] = pot_json(report);
"""+s[b:]
s=rep(s,"""}  // namespace

std::string cold_json""","""Json pot_json(const ColdReport& report) {
  Json json = Json::object();
  if (!report.pot_name.empty()) json["name"] = report.pot_name;
  json["material"] = report.material;
  json["filled_litres"] = rounded(report.pot_volume.value(), 0.1);
  json["exposure"] = to_string(report.exposure);
  json["lag_hours"] = rounded(report.lag_hours, 0.001);
  json["daily_swing_left"] = rounded(report.swing_left, 0.01);
  return json;
}

}  // namespace

std::string cold_json""")
a=s.index('  Json notices = Json::array();'); b=s.index('std::string cold_csv(')
s=s[:a]+"""  json["notices"] = Json::array();
  for (const Notice& notice : report.notices) json["notices"].push_back(notice_json(notice));
  return document_text(json);
}

"""+s[b:]
s=rep(s,'#include "report/cold_words.hpp"','#include "input/pot_file_writer.hpp"\n#include "report/cold_words.hpp"\n#include "report/common_json.hpp"')
wr(p,s)
p='src/cli/cold_command.cpp'; s=rd(p)
s=rep(s,'report::cold_json(report)','report::cold_json(report, asked.request)')
wr(p,s)
# fit
p='src/report/fit_report.hpp'; s=rd(p)
s=rep(s,"""struct FitReport {
""","""struct FitReport {
  AskedFlags request;
""")
s=rep(s,'#include "pot/section.hpp"','#include "pot/section.hpp"\n#include "report/asked_flags.hpp"')
wr(p,s)
p='src/report/fit_report.cpp'; s=rd(p)
a=s.index('  const Json json{{"schema", "bulbwright.fit/1"},'); b=s.index('std::string fit_csv(')
s=s[:a]+"""  Json json = document("bulbwright.fit/1");
  json["request"] = flags_json(report.request);
  json["section"] = section_json(report.section);
  json["bulb_mm"] = rounded(report.bulb.value(), 0.001);
  json["gap_mm"] = clearance(report.packing.gap);
  json["wall_mm"] = rounded(report.wall.value(), 0.001);
  json["count"] = report.packing.bulbs.size();
  json["upper_bound"] = report.packing.upper_bound;
  json["bound"] = report.packing.bound_name;
  json["positions"] = std::move(positions);
  json["least_gap_mm"] = clearance(report.packing.least_gap);
  json["least_wall_mm"] = clearance(report.packing.least_wall);
  return document_text(json);
}

"""+s[b:]
s=rep(s,'#include "report/section_json.hpp"','#include "report/common_json.hpp"\n#include "report/section_json.hpp"')
wr(p,s)
p='src/cli/fit_command.cpp'; s=rd(p)
s=rep(s,"""  CommandResult result;
""","""  fit.request = flags_of(options);
  CommandResult result;
""")
s=rep(s,"""CommandResult run(""","""/// What bears on the answer, as it was written or taken for granted.
report::AskedFlags flags_of(const FitOptions& options) {
  report::AskedFlags flags{{"top", options.top}, {"shape", options.shape}};
  if (options.shape == "rectangle") flags.emplace_back("corner", options.corner);
  flags.emplace_back("bulb", options.bulb);
  flags.emplace_back("wall", options.wall);
  if (options.count.empty()) {
    flags.emplace_back("gap", options.gap);
  } else {
    flags.emplace_back("count", options.count);
  }
  flags.emplace_back("effort", options.effort);
  return flags;
}

CommandResult run(""")
wr(p,s)
# places
p='src/report/places_report.hpp'; s=rd(p)
s=rep(s,"""struct PlacesReport {
""","""struct PlacesReport {
  AskedFlags request;
""")
s=rep(s,'#include "report/text_style.hpp"','#include "report/asked_flags.hpp"\n#include "report/text_style.hpp"')
wr(p,s)
p='src/report/places_report.cpp'; s=rd(p)
s=rep(s,"""  Json json{{"schema", "bulbwright.places/1"}};
""","""  Json json = document("bulbwright.places/1");
  json["request"] = flags_json(report.request);
""")
s=rep(s,"""  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\\n";""","  return document_text(json);")
s=rep(s,'#include "report/section_json.hpp"','#include "report/common_json.hpp"\n#include "report/section_json.hpp"')
wr(p,s)
p='src/cli/places_command.cpp'; s=rd(p)
s=rep(s,"""  const PlaceCatalogue places = input::load_places(options.common.data);
  report::PlacesReport report;
""","""  const PlaceCatalogue places = input::load_places(options.common.data);
  report::PlacesReport report;
  report.request = flags_of(options);
""")
s=rep(s,"""CommandResult run(""","""report::AskedFlags flags_of(const PlacesOptions& options) {
  report::AskedFlags flags;
  std::string words;
  for (const std::string& word : options.words) words += (words.empty() ? "" : " ") + word;
  if (!words.empty()) flags.emplace_back("words", words);
  for (const auto& [name, value] : {std::pair{"near", options.near}, {"count", options.count},
                                    {"zone", options.zone}, {"region", options.region}}) {
    if (!value.empty()) flags.emplace_back(name, value);
  }
  if (options.south) flags.emplace_back("south", "true");
  return flags;
}

CommandResult run(""")
wr(p,s)
# bulbs
p='src/report/bulbs_report.hpp'; s=rd(p)
s=rep(s,"""/// with value, range, unit, origin and source.
std::string bulbs_json(std::span<const Taxon* const> taxa);""","""/// with value, range, unit, origin and source. `request`: the ids asked for, none for all.
std::string bulbs_json(std::span<const Taxon* const> taxa, const AskedFlags& request);""")
s=rep(s,'#include "report/text_style.hpp"','#include "report/asked_flags.hpp"\n#include "report/text_style.hpp"')
wr(p,s)
p='src/report/bulbs_report.cpp'; s=rd(p)
s=rep(s,'std::string bulbs_json(std::span<const Taxon* const> taxa) {','std::string bulbs_json(std::span<const Taxon* const> taxa, const AskedFlags& request) {')
s=rep(s,'Json{{"id", taxon->id},','Json{{"taxon", taxon->id},')
a=s.index('  const Json json{{"schema", "bulbwright.bulbs/1"}'); b=s.index('std::string bulbs_csv(')
s=s[:a]+"""  Json json = document("bulbwright.bulbs/1");
  json["request"] = flags_json(request);
  json["taxa"] = std::move(list);
  return document_text(json);
}

"""+s[b:]
s=rep(s,'#include "report/section_json.hpp"','#include "report/common_json.hpp"\n#include "report/section_json.hpp"')
wr(p,s)
p='src/cli/bulbs_command.cpp'; s=rd(p)
s=rep(s,"""    result.document = report::bulbs_json(taxa);""","""    report::AskedFlags request;
    for (const std::string& id : options.ids) request.emplace_back("id", id);
    result.document = report::bulbs_json(taxa, request);""")
wr(p,s)
