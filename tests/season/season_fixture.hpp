#pragma once

#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "plan/terrace_fixture.hpp"
#include "season/season.hpp"

/// Pots of the terrace planned for a season.
namespace bulbwright::terrace {

/// One round pot with these kinds, bottom first.
inline Request round_pot(const std::string& name, double top_mm,
                         std::initializer_list<const char*> kinds,
                         std::optional<Day> plant = std::nullopt) {
  Request request = terrace_pot(kinds);
  request.pot.name = name;
  request.pot.top = LengthPair{Millimetres{top_mm}, Millimetres{top_mm}, false};
  request.pot.base.reset();
  request.plant = plant;
  return request;
}

/// Plans pots of zone 9b and remembers how, so that they can be planned again. Tests derive theirs
/// from it.
struct PotHouse {
  PlaceSeason place_season = setting_of("9b");
  Bench bench{place_season};
  std::vector<Request> requests{};
  std::vector<SeasonPot> pots{};

  void add(const Request& request, const std::string& group = "") {
    requests.push_back(request);
    pots.push_back({request.pot.name, request.pot.name + ".json", group,
                    std::make_shared<const Plan>(make_plan(request, bench.context())), ""});
  }
  [[nodiscard]] Replan replan() {
    return [this](std::size_t pot, Day plant) {
      Request request = requests[pot];
      request.plant = plant;
      return std::make_shared<const Plan>(make_plan(request, bench.context()));
    };
  }
  [[nodiscard]] std::vector<Bag> bags() const {
    std::vector<Bag> all;
    for (std::size_t pot = 0; pot < pots.size(); ++pot) {
      for (Bag& bag : bags_of(*pots[pot].plan, pot, catalogue())) all.push_back(std::move(bag));
    }
    return all;
  }
  Season season(const SeasonAsk& ask) {
    const auto packs = builtin_packs();
    const auto cautions = builtin_cautions();
    const Replan again = replan();
    return make_season(pots, ask, {catalogue(), packs, cautions, again});
  }
};

}  // namespace bulbwright::terrace
