#include "suggest/suggestion.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include <catch2/catch.hpp>

#include "flowering/open_days.hpp"
#include "layers/layering.hpp"
#include "plan/companions.hpp"
#include "plan/terrace_fixture.hpp"
#include "report/notice_text.hpp"
#include "scheduling/schedule.hpp"
#include "scheduling/storage_weeks.hpp"

namespace bulbwright {
namespace {

using namespace terrace;

const DayWindow spring{Day{2027, 2, 15}, Day{2027, 4, 30}};

SuggestionWish wish_for(DayWindow window) {
  SuggestionWish wish;
  wish.window = window;
  return wish;
}

Suggestions suggestions_in(const char* zone, const SuggestionWish& wish,
                           const Request& request = terrace_pot({})) {
  const PlaceSeason place_season = setting_of(zone);
  Bench bench{place_season};
  return suggest(request, wish, bench.context());
}

std::set<std::string> kinds_of(const Suggestion& suggestion) {
  std::set<std::string> kinds;
  for (const PlannedWave& wave : suggestion.waves) kinds.insert(wave.taxon);
  return kinds;
}

TEST_CASE("every suggestion is a pot that plans as it says", "[suggestion][law]") {
  for (const char* zone : {"9b", "7a", "5b"}) {
    const PlaceSeason place_season = setting_of(zone);
    Bench bench{place_season};
    const Suggestions result = suggest(terrace_pot({}), wish_for(spring), bench.context());
    REQUIRE(result.found.size() >= 5);
    for (const Suggestion& found : result.found) {
      const Plan plan = make_plan(found.request, bench.context());
      INFO(zone << " " << plan.waves.front().taxon);
      CHECK(plan.ok);
      CHECK(plan.plant == found.plant);
      REQUIRE(plan.waves.size() == found.waves.size());
      double weeks = 0.0;
      for (std::size_t i = 0; i < plan.waves.size(); ++i) {
        CHECK(plan.waves[i].taxon == found.waves[i].taxon);
        CHECK(plan.waves[i].first == found.waves[i].first);
        CHECK(plan.waves[i].last == found.waves[i].last);
        CHECK(plan.layers[i].count == found.bulbs[i]);
        CHECK(plan.cold[i].chance_least_met >= least_chance);
        CHECK_FALSE(plan.cold[i].chilled_in_pot);
        CHECK(plan.waves[i].confident);
        weeks += plan.cold[i].storage_weeks;
      }
      CHECK(weeks == found.storage_weeks);
      for (const Notice& notice : plan.notices) {
        for (const NoticeCode code :
             {NoticeCode::no_common_window, NoticeCode::under_chilled, NoticeCode::opposite_water,
              NoticeCode::opposite_light, NoticeCode::flowers_before_layer_above,
              NoticeCode::mix_too_warm})
          CHECK(notice.code != code);
      }
      // Days counted one by one.
      int run = 0, longest = 0, closed = 0, gaps = 0;
      for (Day day = spring.first; day <= spring.last; ++day) {
        if (waves_open(found.waves, day) > 0) {
          gaps += run > 0 || longest > 0 ? closed : 0;
          closed = 0;
          longest = std::max(longest, ++run);
        } else {
          run = 0;
          ++closed;
        }
      }
      CHECK(longest == found.days_in_flower);
      CHECK(gaps == found.gap_days);
      CHECK(found.planting.first <= found.plant);
      CHECK(found.plant <= found.planting.last);
      CHECK(found.reasons.size() >= 3);
      // The likeliest gap between waves that should meet is told.
      double gap = 0.0;
      for (const WaveJoint& joint : plan.display.joints) {
        const Day meeting = plan.waves[joint.after].first;
        if (joint.gap_days <= 0 && found.stretch.first <= meeting && meeting <= found.stretch.last)
          gap = std::max(gap, joint.gap_chance);
      }
      const DetailValue* told = find_detail(found.reasons[0].details, DetailName::chance);
      CHECK((told != nullptr) == (gap >= 0.1));
      if (told != nullptr) CHECK(std::abs(std::get<int>(*told) - 100.0 * gap) <= 0.51);
    }
  }
}

TEST_CASE("suggestions are ranked and differ by more than one kind", "[suggestion][law]") {
  for (const char* zone : {"9b", "6b"}) {
    const Suggestions result = suggestions_in(zone, wish_for(spring));
    REQUIRE(result.found.size() >= 5);
    for (std::size_t i = 0; i < 5; ++i) {
      if (i > 0) {
        const Suggestion &better = result.found[i - 1], &here = result.found[i];
        CHECK(std::pair{-better.days_in_flower, better.storage_weeks} <=
              std::pair{-here.days_in_flower, here.storage_weeks});
      }
      for (std::size_t j = 0; j < i; ++j) {
        const std::set<std::string> a = kinds_of(result.found[i]), b = kinds_of(result.found[j]);
        std::vector<std::string> common;
        std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(common));
        CHECK(std::max(a.size(), b.size()) - common.size() >= 2);
      }
    }
    CHECK(std::any_of(result.found.begin(), result.found.end(), [](const Suggestion& found) {
      return found.waves.size() == 1 && found.waves[0].taxon.starts_with("tulip-");
    }));
  }
}

/// A set of kinds with what it is worth, in the documented order of ranks.
struct Ranked {
  std::tuple<int, double, int, int, double, int> key;
  std::vector<std::size_t> kinds;  ///< rising
  auto operator<=>(const Ranked&) const = default;
};

/// All stacks of up to three kinds that meet the documented requirements, each on its best day,
/// best first: written out as loops, days counted one by one.
std::vector<Ranked> brute_force(const Catalogue& few, const PlaceSeason& place_season,
                                const Request& request, const SuggestionWish& wish) {
  const DayWindow window = wish.window;
  const Pot pot = make_pot(request.pot);
  Request all = request;
  for (const Taxon& taxon : few.taxa()) {
    LayerRequest layer;
    layer.parts.push_back({taxon.id, 1.0});
    all.layers.push_back(layer);
  }
  const std::vector<ResolvedLayer> layers = resolve_layers(all.layers, few);
  const PotSeason season = pot_season(place_season, pot_thermal(pot));
  const DayWindow days = planting_season(season.season, season.hemisphere);
  const std::size_t n = layers.size();
  std::vector<TimedKind> kinds;
  for (const Taxon& taxon : few.taxa()) {
    TimedKind kind = kind_of(taxon.id.c_str());
    kind.ask.taxon = &taxon;
    kind.ask.storage_temperature = Celsius{5.0};
    if (wish.no_storage) kind.ask.fixed_weeks = 0.0;
    kind.ask.late_from = late_planting_from(place_season.season, place_season.hemisphere,
                                            place_season.frost.annual_low);
    kind.ask.stored_from = stored_planting_from(place_season.season, place_season.hemisphere,
                                                place_season.frost.annual_low);
    kind.ask.never_for_a_wish = !kind.ask.stored_from;
    kind.ask.by_week = season_storage(kind, season);
    kinds.push_back(kind);
  }
  std::vector<std::vector<DayCost>> costs;
  for (const ScheduledKind& kind : scheduled_kinds(kinds, season))
    costs.push_back(planting_costs(kind, season.view()));
  // Points from which on a day is no good one; where none is good, near the coolest days.
  std::vector<double> too_much;
  for (const std::vector<DayCost>& of : costs) {
    double least = of.front().total();
    for (const DayCost& cost : of) least = std::min(least, cost.total());
    too_much.push_back(least < 2.5 ? std::max(1.0, least + 0.5) : 1.0);
  }
  std::map<std::vector<std::size_t>, std::tuple<int, double, int, int, double, int>> best;
  const auto suits = [&](const KindTiming& timing) {
    return timing.cold.cold.chance_least_met >= 0.795 && !timing.cold.cold.chilled_in_pot &&
           timing.wave.confident && timing.wave.last >= window.first &&
           timing.wave.first <= window.last;
  };
  std::map<std::tuple<std::size_t, int, double>, KindTiming> deep;  // by kind, day, centimetres
  for (Day day = days.first; day <= days.last; ++day) {
    const auto index = static_cast<std::size_t>(day - days.first);
    std::vector<std::optional<KindTiming>> timed(n);
    for (std::size_t i = 0; i < n; ++i) {
      if (rounded(costs[i][index].total(), 0.01) >= too_much[i]) continue;
      const KindTiming timing = time_kind(kinds[i], season, day);
      if (suits(timing)) timed[i] = timing;
    }
    for (unsigned set = 1; set < (1u << n); ++set) {
      std::vector<std::size_t> in;
      for (std::size_t i = 0; i < n; ++i)
        if (set & (1u << i)) in.push_back(i);
      if (in.size() > 3) continue;
      bool good = true;
      for (const std::size_t i : in) good = good && timed[i].has_value();
      for (const std::size_t i : in)
        for (const std::size_t j : in)
          good = good && !opposite_wishes(few.taxa()[i], few.taxa()[j]);
      if (!good) continue;
      const std::vector<std::size_t> rising = in;
      std::sort(in.begin(), in.end(), [&](std::size_t a, std::size_t b) {
        const auto rank = [&](std::size_t i) {
          return std::tuple{-timed[i]->wave.peak.serial(), -few.taxa()[i].season_class,
                            -rounded(layers[i].kinds[0].height.value(), 0.1), i};
        };
        return rank(a) < rank(b);
      });
      std::vector<ResolvedLayer> stack;
      for (const std::size_t i : in) stack.push_back(layers[i]);
      const Stack placed = stack_of(stack, pot);
      if (!placed.feasible) continue;
      // Every kind at the depth that it has in the stack, to the centimetre.
      std::vector<const KindTiming*> waves;
      for (std::size_t l = 0; l < in.size(); ++l) {
        TimedKind kind = kinds[in[l]];
        kind.deeper_cm =
            std::round((placed.layers[l].depth.value() - kind.ask.taxon->depth_mm.value) / 10.0);
        const std::tuple at{in[l], day.serial(), kind.deeper_cm};
        if (!deep.contains(at)) deep[at] = time_kind(kind, season, day);
        waves.push_back(&deep[at]);
        good = good && suits(*waves.back());
      }
      if (!good) continue;
      int run = 0, longest = 0, open_days = 0, flower_days = 0;
      for (Day at = window.first; at <= window.last; ++at) {
        int open = 0;
        for (const KindTiming* timing : waves)
          open += timing->wave.first <= at && at <= timing->wave.last ? 1 : 0;
        run = open > 0 ? run + 1 : 0;
        longest = std::max(longest, run);
        open_days += open > 0 ? 1 : 0;
        flower_days += open;
      }
      double weeks = 0.0, cost = 0.0;
      for (const std::size_t i : in) {
        weeks += timed[i]->cold.cold.storage_weeks;
        cost += rounded(costs[i][index].total(), 0.01);
      }
      const std::tuple key{-longest,           weeks,           -open_days, -flower_days,
                           rounded(cost, 0.1), day - days.first};
      const auto [known, is_new] = best.try_emplace(rising, key);
      if (!is_new) known->second = std::min(known->second, key);
    }
  }
  std::vector<Ranked> ranked;
  for (const auto& [kinds_in, key] : best) ranked.push_back({key, kinds_in});
  std::sort(ranked.begin(), ranked.end());
  return ranked;
}

/// The best of them that differ by more than one kind, and the best single tulip kind.
std::vector<Ranked> shown_of(const std::vector<Ranked>& ranked, const Catalogue& few, int count) {
  const auto single_tulip = [&](const Ranked& stack) {
    return stack.kinds.size() == 1 && few.taxa()[stack.kinds[0]].genus == "Tulipa";
  };
  std::vector<Ranked> shown;
  for (const Ranked& stack : ranked) {
    if (static_cast<int>(shown.size()) == count) break;
    if (std::all_of(shown.begin(), shown.end(), [&](const Ranked& other) {
          std::size_t common = 0;
          for (const std::size_t kind : stack.kinds)
            common += std::count(other.kinds.begin(), other.kinds.end(), kind) > 0 ? 1u : 0u;
          return std::max(stack.kinds.size(), other.kinds.size()) - common >= 2;
        }))
      shown.push_back(stack);
  }
  const auto tulip = std::find_if(ranked.begin(), ranked.end(), single_tulip);
  if (tulip != ranked.end() && std::none_of(shown.begin(), shown.end(), single_tulip))
    shown.push_back(*tulip);
  return shown;
}

void check_same_stacks(const Catalogue& few, const PlaceSeason& place_season,
                       const Request& request, const SuggestionWish& wish) {
  PackingCache packings;
  const PlanContext context{few, blooms(), place_season, Effort::quick, packings};
  const Suggestions result = suggest(request, wish, context);
  const std::vector<Ranked> ranked = brute_force(few, place_season, request, wish);
  CHECK(result.fitting == static_cast<int>(ranked.size()));
  const std::vector<Ranked> shown = shown_of(ranked, few, wish.count);
  REQUIRE(result.found.size() == shown.size());
  for (std::size_t i = 0; i < shown.size(); ++i) {
    std::set<std::string> kinds;
    for (const std::size_t kind : shown[i].kinds) kinds.insert(few.taxa()[kind].id);
    CHECK(kinds_of(result.found[i]) == kinds);
    CHECK(result.found[i].days_in_flower == -std::get<0>(shown[i].key));
    CHECK(result.found[i].storage_weeks == std::get<1>(shown[i].key));
    CHECK(result.found[i].plant - planting_season(2026, Hemisphere::north).first ==
          std::get<5>(shown[i].key));
  }
}

TEST_CASE("an exhaustive run over a small catalogue finds the same stacks in the same order",
          "[suggestion][oracle]") {
  std::vector<Taxon> taxa;
  for (const char* id : {"tulip-kaufmanniana", "tulip-single-late", "narcissus-large-cupped",
                         "narcissus-poeticus", "galanthus", "muscari", "crocus-large", "camassia"})
    taxa.push_back(catalogue().at(id));
  const Catalogue few{taxa, builtin_genera()};
  for (const char* zone : {"9b", "8b", "7a", "5b"}) {
    const PlaceSeason place_season = setting_of(zone);
    for (const double height : {360.0, 260.0}) {
      Request request = terrace_pot({});
      request.pot.height = Millimetres{height};
      SuggestionWish wish = wish_for(spring);
      wish.count = 8;
      for (const DayWindow window : {spring, DayWindow{Day{2027, 3, 20}, Day{2027, 4, 10}}}) {
        wish.window = window;
        wish.no_storage = window != spring;
        INFO(zone << " " << height << " " << to_iso(window.first));
        check_same_stacks(few, place_season, request, wish);
      }
    }
  }
}

TEST_CASE("a kind that reaches its least cold in too few winters is not suggested",
          "[suggestion]") {
  // Good planting days leave the poorest winter short by little, which alone keeps most such days
  // out; both guards together are tested.
  for (const char* zone : {"7b", "8b", "9a", "9b"}) {
    SuggestionWish wish = wish_for({Day{2026, 12, 1}, Day{2027, 6, 30}});
    wish.no_storage = true;
    wish.most_layers = 1;
    wish.count = 100;
    const PlaceSeason place_season = setting_of(zone);
    Bench bench{place_season};
    const Request request = terrace_pot({});
    const Pot pot = make_pot(request.pot);
    const PotSeason season = pot_season(place_season, pot_thermal(pot));
    const Suggestions result = suggest(request, wish, bench.context());
    for (const Suggestion& found : result.found) {
      TimedKind kind = kind_of(found.waves[0].taxon.c_str());
      kind.ask.fixed_weeks = 0.0;
      const auto chance_on = [&](Day day) {
        return time_kind(kind, season, day).cold.cold.chance_least_met;
      };
      INFO(zone << " " << kind.ask.taxon->id);
      CHECK(found.chance >= 0.795);
      for (Day day = found.planting.first; day <= found.planting.last; day = day + 3)
        CHECK(chance_on(day) >= 0.795);
    }
  }
}

TEST_CASE("a wave that ends on the first wanted day is still wanted", "[suggestion]") {
  const Catalogue one{{catalogue().at("tulip-single-late")}, builtin_genera()};
  const PlaceSeason place_season = setting_of("7a");
  PackingCache packings;
  const PlanContext context{one, blooms(), place_season, Effort::quick, packings};
  for (Day day{2027, 6, 30};; day = day - 1) {
    REQUIRE(day > Day{2027, 4, 1});
    const Suggestions result = suggest(terrace_pot({}), wish_for({day, day + 30}), context);
    if (result.found.empty()) continue;
    CHECK(result.found[0].waves[0].last == day);
    CHECK(result.found[0].days_in_flower == 1);
    break;
  }
}

TEST_CASE("each mouth is asked for its own class of poison", "[suggestion]") {
  Taxon taxon = catalogue().at("muscari");
  const std::array<std::pair<Mouth, Toxicity Taxon::*>, 4> classes{
      {{Mouth::cats, &Taxon::toxicity_cat},
       {Mouth::dogs, &Taxon::toxicity_dog},
       {Mouth::horses, &Taxon::toxicity_horse},
       {Mouth::people, &Taxon::toxicity_people}}};
  for (const auto& [safe, member] : classes) {
    taxon.toxicity_cat = taxon.toxicity_dog = taxon.toxicity_horse = taxon.toxicity_people =
        Toxicity::mild;
    taxon.*member = Toxicity::none_known;
    const Catalogue one{{taxon}, builtin_genera()};
    const PlaceSeason place_season = setting_of("7a");
    PackingCache packings;
    for (const auto& [asked, ignored] : classes) {
      SuggestionWish wish = wish_for(spring);
      wish.safe_for = {asked};
      const Suggestions result =
          suggest(terrace_pot({}), wish, {one, blooms(), place_season, Effort::quick, packings});
      CHECK(result.found.empty() == (asked != safe));
    }
  }
}

TEST_CASE("what the grower excludes is in no stack, with the reason", "[suggestion]") {
  SuggestionWish wish = wish_for(spring);
  wish.safe_for = {Mouth::people};
  wish.not_eaten_by = {Pest::deer};
  wish.without = {"ipheion"};
  Request request = terrace_pot({});
  request.pot.last_crop = "hyacinthus";
  request.pot.used_mix = true;
  const Suggestions result = suggestions_in("9b", wish, request);
  for (const Suggestion& found : result.found) {
    for (const std::string& id : kinds_of(found)) {
      CHECK(catalogue().at(id).toxicity_people == Toxicity::none_known);
      CHECK(catalogue().at(id).deer == Eaten::rarely);
      CHECK(id != "ipheion");
    }
  }
  std::map<std::string, std::string> reasons;
  for (const LeftOut& out : result.left_out) reasons[out.taxon] = report::plain_text(out.reason);
  CHECK(reasons["ipheion"] == "not wanted");
  CHECK(reasons["hyacinth"] == "the mix held its genus last year");
  CHECK(reasons["narcissus-trumpet"] == "poisonous to people when eaten");
  CHECK(reasons.size() + static_cast<std::size_t>(std::count_if(
                             catalogue().taxa().begin(), catalogue().taxa().end(),
                             [&](const Taxon& taxon) { return !reasons.contains(taxon.id); })) ==
        static_cast<std::size_t>(result.kinds));
}

TEST_CASE("where nothing is known to be safe for pets the mildest are told, not suggested",
          "[suggestion]") {
  SuggestionWish wish = wish_for(spring);
  wish.safe_for = {Mouth::cats, Mouth::dogs};
  const Suggestions result = suggestions_in("9b", wish);
  const bool any_safe =
      std::any_of(catalogue().taxa().begin(), catalogue().taxa().end(), [](const Taxon& taxon) {
        return std::max(taxon.toxicity_cat, taxon.toxicity_dog) == Toxicity::none_known;
      });
  REQUIRE_FALSE(any_safe);  // else this test wants another wish
  CHECK(result.found.empty());
  REQUIRE(result.notices.size() == 2);
  CHECK(result.notices[0].severity == Severity::refusal);
  CHECK_THAT(report::plain_text(result.notices[1]),
             Catch::Contains("harmless to cats and dogs") && Catch::Contains("Grape hyacinth"));
}

TEST_CASE("without a refrigerator no kind is stored, in warm places few are left", "[suggestion]") {
  SuggestionWish wish = wish_for(spring);
  wish.no_storage = true;
  const Suggestions cold_place = suggestions_in("6b", wish);
  const Suggestions warm_place = suggestions_in("9b", wish);
  CHECK(warm_place.fitting < cold_place.fitting);
  for (const Suggestions& result : {cold_place, warm_place}) {
    REQUIRE_FALSE(result.found.empty());
    for (const Suggestion& found : result.found) {
      CHECK(found.storage_weeks == 0.0);
      CHECK(found.request.storage.weeks == 0.0);
    }
  }
}

TEST_CASE("kinds that the grower has are in every stack", "[suggestion]") {
  SuggestionWish wish = wish_for(spring);
  wish.with = {"narcissus-large-cupped", "tulip-triumph"};
  const Suggestions result = suggestions_in("8a", wish);
  REQUIRE_FALSE(result.found.empty());
  for (const Suggestion& found : result.found) {
    CHECK(kinds_of(found).contains("narcissus-large-cupped"));
    CHECK(kinds_of(found).contains("tulip-triumph"));
  }
}

TEST_CASE("layers are limited by the wish and by the pot", "[suggestion]") {
  SuggestionWish wish = wish_for(spring);
  wish.most_layers = 1;
  for (const Suggestion& found : suggestions_in("7a", wish).found) CHECK(found.waves.size() == 1);
  wish.most_layers = 4;
  Request deep = terrace_pot({});
  deep.pot.height = Millimetres{520.0};
  const Suggestions four = suggestions_in("7a", wish, deep);
  CHECK(four.found.front().waves.size() == 4);
  wish.most_layers = 3;
  const Suggestions three = suggestions_in("7a", wish, deep);
  CHECK(four.found.front().days_in_flower >= three.found.front().days_in_flower);
  Request bowl = terrace_pot({});
  bowl.pot.height = Millimetres{110.0};
  const Suggestions none = suggestions_in("7a", wish, bowl);
  CHECK(none.found.empty());
  REQUIRE_FALSE(none.notices.empty());
  CHECK_THAT(report::plain_text(none.notices[0]), Catch::Contains("too shallow"));
}

TEST_CASE("the south has its suggestions in its own spring", "[suggestion]") {
  const PlaceSeason place_season = setting_of_site("Christchurch");
  Bench bench{place_season};
  const DayWindow window{Day{2026, 8, 1}, Day{2026, 11, 15}};
  const Suggestions result = suggest(terrace_pot({}), wish_for(window), bench.context());
  REQUIRE(result.found.size() >= 5);
  for (const Suggestion& found : result.found) {
    CHECK(found.plant.year() == 2026);
    CHECK(found.plant.month() <= 9);
    CHECK(window.first <= found.stretch.first);
  }
}

}  // namespace
}  // namespace bulbwright
