#include "catalogue/checks.hpp"

#include <fmt/core.h>

namespace bulbwright {
namespace {

/// a <= b for value, low and high.
bool within(const Figure& a, const Figure& b) {
  return a.value <= b.value && a.low <= b.low && a.high <= b.high;
}

bool is_zero(const Figure& figure) {
  return figure.low <= 0.0 && figure.high <= 0.0;
}

void check_cold(const Taxon& t, std::vector<Contradiction>& found) {
  if (t.cold_form == ColdForm::dry_ok) {
    if (!t.refrigerator_temp_c) {
      found.push_back({"refrigerator_temp", "missing, though cold_form is dry-ok"});
    }
  } else {
    const std::string_view form = word_of(t.cold_form);
    if (!is_zero(t.dry_cold_max_weeks)) {
      found.push_back({"dry_cold_max_weeks", fmt::format("must be 0 where cold_form is {}", form)});
    }
    if (!is_zero(t.max_refrigerated_weeks)) {
      found.push_back(
          {"max_refrigerated_weeks", fmt::format("must be 0 where cold_form is {}", form)});
    }
    if (t.refrigerator_temp_c) {
      found.push_back({"refrigerator_temp", fmt::format("given though cold_form is {}", form)});
    }
  }
  if (!within(t.dry_cold_max_weeks, t.max_refrigerated_weeks)) {
    found.push_back({"max_refrigerated_weeks", "below dry_cold_max_weeks"});
  }
  if (t.prechill_dry_weeks && !within(*t.prechill_dry_weeks, t.dry_cold_max_weeks)) {
    found.push_back({"prechill_dry_weeks", "above dry_cold_max_weeks"});
  }
  if (t.prechill_dry_weeks.has_value() != t.prechill_temp_c.has_value()) {
    found.push_back({t.prechill_temp_c ? "prechill_temp" : "prechill_dry_weeks",
                     "prechill_dry_weeks and prechill_temp go together"});
  }
}

void check_sizes(const Taxon& t, std::vector<Contradiction>& found) {
  const double smallest_mm = diameter_of_circumference(t.circumference_cm.low).value();
  const double height_mm = smallest_mm * t.height_to_diameter.value;
  if (t.depth_mm.low < height_mm) {
    found.push_back({"depth_to_base", fmt::format("least {:g} mm leaves the smallest bulb, {:.0f} "
                                                  "mm high, above the surface",
                                                  t.depth_mm.low, height_mm)});
  }
  const double usual_mm = diameter_of_circumference(t.circumference_cm.value).value();
  if (t.spacing_mm.low < usual_mm) {
    found.push_back({"container_spacing", fmt::format("least {:g} mm is under the bulb's diameter, "
                                                      "{:.0f} mm",
                                                      t.spacing_mm.low, usual_mm)});
  }
}

}  // namespace

std::vector<Contradiction> contradictions(const Taxon& taxon) {
  std::vector<Contradiction> found;
  check_sizes(taxon, found);
  check_cold(taxon, found);
  if (taxon.hardiness_min_zone > taxon.max_zone_without_prechill) {
    found.push_back({"hardiness_min_zone", "above hardiness_max_zone_without_prechill"});
  }
  return found;
}

}  // namespace bulbwright
