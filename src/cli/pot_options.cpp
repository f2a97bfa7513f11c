#include "cli/pot_options.hpp"

#include <CLI/CLI.hpp>

namespace bulbwright::cli {
namespace {

/// An option whose text is kept as written; an empty one is kept too, to be refused by name.
void text_option(CLI::App& command, const char* group, const char* name,
                 std::optional<std::string>& value, const char* form, const char* help) {
  command
      .add_option_function<std::string>(
          name, [&value](const std::string& written) { value = written; }, help)
      ->option_text(form)
      ->group(group);
}

void declare_container(CLI::App& command, PotOptions& o) {
  const char* group = "Pot";
  text_option(command, group, "--name", o.name, "TEXT", "name of the pot");
  text_option(command, group, "--top", o.top, "LENGTH",
              "width at the rim: \"15 in\", \"60 cm x 20 cm\"");
  text_option(command, group, "--base", o.base, "LENGTH", "width at the floor");
  text_option(command, group, "--height", o.height, "LENGTH", "height from the floor to the rim");
  text_option(command, group, "--shape", o.shape, "SHAPE", "round, oval, rectangle or half-round");
  text_option(command, group, "--corner", o.corner, "LENGTH", "corner radius of a rectangle");
  text_option(command, group, "--thickness", o.thickness, "LENGTH",
              "of the pot's wall: the sizes are then outer ones");
  text_option(command, group, "--headspace", o.headspace, "LENGTH", "rim to mix surface (25 mm)");
  text_option(command, group, "--material", o.material, "WORD", "such as terracotta");
  text_option(command, group, "--last-crop", o.last_crop, "GENUS", "what the mix held last year");
}

void declare_place(CLI::App& command, PotOptions& o) {
  const char* group = "Place";
  text_option(command, group, "--zone", o.zone, "ZONE", "hardiness zone, such as 9b");
  command.add_flag("--south", o.south, "the zone lies in the south")->group(group);
  text_option(command, group, "--region", o.region, "WORD",
              "north-american, maritime or continental");
  text_option(command, group, "--site", o.site, "NAME", "a station of `bulbwright places`");
  text_option(command, group, "--records", o.records, "FILE",
              "temperatures measured on the spot, CSV");
  text_option(command, group, "--latitude", o.latitude, "DEGREES",
              "of the records, south negative");
  text_option(command, group, "--exposure", o.exposure, "WORD",
              "open, sheltered, warm-wall or plunged");
}

void declare_dates(CLI::App& command, PotOptions& o) {
  const char* group = "Dates";
  text_option(command, group, "--season", o.season, "YEAR", "of the autumn it begins with");
  text_option(command, group, "--plant", o.plant, "DATE", "planting day, YYYY-MM-DD");
  text_option(command, group, "--flower", o.flower, "DATE[..DATE]",
              "wanted flowering, instead of --plant");
  command.add_flag("--spread", o.spread, "let the waves follow each other without a gap")
      ->group(group);
}

void declare_layers(CLI::App& command, PotOptions& o) {
  const char* group = "Layers";
  command.add_option("--layer", o.layers, "a layer, bottom first: \"tulip-triumph = 20\"")
      ->allow_extra_args(false)
      ->option_text("KIND ...")
      ->group(group);
  text_option(command, group, "--order", o.order, "WORD",
              "given, or by-flowering: the latest lowest");
  text_option(command, group, "--gap", o.gap, "LENGTH",
              "clear distance between bulbs, or the word forcing");
  text_option(command, group, "--wall", o.wall, "LENGTH",
              "clear distance from bulb to inner wall (10 mm)");
}

void declare_storage(CLI::App& command, PotOptions& o) {
  const char* group = "Storage";
  text_option(command, group, "--storage-temperature", o.storage_temperature, "TEMP",
              "of the refrigerator, such as \"5 C\"");
  text_option(command, group, "--storage-method", o.storage_method, "TEXT",
              "such as \"paper bag\"");
  text_option(command, group, "--storage-weeks", o.storage_weeks, "N",
              "fixes the weeks of all kinds, 0 for none");
}

void declare_winter(CLI::App& command, PotOptions& o) {
  const char* group = "Winter";
  command.add_option("--pest", o.pests, "gopher, vole, mouse, squirrel, chipmunk or deer")
      ->allow_extra_args(false)
      ->option_text("ANIMAL ...")
      ->group(group);
  command.add_flag("--wet-winter", o.wet_winter, "the winter is wet")->group(group);
}

}  // namespace

void declare_pot(CLI::App& command, PotOptions& options, const PotOptionGroups& groups) {
  if (groups.pot) declare_container(command, options);
  if (groups.place) declare_place(command, options);
  if (groups.dates) declare_dates(command, options);
  if (groups.layers) declare_layers(command, options);
  if (groups.storage) declare_storage(command, options);
  if (groups.winter) declare_winter(command, options);
}

}  // namespace bulbwright::cli
