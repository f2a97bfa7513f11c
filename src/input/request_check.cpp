#include "input/request_check.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>

#include "catalogue/kind_words.hpp"
#include "pot/pot.hpp"

namespace bulbwright::input {
namespace {

/// Of the kinds that tell a whole year; records may stand beside one of them.
int kinds_named(const PlaceRequest& place) {
  return (place.zone ? 1 : 0) + (place.site ? 1 : 0) + (place.near ? 1 : 0) +
         (place.normals ? 1 : 0);
}

class Contradictions {
 public:
  explicit Contradictions(const LocatedRequest& asked) : asked_{asked}, request_{asked.request} {}

  std::vector<InputFault> found() && {
    if (asked_.pot_is_sound) judge_pot();
    if (request_.place) judge_place(*request_.place);
    const bool has_flower = request_.flower || asked_.yearless.flower;
    if ((request_.plant || asked_.yearless.plant) && has_flower) {
      add("flower",
          "given beside plant; expected one of the two, the planting day or the wanted "
          "flowering time");
    }
    for (std::size_t i = 0; i < request_.layers.size(); ++i) judge_count(i);
    if (request_.spread && has_flower) {
      add("spread",
          "given beside flower; expected one of the two, the longest display or the wanted time");
    }
    return std::move(faults_);
  }

 private:
  void add(std::string_view field, const std::string& message) {
    faults_.push_back(fault_at(asked_, field, message));
  }

  void judge_count(std::size_t index) {
    const LayerRequest& layer = request_.layers[index];
    if (!layer.count || *layer.count >= static_cast<int>(layer.parts.size())) return;
    add(fmt::format("layers[{}].count", index),
        fmt::format("{} for a mix of {} kinds; expected at least one of each", *layer.count,
                    layer.parts.size()));
  }

  void judge_pot() {
    const PotRequest& pot = request_.pot;
    if (!pot.top && pot.profile.empty()) return;  // an omission, told apart
    try {
      make_pot(pot);
    } catch (const InvalidValue& fault) {
      add(fault.field(), fault.expectation());
    }
  }

  void judge_place(const PlaceRequest& place) {
    if (kinds_named(place) > 1) {
      add(place.near   ? "place.near"
          : place.site ? "place.site"
                       : "place.normals",
          "more than one kind of place; expected one of zone, site, near and normals (records may "
          "stand beside it)");
      return;
    }
    if ((place.site || place.near) && place.latitude && !place.records_file) {
      add("place.latitude", place.site ? "given beside a site, which has its own; leave it out"
                                       : "given beside near, which tells it; leave it out");
    }
    if (place.offset && kinds_named(place) == 0 && !any_kind_given()) {
      add("place.offset", "goes with zone, site, near or normals, which it moves");
    }
    if (place.elevation && !place.near && !given(asked_, "place.near")) {
      add("place.elevation", "goes with near only: a site has its own height, a zone none");
    }
    if (place.south && !place.zone && !given(asked_, "place.zone")) {
      add("place.south", "goes with a zone only; a site or a latitude tells the hemisphere itself");
    }
    if (place.region != ZoneRegion::all && !place.zone && !given(asked_, "place.zone")) {
      add("place.region", "goes with a zone only: it says which of the zone's stations to go by");
    }
    if (place.zone && place.latitude && place.south != (*place.latitude < 0.0)) {
      add("place.latitude", place.south ? "contradicts south; expected a negative latitude"
                                        : "is south of the equator; expected \"south\": true");
    }
  }

  [[nodiscard]] bool any_kind_given() const {
    return given(asked_, "place.zone") || given(asked_, "place.site") ||
           given(asked_, "place.near") || given(asked_, "place.normals");
  }

  const LocatedRequest& asked_;
  const Request& request_;
  std::vector<InputFault> faults_;
};

std::string season_words(int season, Hemisphere hemisphere) {
  const DayWindow days = season_days(season, hemisphere);
  return fmt::format("season {} is {} to {}", season, to_iso(days.first), to_iso(days.last));
}

void add_place_omission(const LocatedRequest& asked, const PlaceRequest& place,
                        std::vector<InputFault>& faults) {
  const bool kind_given = given(asked, "place.zone") || given(asked, "place.site") ||
                          given(asked, "place.near") || given(asked, "place.normals");
  constexpr const char* latitude = "needs a latitude beside it, in degrees, south negative";
  const bool no_latitude = !place.latitude && !given(asked, "place.latitude");
  if (!kind_given && !given(asked, "place.records")) {
    faults.push_back(
        fault_at(asked, "place",
                 "says no kind of place; expected one of zone, site, near, normals and "
                 "records"));
  } else if (place.normals && no_latitude) {
    faults.push_back(fault_at(asked, "place.normals", latitude));
  }
}

}  // namespace

std::vector<InputFault> contradictions(const LocatedRequest& asked) {
  const Request& request = asked.request;
  std::vector<InputFault> faults = Contradictions{asked}.found();
  if (!request.place) return faults;
  if (const auto hemisphere = hemisphere_of(*request.place)) {
    for (InputFault& fault : season_faults(asked, *hemisphere)) {
      faults.push_back(std::move(fault));
    }
  }
  return faults;
}

std::vector<InputFault> omissions(const LocatedRequest& asked, Layers layers) {
  const Request& request = asked.request;
  std::vector<InputFault> faults;
  if (!asked.is_sound) return faults;  // what is missing may just be misspelt
  if (!request.pot.top && request.pot.profile.empty() && !given(asked, "pot.top") &&
      !given(asked, "pot.profile")) {
    faults.push_back(
        fault_at(asked, "pot.top", "missing; expected the width at the rim, such as \"380 mm\""));
  }
  if (!request.place && !given(asked, "place")) {
    faults.push_back(fault_at(asked, "place",
                              "missing; expected where the pot stands, by one of zone, site, "
                              "near, normals and records"));
  }
  if (request.place) add_place_omission(asked, *request.place, faults);
  if (layers == Layers::needed && request.layers.empty() && !given(asked, "layers")) {
    faults.push_back(fault_at(asked, "layers",
                              "missing; expected what to plant, bottom layer first, such as "
                              "\"tulip-triumph\""));
  }
  return faults;
}

std::optional<Hemisphere> hemisphere_of(const PlaceRequest& place) {
  if (place.zone) return place.south ? Hemisphere::south : Hemisphere::north;
  if (place.latitude) return *place.latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
  if (place.near) return place.near->latitude < 0.0 ? Hemisphere::south : Hemisphere::north;
  return std::nullopt;
}

std::vector<InputFault> season_faults(const LocatedRequest& asked, Hemisphere hemisphere) {
  const Request& request = asked.request;
  std::vector<InputFault> faults;
  const auto outside = [&](Day day) {
    return request.season && season_of(day, hemisphere) != *request.season;
  };
  if (request.plant && outside(*request.plant)) {
    faults.push_back(
        fault_at(asked, "plant",
                 fmt::format("{} does not lie in the season; {}", to_iso(*request.plant),
                             season_words(*request.season, hemisphere))));
  }
  if (!request.flower) return faults;
  const DayWindow window = *request.flower;
  if (outside(window.first) || outside(window.last)) {
    const Day day = outside(window.first) ? window.first : window.last;
    faults.push_back(fault_at(asked, "flower",
                              fmt::format("{} does not lie in the season; {}", to_iso(day),
                                          season_words(*request.season, hemisphere))));
  } else if (season_of(window.first, hemisphere) != season_of(window.last, hemisphere)) {
    faults.push_back(
        fault_at(asked, "flower",
                 fmt::format("the window lies in two seasons; {}",
                             season_words(season_of(window.first, hemisphere), hemisphere))));
  }
  return faults;
}

std::vector<InputFault> settle_kinds(LocatedRequest& asked, const Catalogue& catalogue) {
  std::vector<LayerRequest>& layers = asked.request.layers;
  std::vector<InputFault> faults;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    std::vector<LayerPart>& parts = layers[i].parts;
    for (std::size_t k = 0; k < parts.size(); ++k) {
      if (parts[k].taxon.empty()) continue;  // refused when it was read
      const std::string field = parts.size() == 1 ? fmt::format("layers[{}].taxon", i)
                                                  : fmt::format("layers[{}].mix[{}].taxon", i, k);
      try {
        const std::string written = std::exchange(parts[k].taxon, {});
        const std::string& id = kind_called(catalogue, written).id;
        const bool twice =
            std::any_of(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(k),
                        [&](const LayerPart& part) { return part.taxon == id; });
        if (twice) {
          faults.push_back(
              fault_at(asked, field,
                       fmt::format("{} is {}, which its mix has already", in_quotes(written), id)));
        }
        parts[k].taxon = id;
      } catch (const InvalidValue& fault) {
        faults.push_back(fault_at(asked, field, fault.expectation()));
      }
    }
  }
  return faults;
}

}  // namespace bulbwright::input
