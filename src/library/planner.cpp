#include "bulbwright/planner.hpp"

#include <algorithm>

#include "input/pot_file_reader.hpp"
#include "input/request_check.hpp"
#include "input/resolve.hpp"
#include "library/translate.hpp"
#include "plan/planner.hpp"
#include "report/plan_json.hpp"
#include "report/sheet/sheet.hpp"

namespace bulbwright::library {

struct Planner::Inside {
  input::InputFiles inputs;  // the library writes no file that could replace them
  input::Facts facts;
  PackingCache packings;

  explicit Inside(const std::string& data_folder) : facts{input::load_facts(data_folder, inputs)} {}

  Plan plan(std::string_view pot_file, const std::string& name, Effort effort) {
    input::Faults faults;
    input::LocatedRequest asked = input::read_pot_file(pot_file, name, faults);
    faults.add(input::contradictions(asked));
    faults.add(input::omissions(asked));
    const PlaceSeason place_season = input::resolve(asked, facts, inputs, std::move(faults));
    return input::with_faults_located(asked, [&] {
      return make_plan(asked.request,
                       input::context_of(facts, place_season, effort_of(effort), packings));
    });
  }
};

Planner::Planner() : Planner{std::string{}} {}

Planner::Planner(const std::string& data_folder)
    : inside_{translated([&] { return std::make_unique<Inside>(data_folder); })} {}

Planner::~Planner() = default;
Planner::Planner(Planner&&) noexcept = default;
Planner& Planner::operator=(Planner&&) noexcept = default;

Planner::Answer Planner::plan(std::string_view pot_file, const std::string& name, Effort effort) {
  return translated([&] {
    const Plan plan = inside_->plan(pot_file, name, effort);
    return Answer{plan.ok, report::plan_json(plan)};
  });
}

std::string Planner::sheet(std::string_view pot_file, const SheetStyle& style,
                           const std::string& name, Effort effort) {
  return translated([&] {
    report::TextStyle text;
    text.utf8 = !style.ascii;
    text.width = std::clamp(style.width, 40, 99);
    text.units = style.inches ? report::Units::inches : report::Units::millimetres;
    return report::plan_text(inside_->plan(pot_file, name, effort), text);
  });
}

}  // namespace bulbwright::library
