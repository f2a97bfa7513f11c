// The "pot" object of a pot file.
#include <fmt/core.h>

#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"
#include "pot/pot_material.hpp"

namespace bulbwright::input {
namespace {

constexpr std::size_t most_levels = 50;

std::optional<ProfileLevel> read_level(const JsonValue& value, const std::string& path, Shape shape,
                                       ReadContext& context) {
  const ObjectReader level{value, path, profile_keys, context};
  if (!level.is_object()) return std::nullopt;
  const auto height = level.length("height", small_length);
  const auto width = level.length("width", pot_size);
  level.missing("height", "expected the height above the inner floor, such as \"0 mm\"");
  level.missing("width", "expected the inner width at this height, such as \"290 mm\"");
  const bool half_round = shape == Shape::half_round;
  const bool two_sides = shape == Shape::oval || shape == Shape::rectangle;
  if (level.has("length") && !two_sides) {
    context.faults.add(level.field("length"), "only an oval or a rectangle has a length");
  }
  if (level.has("depth") && !half_round) {
    context.faults.add(level.field("depth"), "only a half-round has a depth from back to front");
  }
  const auto length = level.length("length", pot_size);
  const auto depth = level.length("depth", pot_size);
  if (!height || !width) return std::nullopt;
  if (half_round) return ProfileLevel{*height, *width, depth.value_or(*width / 2.0)};
  return ProfileLevel{*height, length.value_or(*width), *width};
}

std::vector<ProfileLevel> read_profile(const JsonValue& array, Shape shape, ReadContext& context) {
  std::vector<ProfileLevel> profile;
  const Field field{"pot.profile", {context.file, array.at.line, array.at.column}};
  if (array.items.size() < 2 || array.items.size() > most_levels) {
    context.faults.add(field, array.items.size() < 2
                                  ? "expected two levels or more, from the inner floor up"
                                  : fmt::format("{} levels; expected at most {}",
                                                array.items.size(), most_levels));
    return profile;
  }
  for (std::size_t i = 0; i < array.items.size(); ++i) {
    const auto level = read_level(array.items[i], item_path(field.name, i), shape, context);
    if (level) profile.push_back(*level);
  }
  return profile;
}

std::vector<std::string_view> material_names() {
  std::vector<std::string_view> names;
  for (const PotMaterial& material : known_materials()) names.push_back(material.name);
  return names;
}

}  // namespace

PotRequest read_pot(const JsonValue& value, ReadContext& context) {
  PotRequest pot;
  const ObjectReader reader{value, "pot", pot_keys, context};
  pot.name = reader.plain_text("name").value_or("");
  pot.group = trimmed(reader.plain_text("group").value_or(""));
  pot.note = reader.plain_text("note", longest_note).value_or("");
  if (const auto shape = reader.word<Shape>("shape", "shape")) {
    pot.shape = *shape;
  }
  pot.top = reader.length_pair("top", pot_size);
  pot.base = reader.length_pair("base", pot_size);
  pot.height = reader.length("height", pot_size);
  if (const JsonValue* profile = reader.array("profile")) {
    pot.profile = read_profile(*profile, pot.shape, context);
  }
  pot.corner = reader.length("corner", small_length).value_or(0_mm);
  pot.thickness = reader.length("thickness", small_length);
  pot.headspace = reader.length("headspace", small_length);
  const std::vector<std::string_view> materials = material_names();
  if (const auto material = reader.word("material", materials, "material")) {
    pot.material = materials[*material];
  }
  if (const auto crop = reader.plain_text("last_crop")) {
    const std::string genus = lower_case(trimmed(*crop));
    if (genus.empty()) {
      context.faults.add(reader.field("last_crop"), "empty; expected a genus such as \"tulipa\"");
    } else {
      pot.last_crop = genus;
    }
  }
  const auto mix = reader.word("mix", mix_words, "kind of mix");
  pot.used_mix = mix ? *mix == 1 : pot.last_crop.has_value();
  return pot;
}

}  // namespace bulbwright::input
