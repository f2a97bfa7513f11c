// The jobs of a season as a table.
#include <algorithm>
#include <map>
#include <tuple>

#include <fmt/core.h>

#include "report/date_text.hpp"
#include "report/season_report.hpp"
#include "report/spreadsheet.hpp"

namespace bulbwright::report {

std::string season_csv(const Season& season) {
  std::map<std::tuple<std::size_t, std::string, Day>, const Bag*> bags;
  for (const Bag& bag : season.refrigerator.bags) bags[{bag.pot, bag.taxon, bag.in}] = &bag;
  std::string csv =
      "date,until,week,what,pot,group,taxon,name,layer,bulbs,bag_litres,mix_loose_litres,text,"
      "file\r\n";
  for (const SeasonJob& job : season.calendar) {
    const PlannedDate& date = job.date;
    const SeasonPot& pot = season.pots[job.pot];
    const KindName kind = date.kinds.empty() ? KindName{} : date.kinds.front();
    std::string bulbs, litres, mix;
    if (date.task == Task::storage_start) {
      // Layers that share a bag have it in the row of the first.
      if (const auto bag = bags.find({job.pot, kind.taxon, date.date}); bag != bags.end()) {
        bulbs = fmt::format("{}", bag->second->bulbs);
        litres = fmt::format("{:.1f}", rounded(bag->second->litres.value(), 0.1));
        bags.erase(bag);
      }
    } else if (date.task == Task::plant) {
      int planted = 0;
      for (const PlannedLayer& layer : pot.plan->layers) planted += layer.count;
      bulbs = fmt::format("{}", planted);
      mix = fmt::format("{:.1f}", rounded(pot.plan->materials.mix_loose.value(), 0.1));
    }
    csv += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{},{}\r\n", to_iso(date.date),
                       date.until ? to_iso(*date.until) : "",
                       to_iso(date.date - date.date.days_since_monday()), word_of(date.task),
                       text_cell(pot.name), text_cell(pot.group), text_cell(kind.taxon),
                       text_cell(kind.name), date.layer > 0 ? fmt::format("{}", date.layer) : "",
                       bulbs, litres, mix, text_cell(plain_text(date)), text_cell(pot.file));
  }
  return csv;
}

}  // namespace bulbwright::report
