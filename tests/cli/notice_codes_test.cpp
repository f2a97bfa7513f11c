// Every notice of the program: a command that brings it and the nearest one that does not.
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>

#include "base/calendar_day.hpp"
#include "base/notice.hpp"
#include "cli/answers.hpp"

using namespace bulbwright;
using fixture::codes_of;
using fixture::Folder;

namespace {

struct Row {
  const char* code;
  const char* raises;
  const char* silent;
};

/// Written in the commands for what most of them share, and for the folder of their files.
const std::vector<std::pair<std::string, std::string>> shorthands{
    {"{pot}", "--top 38cm --base 29cm --height 36cm --material terracotta"},
    {"{narrow}", "--top 20cm --base 20cm --height 36cm --material terracotta"},
    {"{wide}", "--top 38cm --base 29cm --material terracotta"},
    {"{thin}", "--height 36cm --material terracotta"},
    {"{three}", "--layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large"},
    {"{tulip}", "--layer tulip-triumph"},
    {"{london}", "--site London --season 2026"},
    {"{winter}", "--latitude 51 --from 2025-11-01 --to 2026-02-28"},
    {"{spring}", "--window 2027-03-01..2027-05-01"},
};

// Days of flower and weeks of cold are those of the models; where the nearest silent request is a
// matter of a day or a place, the models decide which, and a better model may move it.
const std::vector<Row> table{
    // Cold. Dry in the refrigerator a tulip takes 10 weeks, at most 12 (catalogue); bulbs come on
    // 15 September, 70 days before 24 November.
    {"never-refrigerate",
     "plan {pot} --zone 9b --layer freesia --plant 2026-12-01 --storage-weeks 1",
     "plan {pot} --zone 9b --layer freesia --plant 2026-12-01 --storage-weeks 0"},
    {"storage-too-long", "plan {pot} --zone 9b {tulip} --plant 2027-02-01 --storage-weeks 13",
     "plan {pot} --zone 9b {tulip} --plant 2027-02-01 --storage-weeks 12"},
    {"storage-long", "plan {pot} --zone 9b {tulip} --plant 2027-01-08 --storage-weeks 11",
     "plan {pot} --zone 9b {tulip} --plant 2027-01-08 --storage-weeks 10"},
    {"storage-before-bulbs", "plan {pot} --zone 9b {tulip} --plant 2026-11-23 --storage-weeks 10",
     "plan {pot} --zone 9b {tulip} --plant 2026-11-24 --storage-weeks 10"},
    {"storage-shortened", "plan {pot} --zone 9b {tulip} --plant 2026-10-10",
     "plan {pot} --zone 9b {tulip} --plant 2026-12-01"},
    {"precooled-offered", "plan {pot} --zone 9b {tulip} --plant 2026-10-10",
     "plan {pot} --zone 9b {tulip} --plant 2026-12-01"},
    {"mix-frozen", "plan {pot} --site Winnipeg {tulip} --plant 2027-01-10",
     "plan {pot} --site Winnipeg {tulip} --plant 2026-10-05"},
    {"under-chilled", "plan {pot} --zone 10b {tulip} --plant 2027-01-08 --storage-weeks 0",
     "plan {pot} --zone 10b {tulip} --plant 2027-01-08 --storage-weeks 10"},
    {"less-than-recommended", "plan {pot} --zone 10b --season 2026 {tulip}",
     "plan {pot} --zone 8b --season 2026 {tulip} --storage-weeks 0"},
    {"weeks-would-help", "plan {pot} --zone 9b --season 2026 --layer narcissus-trumpet",
     "plan {pot} --zone 8b --season 2026 --layer narcissus-trumpet"},
    {"chill-in-pot", "plan {pot} --zone 10b --season 2026 --layer anemone-blanda",
     "plan {pot} --zone 9a --season 2026 --layer anemone-blanda"},
    // -2 degC is a freezer (exit 1), -1 degC a cold refrigerator.
    {"storage-temperature",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"-2 C\"",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"3 C\""},
    // The catalogue has 2 to 7 degC for tulips.
    {"storage-temperature",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"8 C\"",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"7 C\""},
    {"storage-temperature",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"1 C\"",
     "plan {pot} --zone 9b --season 2026 {tulip} --storage-temperature \"2 C\""},
    // Jonquils want 4 weeks at the most.
    {"over-chilled",
     "plan {pot} --zone 9b --layer narcissus-jonquilla --plant 2026-12-10 --storage-weeks 5",
     "plan {pot} --zone 9b --layer narcissus-jonquilla --plant 2026-12-10 --storage-weeks 4"},
    {"no-natural-cold", "plan {pot} --site Singapore --season 2026 {tulip}",
     "plan {pot} --site \"New Orleans\" --season 2026 {tulip}"},
    {"no-natural-cold", "plan {pot} --site Singapore --season 2026 {tulip}",
     "plan {pot} --site Singapore --season 2026 --layer freesia"},  // it needs none
    {"enough-winter", "plan {pot} {london} {tulip}",
     "plan {pot} {london} {tulip} --storage-weeks 0"},
    {"enough-winter", "plan {pot} --zone 8b --season 2026 {tulip}",
     "plan {pot} --zone 9b --season 2026 {tulip}"},
    {"pot-freezes", "plan {pot} --zone 7a --season 2026 {tulip}",
     "plan {pot} --zone 9a --season 2026 {tulip}"},
    {"pot-freezes", "plan {pot} --zone 7a --season 2026 {tulip}",
     "plan {pot} --zone 7a --season 2026 {tulip} --exposure plunged"},
    {"hardiness", "plan {pot} --site Chicago --season 2026 --layer narcissus-tazetta-tender",
     "plan {pot} --site \"Los Angeles\" --season 2026 --layer freesia"},
    {"no-flower", "plan {pot} --zone 11b --season 2026 --layer allium-large --storage-weeks 0",
     "plan {pot} --zone 11b --season 2026 --layer allium-large --storage-weeks 10"},
    {"buds-blast", "plan {pot} --site Singapore --season 2026 --layer freesia",
     "plan {pot} --site Miami --season 2026 --layer freesia"},
    // Nobody dated crocuses that were refrigerated (tests/vectors).
    {"never-dated", "plan {pot} --zone 9b --season 2026 --layer crocus-large --storage-weeks 6",
     "plan {pot} --zone 9b --season 2026 --layer crocus-large --storage-weeks 0"},
    {"never-dated", "plan {pot} {london} --layer \"tulip-triumph, in growth\"",
     "plan {pot} {london} --layer \"tulip-triumph, rooted\""},
    {"one-kind-in-depths", "plan {pot} {london} {tulip} {tulip}",
     "plan {pot} {london} {tulip} --layer tulip-parrot"},
    // Layers. A tulip of 11 to 12 cm is 38 mm wide, with 10 mm to the wall on both sides 58 mm.
    {"too-shallow", "plan {wide} --height 25cm {london} {three}",
     "plan {wide} --height 26cm {london} {three}"},
    {"thin-between", "plan {wide} --height 28cm {london} {three}",
     "plan {wide} --height 31cm {london} {three}"},
    {"does-not-fit", "plan {narrow} {london} --layer \"tulip-triumph = 15\"",
     "plan {narrow} {london} --layer \"tulip-triumph = 14\""},
    {"close-together", "plan {narrow} {london} --layer \"tulip-triumph = 9\"",
     "plan {narrow} {london} --layer \"tulip-triumph = 8\""},
    {"close-together", "plan {narrow} {london} --layer \"tulip-triumph = 9\"",
     "plan {narrow} {london} --layer \"tulip-triumph = 9\" --gap 8mm"},  // as asked for
    {"no-room", "plan --top 58mm --base 58mm {thin} {london} {tulip}",
     "plan --top 60mm --base 60mm {thin} {london} {tulip}"},
    // Crown imperials lie at 150 mm or more, small alliums, which flower later, at 150 or less.
    {"order-kept",
     "plan {wide} --height 40cm {london} --layer fritillaria-imperialis --layer allium-small "
     "--order by-flowering",
     "plan {wide} --height 40cm {london} --layer fritillaria-imperialis --layer allium-large "
     "--order by-flowering"},
    {"flowers-before-layer-above", "plan {pot} {london} --layer crocus-large {tulip}",
     "plan {pot} {london} {tulip} --layer crocus-large"},
    // Companions. Small tulips flower at 15 cm, among leaves of 16 and of 15 cm.
    {"hidden-by-leaves", "plan {pot} {london} --layer tulip-species-small --layer chionodoxa",
     "plan {pot} {london} --layer tulip-species-small --layer anemone-blanda"},
    {"leaf-mat", "plan {pot} {london} --layer tulip-single-late --layer muscari",
     "plan {pot} {london} --layer tulip-single-late --layer crocus-large"},
    {"opposite-light", "plan {pot} {london} {tulip} --layer galanthus",
     "plan {pot} {london} {tulip} --layer crocus-large"},
    {"opposite-water",
     "plan {pot} {london} {tulip} --layer narcissus-poeticus --data {folder}/dry-tulips",
     "plan {pot} {london} {tulip} --layer narcissus-poeticus"},
    {"opposite-rest",
     "plan {pot} {london} {tulip} --layer crocus-tommasinianus --data {folder}/moist-crocus",
     "plan {pot} {london} {tulip} --layer crocus-tommasinianus"},
    // Pot and place. Rooted tulips die below -10 degC (Sakai 1960).
    {"used-mix", "plan {pot} {london} {tulip} --last-crop tulip",
     "plan {pot} {london} {tulip} --last-crop hyacinth"},
    {"hardiness", "plan {pot} --zone 4b --season 2026 {tulip}",
     "plan {pot} --zone 8b --season 2026 {tulip}"},
    {"assumed", "plan --top 38cm --height 36cm --material terracotta {london} {tulip}",
     "plan {pot} {london} {tulip}"},
    {"zone-alone", "cold --zone 9b", "cold --site London"},
    // Nearest stations 139 and 13 km away, as the table of stations has them.
    {"stations-far", "cold --near 23,4 --elevation 600m", "cold --near 51.48,-0.29 --elevation 6m"},
    {"stations-far", "cold --near 47.26,11.39", "cold --near 47.26,11.39 --elevation 574m"},
    {"stations-blended", "plan {pot} --near 51.48,-0.29 --elevation 6m --season 2026 {tulip}",
     "plan {pot} {london} {tulip}"},
    {"offset-applied", "cold --site London --offset 1C", "cold --site London --offset 0C"},
    {"record-offset", "cold --records {folder}/whole.csv {winter} --site London",
     "cold --records {folder}/whole.csv {winter}"},
    {"winter-wet", "plan {pot} --site Seattle --season 2026 {tulip}",
     "plan {pot} --site Seattle --season 2026 {tulip} --winter wet"},
    {"winter-dry", "plan {pot} --site Phoenix --season 2026 {tulip}",
     "plan {pot} {london} {tulip}"},
    {"winter-assumed", "plan {pot} --zone 9b --season 2026 {tulip}", "plan {pot} {london} {tulip}"},
    {"zone-stations", "cold --zone 11b --south", "cold --zone 9b"},
    {"normals-no-winter", "cold --site London", "cold --records {folder}/whole.csv {winter}"},
    {"no-natural-cold", "cold --site Singapore", "cold --site \"New Orleans\""},
    {"pot-freezes", "cold --zone 5a", "cold --zone 9b"},
    {"gaps-filled", "cold --records {folder}/day-missing.csv {winter}",
     "cold --records {folder}/whole.csv {winter}"},
    {"days-missing", "cold --records {folder}/weeks-missing.csv {winter}",
     "cold --records {folder}/day-missing.csv {winter}"},
    {"values-rejected", "cold --records {folder}/flagged.csv {winter}",
     "cold --records {folder}/sound.csv {winter}"},
    // Scheduling.
    {"no-common-window", "plan {pot} --zone 10a --season 2026 {tulip} --layer ipheion",
     "plan {pot} --zone 10a --season 2026 {tulip} --layer muscari"},
    {"mix-warm", "plan {pot} --site London {tulip} --plant 2026-09-16",
     "plan {pot} --site London {tulip} --plant 2026-10-16"},
    {"mix-too-warm", "plan {pot} --site \"New Orleans\" {tulip} --plant 2026-10-16",
     "plan {pot} --site \"New Orleans\" {tulip} --plant 2027-01-05"},
    {"wanted-day", "plan {pot} --site London {tulip} --flower 2027-04-20",
     "plan {pot} --site London {tulip} --plant 2026-10-20"},
    {"wanted-day-off", "plan {pot} --site London {tulip} --flower 2027-05-04",
     "plan {pot} --site London {tulip} --flower 2027-04-20"},
    {"wanted-day-missed", "plan {pot} --site London {tulip} --flower 2027-05-08",
     "plan {pot} --site London {tulip} --flower 2027-05-04"},
    {"wanted-day-unreachable", "plan {pot} --site London {tulip} --flower 2027-05-20",
     "plan {pot} --site London {tulip} --flower 2027-05-08"},
    {"wanted-window", "plan {pot} --site London {tulip} --flower 2027-04-20..2027-04-25",
     "plan {pot} --site London {tulip} --flower 2027-04-20..2027-05-30"},
    {"wanted-window-part", "plan {pot} --site London {tulip} --flower 2027-04-20..2027-05-30",
     "plan {pot} --site London {tulip} --flower 2027-04-20..2027-04-25"},
    {"spread", "plan {pot} {london} {tulip} --spread", "plan {pot} {london} {tulip}"},
    // Suggestions. The catalogue knows no kind that is harmless to dogs.
    {"no-tulip-pot", "suggest {pot} --site London {spring} --with crocus-large",
     "suggest {pot} --site London {spring} --with tulip-triumph"},
    {"none-known-safe", "suggest {pot} --site London {spring} --safe-for dogs",
     "suggest {pot} --site London {spring} --safe-for people"},
    {"nothing-found", "suggest {pot} --site London --window 2026-09-16..2026-09-18",
     "suggest {pot} --site London {spring}"},
};

/// A winter of daily extremes in the form of the grower's own record; `without` from a day on.
std::string own_record(Day missing_from, int missing_days) {
  std::string text = "date,tmin_c,tmax_c\n";
  for (Day day{2025, 10, 1}; day <= Day{2026, 4, 30}; day = day + 1) {
    if (day >= missing_from && day < missing_from + missing_days) continue;
    text += to_iso(day) + ",2,9\n";
  }
  return text;
}

/// The same in the form of a station's file, with a flag of doubt on one of its values.
std::string station_record(const std::string& flag) {
  std::string text =
      "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"TMAX\",\"TMAX_ATTRIBUTES\","
      "\"TMIN\",\"TMIN_ATTRIBUTES\"\n";
  for (Day day{2025, 10, 1}; day <= Day{2026, 4, 30}; day = day + 1) {
    const std::string doubt = day == Day{2025, 12, 5} ? flag : "";
    text += "\"XX000000001\",\"" + to_iso(day) + "\",\"51.0\",\"0.0\",\"90\",\"," + doubt +
            ",X\",\"20\",\",,X\"\n";
  }
  return text;
}

void write_files(const Folder& folder) {
  const std::string header = "taxon,quantity,value,low,high,unit,origin,source\n";
  folder.write("dry-tulips/taxa.csv",
               header + "tulip-triumph,moisture_growth,dry,,,,common practice,\n");
  folder.write("moist-crocus/taxa.csv",
               header + "crocus-tommasinianus,moisture_rest,moist,,,,common practice,\n");
  folder.write("whole.csv", own_record(Day{2025, 12, 5}, 0));
  folder.write("day-missing.csv", own_record(Day{2025, 12, 5}, 1));
  folder.write("weeks-missing.csv", own_record(Day{2025, 12, 1}, 20));
  folder.write("sound.csv", station_record(""));
  folder.write("flagged.csv", station_record("I"));
}

std::string command(std::string text, const Folder& folder) {
  const auto put = [&](const std::string& name, const std::string& words) {
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name))
      text.replace(at, name.size(), words);
  };
  for (const auto& [name, words] : shorthands) put(name, words);
  put("{folder}", folder.path());
  return text;
}

}  // namespace

TEST_CASE("every notice comes when it is due, and not before", "[notices]") {
  const Folder folder{"bulbwright-notices-"};
  write_files(folder);
  for (const Row& row : table) {
    CAPTURE(row.code, row.raises, row.silent);
    CHECK(codes_of(command(row.raises, folder)).contains(row.code));
    CHECK_FALSE(codes_of(command(row.silent, folder)).contains(row.code));
  }
}

TEST_CASE("no notice of the program is left out of the table", "[notices]") {
  std::set<std::string> tested;
  for (const Row& row : table) tested.insert(row.code);
  std::set<std::string> all;
  for (const std::string_view word : words_of<NoticeCode>()) all.emplace(word);
  CHECK(tested == all);
}
