#include "scheduling/storage_weeks.hpp"

#include <array>

#include "scheduling/schedule.hpp"

namespace bulbwright {

std::vector<StorageOfWeek> season_storage(const TimedKind& kind, const PotSeason& season) {
  if (kind.ask.use == Use::forcing) return {};
  if (kind.ask.fixed_weeks || kind.ask.taxon->cold_form == ColdForm::none) return {};
  const SeasonView view = season.view();
  const std::array<const PotWinter*, 3> winters{view.normal, view.mild, view.cold};
  std::vector<const PotWinter*> recorded;
  if (season.recorded) {
    for (const PotWinter& winter : season.winters) recorded.push_back(&winter);
  }
  const auto shoots = [&](Day planted) -> ShootsOf {
    return [&kind, &season, planted](const ColdState& start) {
      return shoots_of(kind, season, planted, start);
    };
  };
  return storage_by_week(kind.ask, planting_season(season.season, season.hemisphere).last, shoots,
                         winters, recorded);
}

}  // namespace bulbwright
