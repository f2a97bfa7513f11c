#pragma once

#include <string>

#include "report/text_style.hpp"
#include "season/season.hpp"

namespace bulbwright::report {

/// What leads the text of a season.
enum class SeasonView { days, weeks };

/// The season for people, on a page where that can be: jobs by day or by week, the refrigerator by
/// week against the drawer, the days of filling, the weeks in flower, what to buy, cautions.
std::string season_text(const Season& season, SeasonView view, const TextStyle& style);

/// The JSON document "bulbwright.season/1" (docs/schema/season.schema.json). Each pot has its plan
/// as `plan` prints it. Written part by part: a thousand plans stand in memory as text only.
std::string season_json(const Season& season);

/// The same as JSON Lines: one record a line, its sort in "record": the season without its pots and
/// jobs, then each pot, then each job.
std::string season_json_lines(const Season& season);

/// RFC 4180: a job of a pot is a row. Header
/// date,until,week,what,pot,group,taxon,name,layer,bulbs,bag_litres,mix_loose_litres,text,file.
std::string season_csv(const Season& season);

}  // namespace bulbwright::report
