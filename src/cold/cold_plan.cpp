#include "cold/cold_plan.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <limits>

#include "climate/place.hpp"

namespace bulbwright {
namespace {

constexpr Celsius freezer_below{-1.0};

double poorest(const NaturalCold& natural) {
  return std::min({natural.normal, natural.mild, natural.cold});
}

/// Share of a normal distribution, of its half above 0, at which lack <= slope x z.
double share_of_half(double lack, double slope) {
  const auto above = [](double z) { return 0.5 * std::erfc(z / std::sqrt(2.0)); };
  if (std::abs(slope) < 1e-6) return lack <= 0.0 ? 0.5 : 0.0;
  const double z = lack / slope;
  if (slope > 0.0) return z <= 0.0 ? 0.5 : above(z);
  return z <= 0.0 ? 0.0 : 0.5 - above(z);
}

/// Share of winters with at least `wanted` natural cold (see plan_cold()).
double chance_of(double wanted, const NaturalCold& natural) {
  if (wanted <= poorest(natural) && wanted <= 0.0) return 1.0;
  const double lack = wanted - natural.normal;
  return rounded(share_of_half(lack, natural.mild - natural.normal) +
                     share_of_half(lack, natural.cold - natural.normal),
                 0.01);
}

/// Share of recorded winters with at least `wanted` cold from `planted` to the day before `shoots`.
double chance_in(std::span<const PotWinter* const> recorded, double wanted, Day planted, Day shoots,
                 const ColdState& start) {
  const auto enough = std::ranges::count_if(recorded, [&](const PotWinter* winter) {
    const double weeks = winter_weeks_between(*winter, planted, shoots - 1, start).value();
    return rounded(weeks, 0.01) >= rounded(wanted, 0.01);
  });
  return rounded(static_cast<double>(enough) / static_cast<double>(recorded.size()), 0.01);
}

}  // namespace

WeekNeed need_for(const Taxon& taxon, Use use) {
  const Figure& figure = use == Use::forcing ? taxon.cold_weeks : taxon.outdoor_cold_weeks;
  return {figure.low, figure.value, figure.high};
}

Day earliest_bulbs(int season, Hemisphere hemisphere) {
  return hemisphere == Hemisphere::north ? Day{season, 9, 15} : Day{season, 3, 15};
}

std::optional<Day> late_planting_from(int season, Hemisphere hemisphere, Celsius annual_low) {
  if (annual_low < zone_bounds("8a").low) return std::nullopt;
  return hemisphere == Hemisphere::north ? Day{season, 12, 16} : Day{season, 6, 16};
}

std::optional<Day> stored_planting_from(int season, Hemisphere hemisphere, Celsius annual_low) {
  if (annual_low < zone_bounds("8a").low) return std::nullopt;
  if (hemisphere == Hemisphere::south) return Day{season, 4, 25};
  return annual_low < zone_bounds("9a").low ? Day{season, 11, 15} : Day{season, 12, 16};
}

bool is_chilled_kind(const Taxon& taxon) {
  return taxon.cold_form == ColdForm::dry_ok &&
         (taxon.plant_by == PlantBy::november_december_after_cold ||
          taxon.plant_by == PlantBy::december_january_after_cold);
}

StorageLimit storage_limit(const Taxon& taxon, Use use, double already_weeks) {
  switch (taxon.cold_form) {
    case ColdForm::none:
      return {};
    case ColdForm::moist_only:
      return {need_for(taxon, use).most, need_for(taxon, use).most};
    case ColdForm::dry_ok:
      break;
  }
  const auto left = [&](double dry, double refrigerated) {
    return std::max(0.0, std::min(dry, refrigerated) - already_weeks);
  };
  return {left(taxon.dry_cold_max_weeks.value, taxon.max_refrigerated_weeks.value),
          left(taxon.dry_cold_max_weeks.high, taxon.max_refrigerated_weeks.high)};
}

namespace {

/// Cold in each of the three winters, from the planting day to the day before `shoots` (natural
/// cold stops counting at emergence), for bulbs that come with `start`.
NaturalCold in_each(decltype(cold_weeks_between)& weeks_between,
                    std::span<const PotWinter* const> normal_mild_cold, Day planted, Day shoots,
                    const ColdState& start) {
  std::array<double, 3> weeks{};
  for (std::size_t i = 0; i < 3; ++i)
    weeks[i] = weeks_between(*normal_mild_cold[i], planted, shoots - 1, start).value();
  return {weeks[0], weeks[1], weeks[2]};
}

NaturalCold not_below_zero(const NaturalCold& natural) {
  return {std::max(0.0, natural.normal), std::max(0.0, natural.mild), std::max(0.0, natural.cold)};
}

/// In nine winters of ten; for kinds that are not chilled by custom in the normal winter.
bool reaches_least(const Taxon& taxon, Use use, const WeekNeed& need, double total, double chance) {
  if (need.least <= 0.0) return true;
  if (use == Use::forcing || is_chilled_kind(taxon)) return rounded(chance, 0.01) >= sure_chance;
  return rounded(total, 0.01) >= rounded(need.least, 0.01);
}

/// So near the recommended cold is as good.
constexpr double near_weeks = 0.5;

/// What some weeks of storage come to.
struct Storage {
  double weeks = 0.0;
  ColdState start;      ///< at planting
  double total = 0.0;   ///< cold weeks of the normal winter, stored ones included
  double poor = 0.0;    ///< of the poorest of the three winters
  double chance = 1.0;  ///< that the least is reached
  Day noses{};
};

class StorageChoice {
 public:
  StorageChoice(const ColdAsk& ask, const WeekNeed& need, Day planted, const ShootsOf& shoots,
                std::span<const PotWinter* const> winters,
                std::span<const PotWinter* const> recorded)
      : ask_{ask},
        need_{need},
        planted_{planted},
        shoots_{shoots},
        winters_{winters},
        recorded_{recorded} {}

  [[nodiscard]] Storage with(double weeks) const {
    const ColdState start = at_planting(ask_, planted_, weeks);
    const Day noses = shoots_(start);
    // What the winter spares the refrigerator: frost counts in full.
    const NaturalCold natural = in_each(winter_weeks_between, winters_, planted_, noses, start);
    const double given = start.weeks().value();
    Storage storage{weeks, start, given + natural.normal, given + poorest(natural), 1.0, noses};
    const double wanted = need_.least - given;
    storage.chance = recorded_.empty() ? chance_of(wanted, natural)
                                       : chance_in(recorded_, wanted, planted_, noses, start);
    return storage;
  }

  [[nodiscard]] NaturalCold natural(const Storage& storage) const {
    return in_each(cold_weeks_between, winters_, planted_, storage.noses, storage.start);
  }

  /// Nothing needs to be added to natural cold.
  [[nodiscard]] bool suffices(const Storage& none) const {
    return enough(none) && (!wants_recommended() || none.total >= need_.recommended - near_weeks);
  }
  [[nodiscard]] const Storage& unstored() { return at(0); }

  /// The fewest whole weeks up to `most` that do (see plan_cold()).
  [[nodiscard]] Storage fewest(double planned, double most) {
    if (suffices(at(0))) return at(0);
    double best_total = 0.0;
    for (std::size_t w = 0; w <= whole(planned); ++w)
      best_total = std::max(best_total, at(w).total);
    // A pot that has to be refrigerated whole is not worth half the cold.
    const bool full = wants_recommended() || ask_.taxon->cold_form == ColdForm::moist_only;
    const double aim = std::min(full ? need_.recommended : need_.least, best_total) - near_weeks;
    double best_chance = 0.0;
    for (std::size_t w = 0; w <= whole(most); ++w) {
      const Storage& here = at(w);
      best_chance = std::max(best_chance, here.chance);
      if (enough(here) && rounded(here.total, 0.01) >= rounded(aim, 0.01)) return here;
    }
    // The least is out of reach in some winters: as near as may be.
    for (std::size_t w = 0; w <= whole(most); ++w) {
      const Storage& here = at(w);
      if (here.chance >= best_chance - near_chance &&
          rounded(here.total, 0.01) >= rounded(aim, 0.01))
        return here;
    }
    return at(whole(planned));
  }

 private:
  static constexpr double near_chance = 0.02;

  [[nodiscard]] bool wants_recommended() const { return is_chilled_kind(*ask_.taxon); }
  [[nodiscard]] bool enough(const Storage& storage) const {
    return reaches_least(*ask_.taxon, ask_.use, need_, storage.total, storage.chance);
  }
  static std::size_t whole(double weeks) { return static_cast<std::size_t>(weeks + 1e-9); }
  const Storage& at(std::size_t weeks) {
    while (known_.size() <= weeks) known_.push_back(with(static_cast<double>(known_.size())));
    return known_[weeks];
  }

  const ColdAsk& ask_;
  const WeekNeed& need_;
  Day planted_;
  const ShootsOf& shoots_;
  std::span<const PotWinter* const> winters_;
  std::span<const PotWinter* const> recorded_;
  std::deque<Storage> known_;
};

/// Bulbs that wait for a planting about New Year wait in the refrigerator.
double late_planting_weeks(const ColdAsk& ask, const WeekNeed& need, Day planted) {
  if (!ask.late_from || planted < *ask.late_from) return 0.0;
  if (ask.taxon->plant_by != PlantBy::december_january_after_cold) return 0.0;
  return std::max(0.0, need.least - ask.already_weeks);
}

/// Whole weeks between delivery and planting.
double weeks_by_days(const ColdAsk& ask, Day planted) {
  return std::max(0.0, std::floor((planted - ask.available) / 7.0));
}

/// What the refrigerator can give a kind, in whole weeks.
struct StorageRange {
  double planned = 0.0;
  double most = 0.0;
};

StorageRange storage_range(const ColdAsk& ask) {
  if (!std::isfinite(storage_weeks_per_cold_week(ask.storage_temperature))) return {};
  const StorageLimit by_kind = storage_limit(*ask.taxon, ask.use, ask.already_weeks);
  const double planned = std::floor(by_kind.planned);
  return {planned, std::max(planned, std::floor(by_kind.most))};
}

/// Bulbs that came refrigerated stay so to the hour of planting.
bool stays_cold(const ColdAsk& ask) {
  return ask.received && ask.already_weeks > 0.0 && ask.taxon->cold_form == ColdForm::dry_ok;
}

/// The weeks of one planting day, of which no other is known.
StorageOfWeek weeks_of_day(const ColdAsk& ask, Day planted, StorageChoice& choice) {
  const StorageRange range = storage_range(ask);
  const double by_days = weeks_by_days(ask, planted);
  const double wanted = choice.fewest(range.planned, range.most).weeks;
  if (wanted <= by_days) return {wanted, wanted};
  return {choice.fewest(std::min(range.planned, by_days), std::min(range.most, by_days)).weeks,
          wanted};
}

StorageOfWeek weeks_to_give(const ColdAsk& ask, Day planted, StorageChoice& choice) {
  if (stays_cold(ask)) return {weeks_by_days(ask, planted), weeks_by_days(ask, planted)};
  if (ask.by_week.empty()) return weeks_of_day(ask, planted, choice);
  if (choice.suffices(choice.unstored())) return {};
  const int week = std::max(0, (planted - ask.available + 6) / 7);
  const StorageOfWeek& known =
      ask.by_week[std::min(static_cast<std::size_t>(week), ask.by_week.size() - 1)];
  return {std::min(known.given, weeks_by_days(ask, planted)), known.wanted};
}

}  // namespace

ColdState at_planting(const ColdAsk& ask, Day planted, double storage_weeks) {
  ColdState came = cold_already(Weeks{ask.already_weeks});
  if (ask.received) {
    const double days = planted - ask.available - 7.0 * storage_weeks;
    came.add(0.0, std::pow(cold_kept_per_hour(waiting_room.value()), 24.0 * std::max(0.0, days)));
  }
  return after_storage(came, Weeks{storage_weeks}, ask.storage_temperature);
}

std::vector<StorageOfWeek> storage_by_week(const ColdAsk& ask, Day last,
                                           const std::function<ShootsOf(Day)>& shoots,
                                           std::span<const PotWinter* const> normal_mild_cold,
                                           std::span<const PotWinter* const> recorded) {
  const WeekNeed need = need_for(*ask.taxon, ask.use);
  std::vector<StorageOfWeek> weeks;
  double given = 0.0;
  std::size_t early = 0;
  for (Day day = ask.available; day <= last + 7; day = day + 7) {
    if (ask.stored_from && day < *ask.stored_from) {
      ++early;
      continue;
    }
    const ShootsOf of_day = shoots(day);
    StorageChoice choice{ask, need, day, of_day, normal_mild_cold, recorded};
    if (choice.suffices(choice.unstored())) {
      // So it does for a planting a little sooner, whatever an early shoot takes from its cold.
      weeks.assign(weeks.size() + 1, {});
      given = 0.0;
      continue;
    }
    StorageOfWeek week = weeks_of_day(ask, day, choice);
    week.given = given = std::max(given, week.given);
    week.wanted = std::max(week.wanted, week.given);
    weeks.push_back(week);
  }
  if (early == 0) return weeks;
  // Sooner than growers plant such bulbs: what the first of their weeks wants, as days allow.
  const StorageOfWeek first = weeks.empty() ? StorageOfWeek{} : weeks.front();
  std::vector<StorageOfWeek> all;
  for (std::size_t i = 0; i < early; ++i)
    all.push_back({std::min(static_cast<double>(i), first.given), first.given});
  all.insert(all.end(), weeks.begin(), weeks.end());
  return all;
}

namespace {

TaxonCold asked_of(const ColdAsk& ask) {
  TaxonCold cold;
  cold.taxon = ask.taxon->id;
  cold.name = ask.taxon->name;
  cold.use = ask.use;
  cold.need = need_for(*ask.taxon, ask.use);
  cold.already_weeks = ask.already_weeks;
  cold.storage_temperature = ask.storage_temperature;
  return cold;
}

/// Weeks that a forced pot stands in the cold.
double forcing_weeks(const ColdAsk& ask, const WeekNeed& need) {
  if (ask.fixed_weeks) return *ask.fixed_weeks;
  const double a_week = storage_weeks_per_cold_week(ask.storage_temperature);
  if (need.recommended <= 0.0 || !std::isfinite(a_week)) return 0.0;
  const double wanted = std::max(0.0, need.recommended - ask.already_weeks) * a_week;
  return std::ceil(std::max(wanted, forcing_rooting_days / 7.0) - 1e-9);
}

ColdPlan forced(const ColdAsk& ask, Day planted) {
  ColdPlan plan;
  TaxonCold& cold = plan.cold = asked_of(ask);
  cold.storage_weeks = plan.wanted_weeks = forcing_weeks(ask, cold.need);
  const double total = at_planting(ask, planted, cold.storage_weeks).weeks().value();
  cold.missing_weeks = cold.lacking_weeks = std::max(0.0, cold.need.recommended - total);
  cold.chance_least_met = rounded(total, 0.01) >= rounded(cold.need.least, 0.01) ? 1.0 : 0.0;
  cold.natural_until = planted;
  if (cold.storage_weeks > 0.0) {
    cold.chilled_in_pot = true;
    cold.storage_start = planted;
    cold.storage_end = planted + static_cast<int>(std::lround(cold.storage_weeks * 7.0));
  }
  return plan;
}

}  // namespace

ColdPlan plan_cold(const ColdAsk& ask, Day planted, const ShootsOf& shoots,
                   std::span<const PotWinter* const> normal_mild_cold,
                   std::span<const PotWinter* const> recorded) {
  if (ask.use == Use::forcing) return forced(ask, planted);
  const Taxon& taxon = *ask.taxon;
  ColdPlan plan;
  TaxonCold& cold = plan.cold = asked_of(ask);

  StorageChoice choice{ask, cold.need, planted, shoots, normal_mild_cold, recorded};
  Storage chosen;
  if (ask.fixed_weeks) {
    chosen = choice.with(*ask.fixed_weeks);
  } else {
    const StorageRange range = storage_range(ask);
    const double by_days = weeks_by_days(ask, planted);
    StorageOfWeek weeks = weeks_to_give(ask, planted, choice);
    if (weeks.wanted > 0.0) {
      const double late = std::min(range.planned, late_planting_weeks(ask, cold.need, planted));
      weeks = {std::max(weeks.given, std::min(late, by_days)), std::max(weeks.wanted, late)};
    }
    chosen = choice.with(weeks.given);
    plan.wanted_weeks = weeks.wanted;
    if (weeks.wanted > by_days) {
      plan.limit = ColdPlan::Limit::days;
    } else if (weeks.given >= range.planned && chosen.total < cold.need.recommended - near_weeks) {
      plan.limit = ColdPlan::Limit::kind;
    }
  }
  cold.natural = not_below_zero(choice.natural(chosen));
  cold.natural_until = chosen.noses - 1;
  cold.missing_weeks = std::max(0.0, cold.need.recommended - chosen.poor);
  cold.lacking_weeks = std::max(0.0, cold.need.recommended - chosen.total);
  cold.chance_least_met = chosen.chance;
  cold.storage_weeks = chosen.weeks;
  cold.chilled_in_pot = taxon.cold_form == ColdForm::moist_only && chosen.weeks > 0.0;
  if (chosen.weeks > 0.0) {
    cold.storage_end = planted;
    cold.storage_start = planted - static_cast<int>(std::lround(chosen.weeks * 7.0));
  }
  return plan;
}

bool is_under_chilled(const ColdAsk& ask, const ColdPlan& plan) {
  const TaxonCold& cold = plan.cold;
  return !reaches_least(*ask.taxon, ask.use, cold.need, cold.need.recommended - cold.lacking_weeks,
                        cold.chance_least_met);
}

bool is_hopeless(const ColdPlan& plan) {
  const TaxonCold& cold = plan.cold;
  return cold.need.recommended - cold.lacking_weeks < 0.5 * cold.need.least &&
         rounded(cold.chance_least_met, 0.01) < 0.05;
}

double helpful_weeks(const ColdAsk& ask, const ColdPlan& plan) {
  const Taxon& taxon = *ask.taxon;
  const TaxonCold& cold = plan.cold;
  if (ask.use == Use::forcing || taxon.cold_form != ColdForm::dry_ok || is_chilled_kind(taxon) ||
      ask.fixed_weeks || cold.already_weeks > 0.0 || cold.storage_weeks > 0.0 ||
      cold.need.least <= 0.0) {
    return 0.0;
  }
  if (cold.lacking_weeks <= 1.0 && rounded(cold.chance_least_met, 0.01) >= sure_chance) return 0.0;
  const double most = std::floor(storage_limit(taxon, ask.use, 0.0).planned);
  return std::max(0.0, std::min(most, std::ceil(std::max(2.0, cold.lacking_weeks))));
}

Notice precooled_notice(const Taxon& taxon, std::optional<Day> planted) {
  Notice notice{NoticeCode::precooled_offered, Severity::note, {{taxon.id, taxon.name}}};
  if (planted) notice.details = {{DetailName::planted, *planted}};
  return notice;
}

std::vector<Notice> cold_notices(const ColdAsk& ask, const ColdPlan& plan, Day planted) {
  using enum NoticeCode;
  std::vector<Notice> notices;
  const Taxon& taxon = *ask.taxon;
  const TaxonCold& cold = plan.cold;
  const auto say = [&](NoticeCode code, Severity severity, std::vector<Detail> details = {}) {
    notices.push_back({code, severity, {{taxon.id, taxon.name}}, std::move(details)});
  };
  const double total = cold.storage_weeks + cold.already_weeks;
  const Weeks dry_most{taxon.dry_cold_max_weeks.value};
  if (ask.fixed_weeks && *ask.fixed_weeks > 0.0 && ask.use == Use::outdoors) {
    if (taxon.cold_form == ColdForm::none) {
      say(never_refrigerate, Severity::refusal);
    } else if (taxon.cold_form == ColdForm::dry_ok && total > taxon.dry_cold_max_weeks.high) {
      say(storage_too_long, Severity::refusal,
          {{DetailName::given, Weeks{total}},
           {DetailName::most, Weeks{taxon.dry_cold_max_weeks.high}}});
    } else if (taxon.cold_form == ColdForm::dry_ok && total > taxon.dry_cold_max_weeks.value) {
      say(storage_long, Severity::warning, {{DetailName::most, dry_most}});
    }
    const int stored_days = static_cast<int>(std::lround(*ask.fixed_weeks * 7.0));
    if (planted - stored_days < ask.available) {
      const double possible = std::max(0.0, std::floor((planted - ask.available) / 7.0));
      say(storage_before_bulbs, Severity::refusal,
          {{DetailName::given, Weeks{*ask.fixed_weeks}},
           {DetailName::planted, planted},
           {DetailName::start, planted - stored_days},
           {DetailName::available, ask.available},
           {DetailName::nearest, ask.available + stored_days},
           {DetailName::possible, Weeks{possible}}});
    }
  }
  if (!ask.fixed_weeks && cold.storage_weeks > 0.0 && ask.use == Use::outdoors &&
      taxon.cold_form == ColdForm::dry_ok && total > taxon.dry_cold_max_weeks.value) {
    say(storage_long, Severity::warning,
        {{stays_cold(ask) ? DetailName::wanted : DetailName::given, Weeks{total}},
         {DetailName::most, dry_most}});
  }
  if (plan.limit == ColdPlan::Limit::days) {
    say(storage_shortened, Severity::warning,
        {{DetailName::wanted, Weeks{plan.wanted_weeks}},
         {DetailName::available, ask.available},
         {DetailName::given, Weeks{cold.storage_weeks}},
         {DetailName::planted, planted},
         {DetailName::nearest, ask.available + static_cast<int>(plan.wanted_weeks * 7.0)}});
    if (is_chilled_kind(taxon) && cold.already_weeks <= 0.0)
      notices.push_back(precooled_notice(taxon, planted));
  }
  const double helpful = helpful_weeks(ask, plan);
  if (is_under_chilled(ask, plan)) {
    const double have = std::max(0.0, cold.need.recommended - cold.missing_weeks);
    const bool mild = cold.natural.mild <= cold.natural.cold;
    // Moe and Wickstrom, Physiologia Plantarum 28, 1973 (abstract): after 2 to 6 weeks of
    // the 12 to 14 that do best many tulips had no flower.
    const bool few = have < 0.5 * cold.need.least;
    const auto chance = static_cast<int>(rounded(cold.chance_least_met * 100.0, 1.0));
    say(under_chilled, Severity::warning,
        {{DetailName::given, Weeks{have}},
         {DetailName::winter,
          std::vector<Remark>{{mild ? RemarkCode::mild_winter : RemarkCode::hard_winter}}},
         {DetailName::least, Weeks{cold.need.least}},
         {DetailName::expect,
          std::vector<Remark>{{few ? RemarkCode::few_flowers : RemarkCode::late_flowers}}},
         {DetailName::chance, chance}});
  } else if (helpful > 0.0) {
    say(weeks_would_help, Severity::note, {{DetailName::given, Weeks{helpful}}});
  } else if (cold.lacking_weeks > 1.0) {
    say(less_than_recommended, Severity::note, {{DetailName::lacking, Weeks{cold.lacking_weeks}}});
  }
  if (cold.chilled_in_pot && ask.use == Use::outdoors) {
    say(chill_in_pot, Severity::warning, {{DetailName::given, Weeks{cold.storage_weeks}}});
  }
  // A freezer is no refrigerator: dry bulbs in it die (Ask Extension, Minnesota, 2017).
  const bool freezer = ask.storage_temperature < freezer_below;
  if (freezer && taxon.refrigerator_temp_c) {
    say(storage_temperature, Severity::refusal,
        {{DetailName::asked, ask.storage_temperature},
         {DetailName::lowest, Celsius{taxon.refrigerator_temp_c->low}},
         {DetailName::highest, Celsius{taxon.refrigerator_temp_c->high}},
         {DetailName::hurtful, freezer_below}});
  } else if (taxon.refrigerator_temp_c && cold.storage_weeks > 0.0 &&
             (ask.storage_temperature.value() < taxon.refrigerator_temp_c->low ||
              ask.storage_temperature.value() > taxon.refrigerator_temp_c->high)) {
    say(storage_temperature, Severity::warning,
        {{DetailName::lowest, Celsius{taxon.refrigerator_temp_c->low}},
         {DetailName::highest, Celsius{taxon.refrigerator_temp_c->high}},
         {DetailName::asked, ask.storage_temperature}});
  }
  return notices;
}

}  // namespace bulbwright
