#include "cli/pot_options.hpp"

namespace bulbwright::cli {
namespace {

void declare_container(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Pot"};
  group.text("--name", o.name, "TEXT", "name of the pot");
  group.text("--top", o.top, "LENGTH", "width at the rim: \"15 in\", \"60 cm x 20 cm\"");
  group.text("--base", o.base, "LENGTH", "width at the floor");
  group.text("--height", o.height, "LENGTH", "height from the floor to the rim");
  group.text("--shape", o.shape, "SHAPE", "round, oval, rectangle or half-round");
  group.text("--corner", o.corner, "LENGTH", "corner radius of a rectangle");
  group.text("--thickness", o.thickness, "LENGTH",
             "of the pot's wall: the sizes are then outer ones");
  group.text("--headspace", o.headspace, "LENGTH", "rim to mix surface (25 mm)");
  group.text("--material", o.material, "WORD", "such as terracotta");
  group.text("--last-crop", o.last_crop, "GENUS", "what the mix held last year");
}

void declare_place(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Place"};
  group.text("--zone", o.zone, "ZONE", "hardiness zone, such as 9b");
  group.flag("--south", o.south, "the zone lies in the south");
  group.text("--region", o.region, "WORD", "north-american, maritime or continental");
  group.text("--site", o.site, "NAME", "a place of `bulbwright places`");
  group.text("--near", o.near, "LAT,LON", "anywhere on land: \"38.58, -121.49\"");
  group.text("--elevation", o.elevation, "LENGTH", "above the sea, with --near: \"9 m\"");
  group.text("--offset", o.offset, "DIFFERENCE",
             "warmer than there: \"1.2 C\", \"-3 C, 1 C\" (night, day)");
  group.text("--records", o.records, "FILE", "temperatures measured on the spot, CSV");
  group.text("--latitude", o.latitude, "DEGREES", "of the records, south negative");
  group.text("--exposure", o.exposure, "WORD", "open, sheltered, warm-wall or plunged");
}

void declare_dates(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Dates"};
  group.text("--season", o.season, "YEAR", "of the autumn it begins with");
  group.text("--plant", o.plant, "DATE", "planting day, YYYY-MM-DD");
  group.text("--flower", o.flower, "DATE[..DATE]", "wanted flowering, instead of --plant");
  group.flag("--spread", o.spread, "let the waves follow each other without a gap");
}

void declare_layers(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Layers"};
  group.repeated("--layer", o.layers, "KIND",
                 "again for each, bottom first: \"tulip-triumph = 20, own\"");
  group.text("--order", o.order, "WORD", "given, or by-flowering: the latest lowest");
  group.text("--gap", o.gap, "LENGTH", "clear distance between bulbs, or the word forcing");
  group.text("--wall", o.wall, "LENGTH", "clear distance from bulb to inner wall (10 mm)");
}

void declare_storage(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Storage"};
  group.text("--storage-temperature", o.storage_temperature, "TEMP",
             "of the refrigerator, such as \"5 C\"");
  group.text("--storage-method", o.storage_method, "TEXT", "such as \"paper bag\"");
  group.text("--storage-weeks", o.storage_weeks, "N", "fixes the weeks of all kinds, 0 for none");
}

void declare_winter(std::vector<Option>& all, PotOptions& o) {
  OptionGroup group{all, "Winter"};
  group.repeated("--pest", o.pests, "ANIMAL,...",
                 "gopher, vole, mouse, squirrel, chipmunk or deer");
  group.text("--winter", o.winter, "WORD", "wet, ordinary or dry (else by the place's rain)");
  group.flag("--wet-winter", o.wet_winter, "the same as --winter wet");
}

}  // namespace

void declare_pot(std::vector<Option>& all, PotOptions& options, const PotOptionGroups& groups) {
  if (groups.pot) declare_container(all, options);
  if (groups.place) declare_place(all, options);
  if (groups.dates) declare_dates(all, options);
  if (groups.layers) declare_layers(all, options);
  if (groups.storage) declare_storage(all, options);
  if (groups.winter) declare_winter(all, options);
}

}  // namespace bulbwright::cli
