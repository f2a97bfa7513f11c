// The "layers" array of a pot file, and what stands beside it for the bulbs: "storage" and "pests".
#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "input/pot_file_keys.hpp"
#include "input/pot_file_parts.hpp"

namespace bulbwright::input {
namespace {

constexpr double most_weeks = 60.0;

std::optional<std::string> read_taxon(const ObjectReader& reader) {
  const auto taxon = reader.plain_text("taxon");
  if (!taxon) return std::nullopt;
  if (trimmed(*taxon).empty()) {
    reader.context().faults.add(reader.field("taxon"),
                                "empty; expected one of `bulbwright bulbs`, such as "
                                "\"tulip-triumph\"");
    return std::nullopt;
  }
  return std::string{trimmed(*taxon)};
}

std::optional<double> read_share(const ObjectReader& part) {
  const JsonValue* share = part.number("share");
  if (share == nullptr) return std::nullopt;
  if (share->number >= least_share && share->number <= most_share) return share->number;
  part.context().faults.add(part.field("share"),
                            fmt::format("{} is out of range; expected a number above 0 such as 2, "
                                        "at most {:g}",
                                        bare(share->text), most_share));
  return std::nullopt;
}

std::vector<LayerPart> read_mix(const JsonValue& array, const Field& field, ReadContext& context) {
  std::vector<LayerPart> parts;
  if (array.items.size() < 2 || array.items.size() > most_parts) {
    context.faults.add(
        field, array.items.size() < 2
                   ? "expected two kinds or more; for one kind write \"taxon\""
                   : fmt::format("{} kinds; expected at most {}", array.items.size(), most_parts));
    return parts;
  }
  for (std::size_t i = 0; i < array.items.size(); ++i) {
    const ObjectReader part{array.items[i], item_path(field.name, i), part_keys, context};
    part.missing("taxon", "expected a kind such as \"muscari\"");
    part.missing("share", "expected how many parts of this kind, such as 2");
    const auto taxon = read_taxon(part);
    const std::optional<double> share = read_share(part);
    const bool twice = taxon && std::any_of(parts.begin(), parts.end(), [&](const auto& other) {
                         return other.taxon == *taxon;
                       });
    if (twice) {
      context.faults.add(part.field("taxon"),
                         fmt::format("{} stands twice in this mix", in_quotes(*taxon)));
    }
    // One that is refused keeps its place, so that the others are found at theirs.
    parts.push_back(
        {taxon.value_or(""), share.value_or(1.0), part.number("storage_weeks", 0.0, most_weeks)});
  }
  return parts;
}

void read_kinds(const ObjectReader& reader, LayerRequest& layer) {
  ReadContext& context = reader.context();
  if (reader.has("taxon") && reader.has("mix")) {
    context.faults.add(reader.field("mix"), "given beside taxon; expected one of the two");
  }
  if (reader.is_sound() && !reader.has("taxon") && !reader.has("mix")) {
    context.faults.add(reader.self(),
                       "has neither taxon nor mix; expected what to plant, such as "
                       "\"taxon\": \"tulip-triumph\"");
  }
  const auto weeks = reader.number("storage_weeks", 0.0, most_weeks);
  if (reader.has("storage_weeks") && reader.has("mix")) {
    context.faults.add(reader.field("storage_weeks"),
                       "given beside mix; expected in the entries of the mix, each kind its own");
  }
  if (const auto taxon = read_taxon(reader)) layer.parts.push_back({*taxon, 1.0, weeks});
  if (const JsonValue* mix = reader.array("mix")) {
    std::vector<LayerPart> parts = read_mix(*mix, reader.field("mix"), context);
    if (layer.parts.empty()) layer.parts = std::move(parts);
  }
}

void read_gap(const ObjectReader& reader, LayerRequest& layer) {
  const JsonValue* gap = reader.find("gap");
  if (gap != nullptr && gap->kind == JsonKind::text) {
    const std::string word = lower_case(trimmed(gap->text));
    const bool letters_only = !word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
      return c >= 'a' && c <= 'z';
    });
    if (word == "forcing") {
      layer.forcing_gap = true;
      return;
    }
    if (letters_only) {
      constexpr std::array<std::string_view, 1> words{"forcing"};
      (void)read_word(reader.field("gap"), gap->text, words, "gap, which is a length or the word",
                      reader.context().faults);
      return;
    }
  }
  layer.gap = reader.length("gap", small_length);
}

/// Only dry bulbs go into a refrigerator.
void refuse_storage(const ObjectReader& reader, const LayerRequest& layer) {
  const bool stored = std::any_of(layer.parts.begin(), layer.parts.end(), [](const auto& part) {
    return part.storage_weeks.value_or(0.0) > 0.0;
  });
  if (layer.state == BulbState::dry || !stored) return;
  reader.context().faults.add(
      reader.field("state"),
      fmt::format("{} beside storage_weeks; expected \"dry\", or the weeks of cold they have had "
                  "in cold_already: only dry bulbs are refrigerated",
                  in_quotes(word_of(layer.state))));
}

LayerRequest read_layer(const JsonValue& value, const std::string& path, ReadContext& context) {
  LayerRequest layer;
  const ObjectReader reader{value, path, layer_keys, context};
  context.written_at[path] = reader.self().place;
  if (!reader.is_object()) return layer;
  read_kinds(reader, layer);
  if (const std::string* grade = reader.text("grade", "\"12\" or \"12/14\" (cm)")) {
    layer.grade_cm = read_grade(reader.field("grade"), *grade, context.faults);
    if (reader.has("mix")) {
      context.faults.add(reader.field("grade"),
                         "a mix has no single grade; leave it out, then each kind has its usual "
                         "one");
    }
  }
  layer.count = reader.whole_number("count", 1, most_counted_bulbs);
  layer.own = reader.truth("own").value_or(false);
  read_gap(reader, layer);
  layer.wall = reader.length("wall", small_length);
  if (const auto arrange = reader.word<Arrange>("arrange", "arrangement")) {
    layer.arrange = *arrange;
  }
  if (const auto pattern = reader.word<Pattern>("pattern", "pattern")) {
    layer.pattern = *pattern;
    if (layer.pattern != Pattern::dense && (reader.has("mix") || layer.count)) {
      context.faults.add(reader.field("pattern"),
                         "rings and rows are laid of one kind, as many as fit; expected \"dense\" "
                         "with mix or count");
    }
  }
  layer.label = reader.plain_text("label").value_or("");
  layer.note = reader.plain_text("note", longest_note).value_or("");
  if (const std::string* received = reader.text("received", "\"2026-09-20\"")) {
    layer.received = read_day(reader.field("received"), *received, context.faults);
  }
  layer.cold_already_weeks = reader.number("cold_already", 0.0, most_weeks).value_or(0.0);
  if (const auto use = reader.word<Use>("use", "use")) {
    layer.use = *use;
  }
  if (const auto state = reader.word<BulbState>("state", "state of bulbs")) {
    layer.state = *state;
    refuse_storage(reader, layer);
  }
  return layer;
}

bool is_array(const JsonValue& value, const Field& field, ReadContext& context) {
  if (value.kind == JsonKind::array) return true;
  context.faults.add(
      field, fmt::format("{} where an array was expected, [ … ]", with_article(value.kind)));
  return false;
}

}  // namespace

std::vector<LayerRequest> read_layers(const JsonValue& value, ReadContext& context) {
  std::vector<LayerRequest> layers;
  const Field field{"layers", {context.file, value.at.line, value.at.column}};
  if (!is_array(value, field, context)) return layers;
  if (value.items.empty() || value.items.size() > most_layers) {
    context.faults.add(field, value.items.empty()
                                  ? "empty; expected at least one layer, the bottom one first"
                                  : fmt::format("{} layers; expected at most {}",
                                                value.items.size(), most_layers));
    return layers;
  }
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    layers.push_back(read_layer(value.items[i], item_path("layers", i), context));
  }
  return layers;
}

StorageRequest read_storage(const JsonValue& value, ReadContext& context) {
  StorageRequest storage;
  const ObjectReader reader{value, "storage", storage_keys, context};
  if (const std::string* temperature = reader.unit_text("temperature", "\"5 C\"", "C", "F")) {
    storage.temperature =
        read_storage_temperature(reader.field("temperature"), *temperature, context.faults);
  }
  storage.method = reader.plain_text("method");
  storage.weeks = reader.number("weeks", 0.0, most_weeks);
  return storage;
}

std::vector<Pest> read_pests(const JsonValue& value, ReadContext& context) {
  std::vector<Pest> pests;
  if (!is_array(value, {"pests", {context.file, value.at.line, value.at.column}}, context)) {
    return pests;
  }
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    const JsonValue& item = value.items[i];
    const Field field{item_path("pests", i), {context.file, item.at.line, item.at.column}};
    if (item.kind != JsonKind::text) {
      context.faults.add(field, fmt::format("{} where text was expected, such as \"squirrel\"",
                                            with_article(item.kind)));
    } else if (const auto pest = read_word<Pest>(field, item.text, "known pest", context.faults)) {
      if (std::find(pests.begin(), pests.end(), *pest) == pests.end()) pests.push_back(*pest);
    }
  }
  return pests;
}

}  // namespace bulbwright::input
