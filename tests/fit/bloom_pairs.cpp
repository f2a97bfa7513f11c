// Prints how well the doubt about the days between two kinds of one garden and year
// (flowering/doubt.hpp) holds: the share of pairs whose errors differ by no more than 1.28 of it,
// four in five if it is right. The rows are those that the table was fitted to.
//   bloom_pairs
#include <cmath>
#include <map>
#include <string>

#include <fmt/core.h>

#include "figures.hpp"
#include "flowering/doubt.hpp"

namespace {

using namespace bulbwright;

constexpr double one_side_80 = 1.2816;

/// The dated rows of one kind in one garden and year.
struct Dated {
  double errors = 0.0, half_winters = 0.0;
  int rows = 0;

  [[nodiscard]] double error() const { return errors / rows; }
};

bool usable(const fit::Observation& row) {
  return row.dated() && row.named && !row.garden.empty() && row.place != "practice" &&
         row.kept != fit::Kept::stored;
}

}  // namespace

int main() {
  const Catalogue catalogue = builtin_catalogue();
  const BloomTable table = BloomTable::builtin();
  const fit::Evidence evidence = fit::read_evidence();
  std::map<std::string, std::map<std::string, Dated>> gardens;
  for (const fit::Judged& judged :
       fit::judge(evidence, [&](const fit::Observation&, const std::string& id) {
         return table.of(catalogue.at(id));
       })) {
    if (!usable(*judged.row)) continue;
    Dated& dated = gardens[judged.row->garden][judged.row->taxon];
    dated.errors += judged.error;
    dated.half_winters += judged.half_winters;
    ++dated.rows;
  }
  const auto wave_of = [&](const std::string& id, const Dated& dated) {
    WaveForecast forecast;
    forecast.wave.confidence = BloomConfidence::ordinary;
    PlannedWave wave;
    wave.taxon = id;
    forecast.winters_days = dated.half_winters / dated.rows;
    wave.doubt = doubt_of(table.of(catalogue.at(id)), catalogue.at(id), forecast, 0.0);
    return wave;
  };
  std::map<std::string, std::pair<int, int>> held;  // of pairs, by groups
  for (const auto& [garden, kinds] : gardens) {
    for (auto a = kinds.begin(); a != kinds.end(); ++a) {
      for (auto b = std::next(a); b != kinds.end(); ++b) {
        const double doubt =
            doubt_between(wave_of(a->first, a->second), wave_of(b->first, b->second));
        const bool in = std::abs(a->second.error() - b->second.error()) <= one_side_80 * doubt;
        std::string one = fit::group_name(a->first), other = fit::group_name(b->first);
        if (one > other) std::swap(one, other);
        for (const std::string& group :
             {fmt::format("{} and {}", one, other), std::string{"all"}}) {
          held[group].first += in ? 1 : 0;
          ++held[group].second;
        }
      }
    }
  }
  for (const auto& [group, count] : held) {
    fmt::print("{:28} {:3} of {:3}: {:.0f} %\n", group, count.first, count.second,
               100.0 * count.first / count.second);
  }
}
