#include "input/pot_file_reader.hpp"

#include <fmt/core.h>

#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"
#include "input/request_check.hpp"

namespace bulbwright::input {
namespace {

void read_dates(const ObjectReader& file, LocatedRequest& asked) {
  Request& request = asked.request;
  request.season = file.whole_number("season", first_year, last_year);
  ReadContext& context = file.context();
  if (const std::string* plant = file.text("plant", "\"2027-01-08\" or \"01-08\"")) {
    read_plant(file.field("plant"), *plant, asked, context.faults);
  }
  if (const std::string* flower = file.text("flower",
                                            "\"2027-03-20\" or "
                                            "\"2027-03-20..2027-04-02\"")) {
    read_flower(file.field("flower"), *flower, asked, context.faults);
  }
  request.spread = file.truth("spread").value_or(false);
  if (const auto order = file.word<LayerOrder>("order", "order of layers")) {
    request.order = *order;
  }
}

}  // namespace

LocatedRequest read_pot_file(std::string_view text, const std::string& file, Faults& faults) {
  const JsonValue root = read_located_json(text, file);
  ReadContext context{file, faults, {}, true};
  const ObjectReader top{root, "", file_keys, context};
  LocatedRequest asked;
  asked.file = file;
  Request& request = asked.request;
  context.written_at[""] = top.self().place;
  const std::size_t before = faults.size();
  if (const JsonValue* pot = top.find("pot")) request.pot = read_pot(*pot, context);
  asked.pot_is_sound = faults.size() == before;
  if (const JsonValue* place = top.find("place")) request.place = read_place(*place, context);
  read_dates(top, asked);
  if (const JsonValue* storage = top.find("storage")) {
    request.storage = read_storage(*storage, context);
  }
  if (const JsonValue* pests = top.find("pests")) request.pests = read_pests(*pests, context);
  request.winter = top.word<WinterRain>("winter", "kind of winter");
  if (const JsonValue* layers = top.find("layers")) request.layers = read_layers(*layers, context);
  asked.written_at = std::move(context.written_at);
  asked.is_sound = context.is_sound;
  return asked;
}

}  // namespace bulbwright::input
