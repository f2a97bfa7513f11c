#include "cold/cold_plan.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bulbwright {
namespace {

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
    const double weeks = cold_weeks_between(*winter, planted, shoots - 1, start).value();
    return rounded(weeks, 0.01) >= rounded(wanted, 0.01);
  });
  return rounded(static_cast<double>(enough) / static_cast<double>(recorded.size()), 0.01);
}

/// What lies between the recommended and the least cold.
double need_to_spare(const WeekNeed& need) {
  return need.recommended - need.least;
}

double whole_weeks(double weeks) {
  return weeks < least_lack_weeks ? 0.0 : std::ceil(rounded(weeks - least_lack_weeks, 0.01));
}

}  // namespace

WeekNeed need_for(const Taxon& taxon, Use use) {
  const Figure& figure = use == Use::forcing ? taxon.cold_weeks : taxon.outdoor_cold_weeks;
  return {figure.low, figure.value, figure.high};
}

Day earliest_bulbs(int season, Hemisphere hemisphere) {
  return hemisphere == Hemisphere::north ? Day{season, 9, 15} : Day{season, 3, 15};
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

NaturalCold natural_cold(std::span<const PotWinter* const> normal_mild_cold, Day planted,
                         Day shoots, const ColdState& start) {
  std::array<double, 3> weeks{};
  for (std::size_t i = 0; i < 3; ++i) {
    weeks[i] = cold_weeks_between(*normal_mild_cold[i], planted, shoots - 1, start).value();
  }
  return {weeks[0], weeks[1], weeks[2]};
}

namespace {

/// Storage weeks that cover `lack` weeks of cold, within what the kind and the days allow.
struct StorageChoice {
  double weeks = 0.0;
  double wanted = 0.0;
  ColdPlan::Limit limit = ColdPlan::Limit::none;
};

StorageChoice choose_storage(const ColdAsk& ask, const WeekNeed& need, double lack,
                             double by_days) {
  const double effect = storage_weeks_per_cold_week(ask.storage_temperature);
  StorageChoice choice;
  if (!std::isfinite(effect)) return choice;
  choice.weeks = choice.wanted = whole_weeks(lack * effect);
  const StorageLimit by_kind = storage_limit(*ask.taxon, ask.use, ask.already_weeks);
  if (choice.weeks > by_kind.planned) {
    const double for_least = whole_weeks((lack - need_to_spare(need)) * effect);
    choice.weeks = std::clamp(for_least, std::floor(by_kind.planned), std::floor(by_kind.most));
    choice.wanted = choice.weeks;
    choice.limit = ColdPlan::Limit::kind;
  }
  if (choice.weeks > by_days) {
    choice.weeks = by_days;
    choice.limit = ColdPlan::Limit::days;
  }
  return choice;
}

NaturalCold not_below_zero(const NaturalCold& natural) {
  return {std::max(0.0, natural.normal), std::max(0.0, natural.mild), std::max(0.0, natural.cold)};
}

}  // namespace

ColdPlan plan_cold(const ColdAsk& ask, Day planted, const ShootsOf& shoots,
                   std::span<const PotWinter* const> normal_mild_cold,
                   std::span<const PotWinter* const> recorded) {
  const Taxon& taxon = *ask.taxon;
  ColdPlan plan;
  TaxonCold& cold = plan.cold;
  cold.taxon = taxon.id;
  cold.name = taxon.name;
  cold.use = ask.use;
  cold.need = need_for(taxon, ask.use);
  cold.already_weeks = ask.already_weeks;
  cold.storage_temperature = ask.storage_temperature;

  const double by_days = std::max(0.0, std::floor((planted - ask.available) / 7.0));
  double weeks = ask.fixed_weeks.value_or(0.0);
  double try_weeks = weeks;
  bool first = true;
  while (true) {
    const ColdState start = after_storage(cold_already(Weeks{ask.already_weeks}), Weeks{try_weeks},
                                          ask.storage_temperature);
    const Day noses = shoots(start);
    const NaturalCold natural = natural_cold(normal_mild_cold, planted, noses, start);
    const double given = start.weeks().value();
    // Everything so far, with what warmth after planting may undo.
    const double missing = std::max(0.0, cold.need.recommended - given - poorest(natural));
    // Storage that costs as much natural cold as it gives is no help: the bulbs only come up
    // sooner.
    if (!first && missing > cold.missing_weeks - least_lack_weeks) break;
    first = false;
    weeks = try_weeks;
    cold.natural = not_below_zero(natural);
    cold.missing_weeks = missing;
    const double wanted = cold.need.least - given;
    cold.chance_least_met = recorded.empty() ? chance_of(wanted, natural)
                                             : chance_in(recorded, wanted, planted, noses, start);
    if (ask.fixed_weeks) break;
    const double lack = cold.need.recommended - ask.already_weeks - poorest(natural);
    const StorageChoice choice = choose_storage(ask, cold.need, lack, by_days);
    plan.wanted_weeks = std::max(plan.wanted_weeks, choice.wanted);
    plan.limit = choice.limit;
    if (choice.weeks <= weeks) break;
    try_weeks = choice.weeks;
  }
  cold.storage_weeks = weeks;
  cold.chilled_in_pot = taxon.cold_form == ColdForm::moist_only && weeks > 0.0;
  if (weeks > 0.0) {
    cold.storage_end = planted;
    cold.storage_start = planted - static_cast<int>(std::lround(weeks * 7.0));
  }
  return plan;
}

bool is_under_chilled(const ColdPlan& plan) {
  const TaxonCold& cold = plan.cold;
  const double lacking = cold.need.recommended - cold.missing_weeks;
  return cold.missing_weeks > 0.0 && rounded(lacking, 0.05) < cold.need.least - least_lack_weeks;
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
  if (ask.fixed_weeks && *ask.fixed_weeks > 0.0) {
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
  if (!ask.fixed_weeks && taxon.cold_form == ColdForm::dry_ok &&
      total > taxon.dry_cold_max_weeks.value) {
    say(storage_long, Severity::warning,
        {{DetailName::given, Weeks{total}}, {DetailName::most, dry_most}});
  }
  if (plan.limit == ColdPlan::Limit::days && rounded(cold.missing_weeks, 0.1) > 1.0) {
    say(storage_shortened, Severity::warning,
        {{DetailName::wanted, Weeks{plan.wanted_weeks}},
         {DetailName::available, ask.available},
         {DetailName::given, Weeks{cold.storage_weeks}},
         {DetailName::planted, planted},
         {DetailName::nearest, ask.available + static_cast<int>(plan.wanted_weeks * 7.0)}});
  }
  if (is_under_chilled(plan)) {
    const double have = std::max(0.0, total + poorest(cold.natural));
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
  } else if (cold.missing_weeks > 1.0) {
    say(less_than_recommended, Severity::note, {{DetailName::lacking, Weeks{cold.missing_weeks}}});
  }
  if (cold.chilled_in_pot) {
    say(chill_in_pot, Severity::warning, {{DetailName::given, Weeks{cold.storage_weeks}}});
  }
  if (taxon.refrigerator_temp_c && cold.storage_weeks > 0.0 &&
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
