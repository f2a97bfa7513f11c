// The catalogue against figures from outside it. The source stands beside each check.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "catalogue/catalogue.hpp"

using namespace bulbwright;

namespace {

const Catalogue& catalogue() {
  static const Catalogue built_in = builtin_catalogue();
  return built_in;
}

double height_mm(const Taxon& taxon) {
  return diameter_of_circumference(taxon.circumference_cm.value).value() *
         taxon.height_to_diameter.value;
}

bool overlaps(const Figure& figure, double low, double high) {
  return figure.low <= high && figure.high >= low;
}

}  // namespace

// A circle's circumference is pi times its diameter: NIST Special Publication 811 (2008) aside, any
// handbook. Trade sizes of section R of the Canadian Standards for Nursery Stock are
// circumferences.
TEST_CASE("a 12 cm bulb is 38.2 mm across", "[catalogue][published]") {
  CHECK(diameter_of_circumference(12.0).value() == Approx(38.197186342).epsilon(1e-9));
  CHECK(diameter_of_circumference(100.0).value() == Approx(318.309886184).epsilon(1e-9));
}

// Physical properties of saffron corms, university repository record 20.500.12811/2477: height 18.8
// mm, diameters 21.9 and 18.9 mm.
TEST_CASE("crocus corms have the shape measured on a near relative", "[catalogue][published]") {
  for (const char* id : {"crocus-large", "crocus-species", "crocus-tommasinianus"}) {
    CHECK(catalogue().at(id).height_to_diameter.value == Approx(18.8 / 21.9).margin(0.005));
  }
}

// common practice: plant two to three times as deep as the bulb is high, which extension services
// print of the mix over the nose (base at 3 to 4 heights) or of the hole (base at 2 to 3 heights).
// Both readings: base at 2 to 4 heights. Small corms are planted deeper in every list.
TEST_CASE("printed planting depths follow two to three bulb heights but for small bulbs",
          "[catalogue][published]") {
  int large = 0, large_fit = 0, all = 0, all_fit = 0;
  for (const Taxon& taxon : catalogue().taxa()) {
    if (!taxon.depth_ground_mm) continue;
    const double height = height_mm(taxon);
    const bool fits = overlaps(*taxon.depth_ground_mm, 2.0 * height, 4.0 * height);
    ++all;
    all_fit += fits;
    if (height >= 22.0) {
      ++large;
      large_fit += fits;
      CAPTURE(taxon.id, height, taxon.depth_ground_mm->value);
      CHECK(fits);
    } else {
      // Never shallower than the rule.
      CHECK(taxon.depth_ground_mm->high >= 2.0 * height);
    }
  }
  CAPTURE(large, large_fit, all, all_fit);
  CHECK(large_fit == large);
  CHECK(large == 31);
  CHECK(all == 40);
  CHECK(all_fit == 35);
}

// Iowa State University Extension, Horticulture and Home Pest News, 13 Sep 2002, depth list,
// inches: tulip 6-8 (2019 column), daffodil 6-8, hyacinth 6, crocus 3-4, grape hyacinth 3-4,
// snowdrop 3-4.
TEST_CASE("ground depths are the printed inches in millimetres", "[catalogue][published]") {
  struct Printed {
    const char* id;
    double low_in, high_in;
  };
  for (const Printed& p : {Printed{"tulip-triumph", 6, 8}, Printed{"narcissus-large-cupped", 6, 8},
                           Printed{"hyacinth", 6, 6}, Printed{"crocus-large", 3, 4},
                           Printed{"muscari", 3, 4}, Printed{"galanthus", 3, 4},
                           Printed{"narcissus-cyclamineus", 3, 5}, Printed{"camassia", 4, 4}}) {
    CAPTURE(p.id);
    const Figure& depth = *catalogue().at(p.id).depth_ground_mm;
    // Rounded to 5 mm in the data.
    CHECK(depth.low == Approx(p.low_in * 25.4).margin(2.6));
    CHECK(depth.high == Approx(p.high_in * 25.4).margin(2.6));
  }
}

// A pot's depth range lets in what is printed for beds.
TEST_CASE("the printed ground depth is possible in a pot", "[catalogue][law]") {
  for (const Taxon& taxon : catalogue().taxa()) {
    if (!taxon.depth_ground_mm) continue;
    CAPTURE(taxon.id);
    CHECK(overlaps(taxon.depth_mm, taxon.depth_ground_mm->low, taxon.depth_ground_mm->high));
  }
}

// Weeks of cold for forcing, as printed:
// Mississippi State University Extension P2730 and North Carolina State University (De Hertogh):
//   paperwhites need none.
// Iowa State University Extension, 14 Sep 2011, Forcing: tulip 12-16, hyacinth 12-16 at most.
// Chicago Botanic Garden, forcing FAQ: tulip 14.
// Rees and others, J. Horticultural Science 1984: narcissus 15 weeks at 9 C, 12 with short stems.
// Here in Hanover, Mar 2018: muscari 8-15, snowdrop 15, reticulate iris 13-15.
// Can. J. Plant Science 61 (1981) 647 and Ornamental Geophytes as quoted: Dutch iris 6-9.
TEST_CASE("forcing cold lies within printed tables of weeks", "[catalogue][published]") {
  struct Printed {
    const char* id;
    double low, high;
  };
  for (const Printed& p :
       {Printed{"tulip-single-early", 12, 16}, Printed{"tulip-triumph", 12, 20},
        Printed{"tulip-darwin-hybrid", 13, 20}, Printed{"narcissus-large-cupped", 12, 17},
        Printed{"narcissus-tazetta-tender", 0, 0}, Printed{"hyacinth", 12, 16},
        Printed{"hyacinth-prepared", 8, 12}, Printed{"muscari", 8, 15},
        Printed{"crocus-large", 8, 16}, Printed{"iris-reticulata", 13, 15},
        Printed{"iris-hollandica", 6, 9}, Printed{"galanthus", 12, 16}}) {
    CAPTURE(p.id);
    const Figure& weeks = catalogue().at(p.id).cold_weeks;
    CHECK(weeks.low >= p.low);
    CHECK(weeks.high <= p.high);
    CHECK(weeks.value >= p.low);
    CHECK(weeks.value <= p.high);
  }
}

// Texas A&M AgriLife (6-10), LSU AgCenter (6-8), North Carolina State Bulletin 37 (8-10): weeks of
// dry refrigeration for tulips in mild winters. common practice in zones 8 and up: 8 to 12 weeks.
TEST_CASE("refrigeration of tulips agrees with southern advice", "[catalogue][published]") {
  for (const Taxon& taxon : catalogue().taxa()) {
    if (taxon.genus != "Tulipa" || !taxon.prechill_dry_weeks) continue;
    CAPTURE(taxon.id);
    CHECK(taxon.prechill_dry_weeks->low == 6);
    CHECK(taxon.prechill_dry_weeks->high == 10);
    CHECK(taxon.outdoor_cold_weeks.low >= 8);
    CHECK(taxon.outdoor_cold_weeks.value <= 12);
    // HortScience 29(5) 1994, 487d: 10 of 15 weeks dry without loss, losses at 12.
    CHECK(taxon.dry_cold_max_weeks.value == 10);
    CHECK(taxon.dry_cold_max_weeks.high == 12);
  }
}

TEST_CASE("least, recommended and most come in that order, everywhere", "[catalogue][law]") {
  for (const Taxon& taxon : catalogue().taxa()) {
    CAPTURE(taxon.id);
    for (const Figure* f :
         {&taxon.circumference_cm, &taxon.height_to_diameter, &taxon.depth_mm, &taxon.spacing_mm,
          &taxon.cold_weeks, &taxon.outdoor_cold_weeks, &taxon.dry_cold_max_weeks,
          &taxon.max_refrigerated_weeks, &taxon.storage_temp_c, &taxon.soil_max_c,
          &taxon.flower_days, &taxon.height_cm, &taxon.foliage_height_cm}) {
      CHECK(f->low <= f->value);
      CHECK(f->value <= f->high);
    }
    // Outdoors never asks for more than forcing does.
    CHECK(taxon.outdoor_cold_weeks.value <= taxon.cold_weeks.value);
    if (taxon.prechill_dry_weeks) {
      CHECK(taxon.prechill_dry_weeks->value <= taxon.dry_cold_max_weeks.value);
      CHECK(taxon.prechill_dry_weeks->high <= taxon.dry_cold_max_weeks.high);
    }
    CHECK(taxon.dry_cold_max_weeks.value <= taxon.max_refrigerated_weeks.value);
    CHECK((taxon.cold_form == ColdForm::dry_ok) == taxon.refrigerator_temp_c.has_value());
    if (taxon.refrigerator_temp_c) CHECK(taxon.refrigerator_temp_c->low >= 2.0);
    CHECK(taxon.season_class >= 1);
    CHECK(taxon.season_class <= 8);
  }
}

// data/SOURCES.md: container spacing is the diameter and 25 mm, to 5 mm, more for large plants.
TEST_CASE("spacing in a pot leaves about an inch between bulbs", "[catalogue][law]") {
  int an_inch = 0;
  for (const Taxon& taxon : catalogue().taxa()) {
    CAPTURE(taxon.id);
    const double gap =
        taxon.spacing_mm.value - diameter_of_circumference(taxon.circumference_cm.value).value();
    CHECK(gap >= 22.4);
    an_inch += std::abs(gap - 25.0) <= 2.6;
  }
  CHECK(an_inch == 45);
}

// The rule of the list: between two classes the worse is taken, and what is disputed is unverified.
TEST_CASE("no disputed kind passes as harmless", "[catalogue][law]") {
  int none_known = 0;
  for (const Taxon& taxon : catalogue().taxa()) {
    for (const Toxicity class_ : {taxon.toxicity_cat, taxon.toxicity_dog, taxon.toxicity_horse}) {
      CAPTURE(taxon.id);
      CHECK(class_ != Toxicity::none_known);
      none_known += class_ == Toxicity::none_known;
    }
  }
  CHECK(none_known == 0);
}
