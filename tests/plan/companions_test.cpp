#include "plan/companions.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

Taxon kind(const char* name, double height_cm, double leaves_cm) {
  Taxon taxon;
  taxon.id = taxon.name = name;
  taxon.height_cm = {height_cm, height_cm, height_cm};
  taxon.foliage_height_cm = {leaves_cm, leaves_cm, leaves_cm};
  return taxon;
}

PlannedWave wave(int layer, Day peak) {
  PlannedWave result;
  result.layer = layer;
  result.peak = peak;
  return result;
}

bool says(const std::vector<Notice>& notices, NoticeCode code) {
  return std::any_of(notices.begin(), notices.end(),
                     [&](const Notice& n) { return n.code == code; });
}

const Day march{2027, 3, 10}, april{2027, 4, 10};

}  // namespace

TEST_CASE("a later wave shorter than standing leaves may be hidden", "[company]") {
  const Taxon early = kind("early", 40, 35), late = kind("late", 20, 15);
  CHECK(says(
      company_notices(std::vector<Companion>{{&early, wave(1, march)}, {&late, wave(2, april)}}),
      NoticeCode::hidden_by_leaves));
  // The other way round the short one flowers before the leaves of the tall one matter.
  CHECK_FALSE(says(
      company_notices(std::vector<Companion>{{&early, wave(1, april)}, {&late, wave(2, march)}}),
      NoticeCode::hidden_by_leaves));
}

TEST_CASE("a mat of leaves over later noses is told", "[company]") {
  Taxon mat = kind("mat", 15, 20);
  mat.foliage_density = FoliageDensity::mat;
  const Taxon late = kind("late", 40, 30);
  CHECK(
      says(company_notices(std::vector<Companion>{{&mat, wave(2, march)}, {&late, wave(1, april)}}),
           NoticeCode::leaf_mat));
}

TEST_CASE("opposite wishes for water or light are warned of and rule a stack out", "[company]") {
  Taxon dry = kind("dry", 30, 20), moist = kind("moist", 30, 20);
  dry.moisture_growth = Moisture::dry;
  moist.moisture_growth = Moisture::moist;
  CHECK(opposite_wishes(dry, moist));
  CHECK(says(
      company_notices(std::vector<Companion>{{&dry, wave(1, march)}, {&moist, wave(2, march)}}),
      NoticeCode::opposite_water));
  moist.moisture_growth = Moisture::normal;
  CHECK_FALSE(opposite_wishes(dry, moist));
}
