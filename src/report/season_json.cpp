// The season for programs: one document, or one record a line.
#include <algorithm>

#include <fmt/core.h>

#include "report/common_json.hpp"
#include "report/date_text.hpp"
#include "report/notice_text.hpp"
#include "report/plan_json.hpp"
#include "report/season_report.hpp"
#include "report/season_words.hpp"
#include "report/shop_report.hpp"

namespace bulbwright::report {
namespace {

using Json = nlohmann::ordered_json;

double tenth(Litres litres) {
  return rounded(litres.value(), 0.1);
}

Json pot_numbers(const std::vector<std::size_t>& pots) {
  return list_of(pots, [](std::size_t pot) { return Json(pot + 1); });
}

/// A pot without its plan.
Json pot_json(const Season& season, std::size_t index) {
  const SeasonPot& pot = season.pots[index];
  Json json{{"number", index + 1}, {"name", pot.name}};
  put_text(json, "file", pot.file);
  put_text(json, "group", pot.group);
  json["ok"] = pot.ok();
  if (!pot.ok()) json["error"] = why_not(pot, TextStyle{});
  return json;
}

Json job_json(const Season& season, const SeasonJob& job) {
  const PlannedDate& date = job.date;
  Json json{{"date", to_iso(date.date)}};
  if (date.until) json["until"] = to_iso(*date.until);
  json["week"] = to_iso(date.date - date.date.days_since_monday());
  json["pot"] = season.pots[job.pot].name;
  json["pot_number"] = job.pot + 1;
  json["what"] = word_of(date.task);
  if (!date.kinds.empty()) json["taxon"] = date.kinds.front().taxon;
  if (date.layer > 0) json["layer"] = date.layer;
  json["text"] = plain_text(date);
  return json;
}

Json bag_json(const Season& season, const Bag& bag) {
  return Json{{"pot", season.pots[bag.pot].name},
              {"pot_number", bag.pot + 1},
              {"taxon", bag.taxon},
              {"name", bag.name},
              {"bulbs", bag.bulbs},
              {"litres", tenth(bag.litres)},
              {"in", to_iso(bag.in)},
              {"out", to_iso(bag.out)},
              {"potted", bag.potted}};
}

Json change_json(const Season& season, const RoomChange& change) {
  Json json;
  if (change.sort == RoomChange::Sort::plant_later) {
    json = Json{{"change", "plant-later"},
                {"pot", season.pots[change.pots.front()].name},
                {"pot_number", change.pots.front() + 1},
                {"plant_before", to_iso(change.plant_before)},
                {"plant", to_iso(change.plant)},
                {"days_later", change.days_later()},
                {"days_in_flower_before", change.days_in_flower_before},
                {"days_in_flower", change.days_in_flower}};
    return json;
  }
  return Json{{"change", "buy-precooled"},
              {"taxon", change.taxon},
              {"name", change.name},
              {"bulbs", change.bulbs},
              {"pot_numbers", pot_numbers(change.pots)}};
}

Json storage_json(const Season& season) {
  const Refrigerator& fridge = season.refrigerator;
  Json json;
  json["capacity_l"] = fridge.capacity ? Json(tenth(*fridge.capacity)) : Json(nullptr);
  json["most_l"] = tenth(fridge.most);
  json["weeks"] = list_of(fridge.weeks, [](const FridgeWeek& week) {
    return Json{{"start", to_iso(week.start)}, {"litres", tenth(week.litres)}};
  });
  json["overflow"] = list_of(fridge.overflow, [](const FridgeOverflow& over) {
    return Json{
        {"from", to_iso(over.from)}, {"to", to_iso(over.to)}, {"litres", tenth(over.litres)}};
  });
  json["bags"] = list_of(fridge.bags, [&](const Bag& bag) { return bag_json(season, bag); });
  const RoomAdvice& advice = fridge.advice;
  const auto change = [&](const RoomChange& made) { return change_json(season, made); };
  Json alone = Json::array();
  if (advice.later) alone.push_back(change(*advice.later));
  if (advice.precooled) alone.push_back(change(*advice.precooled));
  json["least_changes"] = std::move(alone);
  json["changes_together"] = list_of(advice.together, change);
  json["still_lacking_l"] = tenth(advice.still_lacking);
  return json;
}

Json filling_json(const Season& season) {
  const Filling& filling = season.filling;
  Json json{{"pots", filling.pots},
            {"bulbs", filling.bulbs},
            {"mix_loose_litres", tenth(filling.mix_loose)},
            {"hours", rounded(filling.hours, 0.1)}};
  const auto& told = season.ask.hours_a_day;
  json["hours_a_day"] = told ? Json(rounded(*told, 0.1)) : Json(nullptr);
  json["days"] = list_of(filling.days, [&](const FillingDay& day) {
    return Json{
        {"date", to_iso(day.date)},
        {"pots", list_of(day.pots, [&](std::size_t i) { return Json(season.pots[i].name); })},
        {"pot_numbers", pot_numbers(day.pots)},
        {"bulbs", day.bulbs},
        {"mix_loose_litres", tenth(day.mix_loose)},
        {"perlite_litres", tenth(day.perlite)},
        {"hours", rounded(day.hours, 0.1)},
        {"days_late", day.days_late}};
  });
  return json;
}

Json flowers_json(const Flowers& flowers) {
  Json json = display_object(flowers.display);
  json["weeks"] = list_of(flowers.weeks, [](const FlowerWeek& week) {
    return Json{{"start", to_iso(week.start)}, {"days", week.days}, {"pots", week.pots}};
  });
  return json;
}

Json group_json(const Flowers& flowers) {
  return Json{{"group", flowers.group},
              {"pot_numbers", pot_numbers(flowers.pots)},
              {"display", flowers_json(flowers)}};
}

Json request_json(const Season& season) {
  Json json = Json::object();
  if (season.ask.drawer) json["drawer"] = fmt::format("{:g} l", season.ask.drawer->value());
  if (season.ask.hours_a_day) json["hours"] = *season.ask.hours_a_day;
  return json;
}

/// Everything behind pots and calendar.
Json sums_json(const Season& season) {
  Json json;
  json["storage"] = storage_json(season);
  json["filling"] = filling_json(season);
  json["display"] = flowers_json(season.flowers);
  json["groups"] = list_of(season.groups, group_json);
  json["shopping"] = list_of(season.shopping.items, shop_item_object);
  json["cautions"] = list_of(season.cautions, caution_object);
  return json;
}

/// A document written piece by piece, as a whole one would be dumped.
class Pieces {
 public:
  void key(const char* name) {
    text_ += text_.empty() ? "{\n" : ",\n";
    text_ += fmt::format("  \"{}\": ", name);
  }
  void members(const Json& json) {
    for (const auto& [name, member] : json.items()) {
      key(name.c_str());
      value(member);
    }
  }
  void value(const Json& json) { text_ += dumped(json, 2); }
  void open_list() {
    text_ += '[';
    first_ = true;
  }
  void item(const Json& json) {
    text_ += first_ ? "\n    " : ",\n    ";
    first_ = false;
    text_ += dumped(json, 4);
  }
  void close_list() { text_ += first_ ? "]" : "\n  ]"; }
  std::string result() && { return std::move(text_) + "\n}\n"; }

 private:
  static std::string dumped(const Json& json, std::size_t indent) {
    const std::string plain = json.dump(2, ' ', false, Json::error_handler_t::replace);
    std::string text;
    text.reserve(plain.size() + plain.size() / 4);
    for (const char letter : plain) {
      text += letter;
      if (letter == '\n') text.append(indent, ' ');
    }
    return text;
  }
  std::string text_;
  bool first_ = true;
};

std::string line(Json json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json with_plan(const Season& season, std::size_t index) {
  Json json = pot_json(season, index);
  if (season.pots[index].plan) json["plan"] = plan_object(*season.pots[index].plan);
  return json;
}

}  // namespace

std::string season_json(const Season& season) {
  Pieces pieces;
  pieces.members(document("bulbwright.season/1"));
  pieces.key("request");
  pieces.value(request_json(season));
  pieces.key("pots");
  pieces.open_list();
  for (std::size_t i = 0; i < season.pots.size(); ++i) pieces.item(with_plan(season, i));
  pieces.close_list();
  pieces.key("calendar");
  pieces.open_list();
  for (const SeasonJob& job : season.calendar) pieces.item(job_json(season, job));
  pieces.close_list();
  pieces.members(sums_json(season));
  pieces.key("ok");
  pieces.value(season.ok());
  return std::move(pieces).result();
}

std::string season_json_lines(const Season& season) {
  Json head = document("bulbwright.season/1");
  head["record"] = "season";
  head["request"] = request_json(season);
  head.update(sums_json(season));
  head["ok"] = season.ok();
  std::string text = line(std::move(head));
  for (std::size_t i = 0; i < season.pots.size(); ++i) {
    Json pot{{"record", "pot"}};
    pot.update(with_plan(season, i));
    text += line(std::move(pot));
  }
  for (const SeasonJob& job : season.calendar) {
    Json record{{"record", "job"}};
    record.update(job_json(season, job));
    text += line(std::move(record));
  }
  return text;
}

}  // namespace bulbwright::report
