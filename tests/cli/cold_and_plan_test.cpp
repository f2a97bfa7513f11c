// `cold` and `plan`, asked for the same bulbs, pot, place and days, give the same cold and the same
// share of winters.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "base/calendar_day.hpp"
#include "cli/answers.hpp"

using namespace bulbwright;
using nlohmann::json;

namespace {

json answer(const std::string& line) {
  std::vector<std::string> words = fixture::words_of(line);
  words.insert(words.end(), {"--format", "json"});
  input::InputFiles inputs;
  const cli::CommandResult result = cli::run_program(words, {}, inputs);
  INFO(line << "\n" << result.remarks);
  REQUIRE_FALSE(result.document.empty());
  return json::parse(result.document);
}

const std::string pot = " --top 38cm --base 29cm --height 36cm --material terracotta";

/// Planted without storage; natural cold counts up to the day before the noses, which count no
/// sooner than six weeks before the flower.
struct Planned {
  json cold;  ///< of the kind
  std::string plant, last;

  explicit Planned(const std::string& place, const char* taxon) {
    const json plan =
        answer("plan" + pot + " --season 2026 --storage-weeks 0 " + place + " --layer " + taxon);
    cold = plan.at("cold").at("taxa").at(0);
    plant = plan.at("plant");
    last = cold.at("natural_until");
  }
};

/// A record of daily extremes whose winters differ.
std::string record_of(double mean_c, double apart_k) {
  std::string text = "date,tmin_c,tmax_c\n";
  for (Day day{2004, 8, 1}; day <= Day{2020, 7, 31}; day = day + 1) {
    const int year = season_of(day, Hemisphere::north);
    const double of_year = apart_k * ((year * 7) % 11 - 5) / 5.0;
    const double of_season = -9.0 * std::cos(2.0 * 3.14159265 * (day.day_of_year() - 20) / 365.0);
    const double mean = mean_c + of_season + of_year;
    text += fmt::format("{},{:.1f},{:.1f}\n", to_iso(day), mean - 4.0, mean + 4.0);
  }
  return text;
}

}  // namespace

TEST_CASE("cold and plan give the same weeks over the same days", "[cold_and_plan][law]") {
  for (const char* place :
       {"--site London", "--site Seattle", "--site Boston", "--site Amsterdam", "--site Sacramento",
        "--site Dallas", "--site Atlanta", "--site \"San Francisco\"", "--site Rome", "--zone 7a",
        "--zone 8b", "--zone 9b"}) {
    for (const char* taxon : {"tulip-triumph", "narcissus-trumpet", "crocus-large"}) {
      const Planned planned{place, taxon};
      const json cold = answer(
          fmt::format("cold{} {} --from {} --to {}", pot, place, planned.plant, planned.last));
      INFO(place << " " << taxon << " " << planned.plant << " to " << planned.last);
      const json& natural = planned.cold.at("natural_weeks");
      for (const char* name : {"normal", "mild", "cold"}) {
        const double weeks = cold.at("total").at("cold_weeks").at(name).get<double>();
        CHECK(std::abs(natural.at(name).get<double>() - std::max(0.0, weeks)) < 0.06);
      }
    }
  }
}

/// The winters' weeks of cold over the days.
std::vector<double> weeks_by_winter(const std::string& place, const Planned& planned, Day last) {
  const json cold = answer(fmt::format("cold{} {} --from {} --to {}", pot, place,
                                       planned.plant.substr(5), to_iso(last).substr(5)));
  std::vector<double> weeks;
  for (const json& winter : cold.at("winters")) {
    if (winter.at("complete").get<bool>())
      weeks.push_back(winter.at("total").at("cold_weeks").get<double>());
  }
  return weeks;
}

/// True where a plan's three named winters are among the record's. The calendar of a plan knows no
/// leap day: a winter that has one is counted to the day or to the day before.
bool has_named_winters(const Planned& planned, const std::vector<double>& weeks,
                       const std::vector<double>& day_before) {
  for (const json& natural : planned.cold.at("natural_weeks")) {
    bool found = false;
    for (std::size_t i = 0; i < weeks.size(); ++i) {
      const auto [low, high] = std::minmax({std::max(0.0, weeks[i]), std::max(0.0, day_before[i])});
      found = found || (natural.get<double>() > low - 0.06 && natural.get<double>() < high + 0.06);
    }
    if (!found) return false;
  }
  return true;
}

TEST_CASE("cold and plan count the same winters of a record", "[cold_and_plan][law]") {
  const fixture::Folder folder{"bulbwright-winters-"};
  int between = 0;
  for (int i = 0; i < 12; ++i) {
    folder.write("record.csv", record_of(15.5 + 0.4 * i, 3.0));
    const std::string place = fmt::format("--records {}/record.csv --latitude 42", folder.path());
    for (const char* taxon : {"tulip-triumph", "muscari"}) {
      const Planned planned{place, taxon};
      const double least = planned.cold.at("need_weeks").at("least").get<double>();
      const double share = planned.cold.at("chance_least_met").get<double>();
      const std::vector<double> weeks = weeks_by_winter(place, planned, parse_day(planned.last));
      REQUIRE(weeks.size() >= 15);
      const auto reach = [&](double least_weeks) {
        return static_cast<double>(std::count_if(weeks.begin(), weeks.end(),
                                                 [&](double w) { return w >= least_weeks; })) /
               static_cast<double>(weeks.size());
      };
      INFO(i << " " << taxon << " " << planned.plant << " to " << planned.last);
      CHECK(has_named_winters(planned, weeks,
                              weeks_by_winter(place, planned, parse_day(planned.last) - 1)));
      CHECK(share >= reach(least + 0.02) - 0.006);
      CHECK(share <= reach(least - 0.02) + 0.006);
      between += share > 0.0 && share < 1.0 ? 1 : 0;
    }
  }
  CHECK(between >= 4);  // else the test says little
}
