#include "practice.hpp"

#include <array>
#include <map>
#include <optional>

#include "climate/climate.hpp"
#include "cold/pot_temperature.hpp"

namespace bulbwright::fit {
namespace {

constexpr double order_sd = 3.0, months_sd = 12.0;  // days

struct Order {
  const char *before, *after;
  double days;             ///< at least, between first flowers in one garden
  bool everywhere = true;  ///< false: where winters are cold only
};

/// common practice; for tulips the diaries of garden_dates.csv say the same
constexpr std::array orders{
    Order{"galanthus", "crocus-species", 0},
    Order{"crocus-species", "crocus-large", 10},
    Order{"crocus-tommasinianus", "crocus-large", 8},
    Order{"iris-reticulata", "crocus-large", 4},
    Order{"galanthus", "iris-reticulata", 0},
    Order{"crocus-large", "narcissus-miniature", 3},
    Order{"crocus-large", "narcissus-trumpet", 8},
    Order{"crocus-large", "scilla-siberica", 3},
    Order{"crocus-large", "chionodoxa", 3},
    Order{"crocus-large", "puschkinia", 3},
    Order{"crocus-large", "anemone-blanda", 6},
    Order{"narcissus-miniature", "narcissus-trumpet", 0},
    Order{"narcissus-cyclamineus", "narcissus-trumpet", 0},
    Order{"narcissus-trumpet", "narcissus-large-cupped", 3},
    Order{"narcissus-large-cupped", "narcissus-small-cupped", 3},
    Order{"narcissus-large-cupped", "narcissus-double", 4},
    Order{"narcissus-large-cupped", "narcissus-triandrus", 7},
    Order{"narcissus-large-cupped", "narcissus-jonquilla", 7, false},
    Order{"narcissus-large-cupped", "narcissus-tazetta", 7, false},
    Order{"narcissus-triandrus", "narcissus-poeticus", 3},
    Order{"narcissus-double", "narcissus-poeticus", 3},
    Order{"narcissus-trumpet", "hyacinth", 3},
    Order{"hyacinth-prepared", "hyacinth", 2},
    Order{"crocus-large", "hyacinth-prepared", 10},
    Order{"narcissus-trumpet", "muscari", 4},
    Order{"narcissus-large-cupped", "fritillaria-imperialis", 7},
    Order{"narcissus-large-cupped", "fritillaria-meleagris", 18},
    Order{"narcissus-large-cupped", "leucojum-aestivum", 3, false},
    Order{"narcissus-large-cupped", "tulip-triumph", 10},
    Order{"tulip-kaufmanniana", "tulip-fosteriana", 4},
    Order{"tulip-fosteriana", "tulip-greigii", 1},
    Order{"tulip-fosteriana", "tulip-triumph", 3},
    Order{"tulip-single-early", "tulip-triumph", 5},
    Order{"tulip-double-early", "tulip-triumph", 2},
    Order{"tulip-triumph", "tulip-lily-flowered", 1},
    Order{"tulip-triumph", "tulip-fringed", 2},
    Order{"tulip-triumph", "tulip-parrot", 2},
    Order{"tulip-triumph", "tulip-double-late", 2},
    Order{"tulip-triumph", "tulip-viridiflora", 3},
    Order{"tulip-triumph", "tulip-single-late", 5},
    Order{"tulip-single-early", "tulip-single-late", 11},
    Order{"tulip-double-late", "tulip-single-late", 0},
    Order{"tulip-single-late", "allium-large", 7},
    Order{"tulip-single-late", "iris-hollandica", 14, false},
    Order{"tulip-triumph", "camassia", 4},
    Order{"allium-large", "allium-small", 3},
};

/// "early to mid May", "late March": first and last serial day; nothing where no month is named.
std::optional<std::pair<double, double>> days_of(const std::string& words) {
  static const std::map<std::string, unsigned> months{{"January", 1}, {"February", 2}, {"March", 3},
                                                      {"April", 4},   {"May", 5},      {"June", 6}};
  std::vector<std::pair<double, double>> found;
  double from_share = 0.0, to_share = 1.0;
  std::string word;
  bool first_part = true;
  for (const char c : words + " ") {
    if (c != ' ' && c != ';' && c != '(' && c != ')' && c != ',') {
      word += c;
      continue;
    }
    const std::map<std::string, double> parts{{"early", 0.0}, {"mid", 1.0}, {"late", 2.0}};
    if (const auto part = parts.find(word); part != parts.end()) {
      if (first_part) from_share = part->second / 3;
      to_share = (part->second + 1) / 3;
      first_part = false;
    } else if (const auto month = months.find(word); month != months.end()) {
      const double start = Day{2027, month->second, 1}.serial();
      found.emplace_back(start + 30 * from_share, start + 30 * to_share);
      from_share = 0.0;
      to_share = 1.0;
      first_part = true;
    }
    if (c == ';' || c == '(') break;
    word.clear();
  }
  if (found.empty()) return std::nullopt;
  return std::pair{found.front().first, found.back().second};
}

std::size_t add_ground(Evidence& evidence, const Place& place, const std::string& name) {
  const auto winters = winters_from_normals(place, 2026);
  const auto felt = [&](const Winter& winter) {
    return bloom_season(pot_winter(winter, pot_thermal(example_pot()), Exposure::plunged));
  };
  evidence.grounds.push_back({felt(winters[0]), felt(winters[1]), felt(winters[2]), winters[0]});
  evidence.ground_keys.push_back(name);
  return evidence.grounds.size() - 1;
}

Observation pseudo(std::size_t ground) {
  Observation o;
  o.place = "practice";
  o.ground = ground;
  o.planting.planted = Day{2026, 10, 15};
  return o;
}

}  // namespace

void add_practice(Evidence& evidence, const Catalogue& catalogue) {
  const PlaceCatalogue places = PlaceCatalogue::builtin();
  struct Town {
    const char* name;
    double latitude, longitude;
    bool cold, months;
  };
  for (const Town& town :
       {Town{"London", 51.5, -0.1, true, false}, Town{"Boston", 42.4, -71.1, true, true},
        Town{"Philadelphia", 39.9, -75.2, true, true}, Town{"Amsterdam", 52.4, 4.9, true, false},
        Town{"Seattle", 47.6, -122.3, true, false}, Town{"Raleigh", 35.8, -78.7, false, false}}) {
    const Place& place = *places.nearest(town.latitude, town.longitude, 1).at(0).place;
    const std::size_t ground = add_ground(evidence, place, town.name);
    for (const Order& order : orders) {
      if (!order.everywhere && !town.cold) continue;
      Observation o = pseudo(ground);
      o.says = Says::after;
      o.taxon = order.after;
      o.other = order.before;
      o.low = order.days;
      o.sd = order_sd;
      evidence.rows.push_back(o);
    }
    if (!town.months) continue;
    for (const Taxon& taxon : catalogue.taxa()) {
      const auto days = days_of(taxon.bloom_months);
      if (!days || taxon.bloom_months.starts_with("not hardy") || taxon.id == "ranunculus")
        continue;
      Observation o = pseudo(ground);
      o.says = Says::period;
      o.taxon = o.other = taxon.id;
      o.low = days->first;
      o.high = days->second;
      o.sd = months_sd;
      evidence.rows.push_back(o);
    }
  }
}

}  // namespace bulbwright::fit
