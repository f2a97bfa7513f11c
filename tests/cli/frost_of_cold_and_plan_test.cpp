// One frost: `cold` and `plan` say the same of the same pot, at every station, however it stands
// and however the grower's spot differs from the station.
#include <algorithm>
#include <array>

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include "climate/record_offset.hpp"
#include "cold/cold_answer.hpp"
#include "plan/world_fixture.hpp"

using namespace bulbwright;
using fixture::world;

namespace {

std::optional<Notice> frost_in(const std::vector<Notice>& notices) {
  const auto found = std::ranges::find(notices, NoticeCode::pot_freezes, &Notice::code);
  return found == notices.end() ? std::nullopt : std::optional{*found};
}

}  // namespace

TEST_CASE("cold and plan tell one frost", "[cold_and_plan][frost][law]") {
  int freeze = 0, differ = 0;
  std::string first;
  std::size_t turn = 0;
  for (const Place& station : world().places.places()) {
    for (const Exposure exposure :
         {Exposure::open, Exposure::sheltered, Exposure::warm_wall, Exposure::plunged}) {
      const double kelvins = std::array{-3.0, 0.0, 1.0, 2.0, -1.5}[turn++ % 5];
      const Place place = moved_by(station, {Kelvins{kelvins}, Kelvins{kelvins}});
      Request request;
      const double width_mm = turn % 2 == 0 ? 200.0 : 380.0;
      request.pot.top = LengthPair{Millimetres{width_mm}, Millimetres{width_mm}, false};
      request.pot.height = Millimetres{300.0};
      LayerRequest layer;
      layer.parts = {{"muscari", 1.0}};
      request.layers = {layer};
      const PlaceSeason season = season_at_place(place, 2026, exposure);
      const Plan plan = make_plan(
          request, {world().catalogue, world().blooms, season, Effort::quick, world().packings});
      const ColdReport report = cold_answer(place, {make_pot(request.pot), exposure, {}});
      const auto planned = frost_in(plan.notices), told = frost_in(report.notices);
      freeze += told ? 1 : 0;
      if (planned == told) continue;
      if (++differ == 1) first = fmt::format("{} {} {:+}", place.name, word_of(exposure), kelvins);
    }
  }
  INFO(first);
  CHECK(differ == 0);
  CHECK(freeze >= 300);
}
