#include <algorithm>
#include <cmath>

#include "cold/hard_frost.hpp"
#include "materials/used_mix.hpp"
#include "plan/care_dates.hpp"
#include "plan/companions.hpp"
#include "plan/parts.hpp"

namespace bulbwright {
namespace {

/// A winter this warm gives no bulb cold worth counting.
constexpr double no_winter_weeks = 0.5;

void say(Plan& plan, NoticeCode code, Severity severity, std::vector<KindName> kinds,
         std::vector<Detail> details) {
  plan.notices.push_back({code, severity, std::move(kinds), std::move(details)});
}

void flowering_order(const PlanFacts& facts, Plan& plan) {
  std::vector<OrderKey> keys;
  for (std::size_t i = 0; i < facts.layers.size(); ++i) {
    OrderKey key;
    for (const PlannedWave& wave : plan.waves) {
      if (wave.flowers && wave.layer == static_cast<int>(i) + 1)
        key.peak = std::max(key.peak.value_or(wave.peak), wave.peak);
    }
    keys.push_back(key);
  }
  for (const std::size_t i : flowering_before_the_layer_above(keys)) {
    const auto name = [&](std::size_t layer) {
      const Taxon& taxon = *facts.layers[layer].kinds.front().taxon;
      return std::vector<KindName>{{taxon.id, taxon.name}};
    };
    say(plan, NoticeCode::flowers_before_layer_above, Severity::note, name(i),
        {{DetailName::other, name(i + 1)}});
    plan.notices.back().layer = static_cast<int>(i) + 1;
  }
}

/// Layers of one kind: the commonest pot.
void one_kind_in_depths(const PlanFacts& facts, Plan& plan) {
  std::vector<const Taxon*> said;
  for (const TimedKind& kind : facts.kinds) {
    const Taxon* taxon = kind.ask.taxon;
    if (std::find(said.begin(), said.end(), taxon) != said.end()) continue;
    said.push_back(taxon);
    std::vector<Day> firsts;
    for (const PlannedWave& wave : plan.waves) {
      if (wave.flowers && wave.taxon == taxon->id) firsts.push_back(wave.first);
    }
    if (firsts.size() < 2) continue;
    std::sort(firsts.begin(), firsts.end());
    int least = firsts[1] - firsts[0], most = least;
    for (std::size_t i = 1; i < firsts.size(); ++i) {
      least = std::min(least, firsts[i] - firsts[i - 1]);
      most = std::max(most, firsts[i] - firsts[i - 1]);
    }
    say(plan, NoticeCode::one_kind_in_depths, Severity::note, {{taxon->id, taxon->name}},
        {{DetailName::count, static_cast<int>(firsts.size())}});
    std::vector<Detail>& details = plan.notices.back().details;
    if (least < most && most > 1) {
      details.push_back({DetailName::least, least});
      details.push_back({DetailName::most, most});
    } else if (most > 1) {
      details.push_back({DetailName::days, most});
    }
  }
}

void company(const PlanFacts& facts, Plan& plan) {
  std::vector<Companion> companions;
  for (std::size_t i = 0; i < facts.kinds.size(); ++i) {
    if (plan.waves[i].flowers) companions.push_back({facts.kinds[i].ask.taxon, plan.waves[i]});
  }
  for (Notice& notice : company_notices(companions)) plan.notices.push_back(std::move(notice));
}

void used_mix(const PlanFacts& facts, Plan& plan) {
  std::vector<const Taxon*> taxa;
  for (const TimedKind& kind : facts.kinds) taxa.push_back(kind.ask.taxon);
  for (const std::string& genus :
       genera_refused(facts.request.pot.last_crop, facts.request.pot.used_mix, taxa)) {
    plan.ok = false;
    say(plan, NoticeCode::used_mix, Severity::refusal, {}, {{DetailName::genus, genus}});
  }
}

/// A pot for forcing stands in the dark and in a room: no winter reaches it.
bool stands_out(const TimedKind& kind) {
  return kind.ask.use != Use::forcing;
}

/// Refused: kinds that a usual year's hardest frost kills in this pot whatever is done with it out
/// of doors. The others are told of where the mix comes near what kills them.
void hardiness(const PlanFacts& facts, Plan& plan) {
  const Celsius low = facts.lowest_mix;
  std::vector<std::string> told;
  for (const TimedKind& kind : facts.kinds) {
    const Taxon& taxon = *kind.ask.taxon;
    if (!stands_out(kind) || std::ranges::count(told, taxon.id) > 0) continue;
    told.push_back(taxon.id);
    const FrostHarm harm = frost_harm(taxon, low);
    if (harm == FrostHarm::none) continue;
    const bool dies = harm == FrostHarm::dies;
    say(plan, NoticeCode::hardiness, dies ? Severity::refusal : Severity::warning,
        {{taxon.id, taxon.name}},
        {{DetailName::lowest, low},
         {dies ? DetailName::hurtful : DetailName::most, frost_lethal(taxon)}});
  }
  if (!std::ranges::any_of(facts.kinds, stands_out)) return;
  if (const auto freezes = frost_notice(facts.context.place_season.frost, low))
    plan.notices.push_back(*freezes);
}

void no_winter(const PlanFacts& facts, Plan& plan) {
  if (!std::ranges::any_of(facts.kinds, stands_out)) return;
  const bool none = std::all_of(plan.cold.begin(), plan.cold.end(), [](const TaxonCold& cold) {
    return std::max({cold.natural.normal, cold.natural.mild, cold.natural.cold}) < no_winter_weeks;
  });
  const bool any_need = std::any_of(plan.cold.begin(), plan.cold.end(), [](const TaxonCold& cold) {
    return cold.need.recommended > 0.0;
  });
  if (none && any_need) {
    say(plan, NoticeCode::no_natural_cold, Severity::note, {},
        {{DetailName::place, facts.context.place_season.label}});
    return;
  }
  // Bulbs that came with their cold, or fall short in some winters, owe it to something else.
  const bool by_winter = std::all_of(plan.cold.begin(), plan.cold.end(), [](const TaxonCold& cold) {
    return cold.storage_weeks <= 0.0 && cold.already_weeks <= 0.0 && cold.missing_weeks <= 1.0 &&
           cold.chance_least_met >= sure_chance;
  });
  const bool doubted = std::any_of(plan.notices.begin(), plan.notices.end(), [](const Notice& n) {
    using enum NoticeCode;
    return n.code == under_chilled || n.code == less_than_recommended || n.code == no_flower ||
           n.code == weeks_would_help || n.code == storage_shortened;
  });
  if (by_winter && !doubted && any_need && !facts.request.storage.weeks) {
    say(plan, NoticeCode::enough_winter, Severity::note, {}, {});
  }
}

/// What the winter's rain decides, unless the grower says which it is.
void winter_rain(Plan& plan) {
  const PlacePicture& place = plan.place;
  if (place.winter_given) return;
  if (!place.account.water) {
    say(plan, NoticeCode::winter_assumed, Severity::note, {}, {});
    return;
  }
  if (place.winter == WinterRain::ordinary) return;
  say(plan, place.winter == WinterRain::wet ? NoticeCode::winter_wet : NoticeCode::winter_dry,
      Severity::note, {},
      {{DetailName::rain, Millimetres{rounded(place.account.water->fallen_mm_a_month, 1.0)}}});
}

void over_chilled(Plan& plan) {
  for (const TaxonCold& cold : plan.cold) {
    const double stored = cold.storage_weeks + cold.already_weeks;
    if (stored <= cold.need.most || stored <= 0.0) continue;
    say(plan, NoticeCode::over_chilled, Severity::note, {{cold.taxon, cold.name}},
        {{DetailName::given, Weeks{stored}}, {DetailName::most, Weeks{cold.need.most}}});
  }
}

}  // namespace

void add_notices(const PlanFacts& facts, Plan& plan) {
  flowering_order(facts, plan);
  one_kind_in_depths(facts, plan);
  company(facts, plan);
  used_mix(facts, plan);
  no_winter(facts, plan);
  over_chilled(plan);
  hardiness(facts, plan);
  for (Notice& notice : place_notices(plan.place.account))
    plan.notices.push_back(std::move(notice));
  winter_rain(plan);
  for (const PotNote& note : facts.pot.notes) {
    say(plan, NoticeCode::assumed, Severity::note, {},
        {{DetailName::why, std::vector<Remark>{remark_of(note)}}});
  }
}

}  // namespace bulbwright
