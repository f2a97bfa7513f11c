#include "report/sheet/sheet.hpp"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include "report/plan_fixture.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"
#include "source_paths.hpp"

using namespace bulbwright;
using namespace bulbwright::report;

namespace {

Lines lines_of(const std::string& text) {
  Lines lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// Where the words stand when line ends and indents count as one space.
std::string flowing(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n';
    if (!space || (!out.empty() && out.back() != ' ')) out += space ? ' ' : c;
  }
  return out;
}

Plan with_layers(int count) {
  Plan plan = fixture::terrace_plan();
  plan.pot.height = Millimetres{120.0 + 80.0 * count};
  plan.layers.clear();
  const std::vector<fixture::LayerSketch> kinds{fixture::tulip(), fixture::daffodil(),
                                                fixture::crocus()};
  for (int level = 1; level <= count; ++level) {
    fixture::LayerSketch sketch = kinds[static_cast<std::size_t>(level - 1) % 3];
    sketch.depth_mm = 90.0 + 75.0 * (count - level);
    plan.layers.push_back(fixture::round_layer(level, sketch));
  }
  return plan;
}

Plan with_mixture() {
  Plan plan = fixture::terrace_plan();
  PlannedLayer& layer = plan.layers[1];
  layer.bulbs = {{"narcissus-jonquilla", "Jonquil daffodil", "", "9", 9, Millimetres{38.0}},
                 {"muscari", "Grape hyacinth", "", "8", 4, Millimetres{25.0}}};
  for (std::size_t i = 0; i < layer.positions.size(); ++i) {
    layer.positions[i].taxon = layer.bulbs[i % 3 == 2 ? 1 : 0].taxon;
  }
  return plan;
}

Plan in_the_south() {
  Plan plan = fixture::terrace_plan();
  plan.place.hemisphere = Hemisphere::south;
  plan.season = 2027;
  const auto later = [](Day& day) { day = day + 181; };
  later(plan.plant);
  for (PlannedWave& wave : plan.waves) {
    for (Day* day : {&wave.first, &wave.peak, &wave.last, &wave.earliest_first, &wave.latest_last})
      later(*day);
  }
  for (PlannedDate& date : plan.dates) {
    later(date.date);
    if (date.until) later(*date.until);
  }
  for (TaxonCold& cold : plan.cold) {
    later(*cold.storage_start);
    later(*cold.storage_end);
  }
  plan.display = {};
  return plan;
}

Plan with_own_bulbs() {
  Plan plan = fixture::terrace_plan();
  plan.layers[0].count_given = true;
  plan.layers[0].own = true;
  plan.layers[0].bulbs[0].label = "TT26";
  plan.layers[0].gap = Millimetres{31.4};
  plan.shopping[0].own = true;
  return plan;
}

Plan with_long_names() {
  Plan plan = fixture::terrace_plan();
  plan.pot.name = std::string(130, 'n') + " caf\u00E9 \u7403\u6839 by the door";
  for (PlannedLayer& layer : plan.layers) {
    layer.bulbs[0].name = "Extraordinarily long-named hybrid daffodil with a split cup";
    layer.bulbs[0].label = "the second bag from the market, \u00E9";
  }
  for (PlannedWave& wave : plan.waves) wave.name = plan.layers[0].bulbs[0].name;
  return plan;
}

Plan refused() {
  Plan plan = fixture::terrace_plan();
  plan.ok = false;
  plan.notices.push_back(
      {NoticeCode::too_shallow,
       Severity::refusal,
       {},
       {{DetailName::height, Millimetres{399.2}},
        {DetailName::drop, std::vector<KindName>{{"tulip-triumph", "Triumph tulip"}}}}});
  return plan;
}

Plan refused_at_once() {
  Plan plan;
  plan.ok = false;
  plan.season = 2026;
  plan.pot = fixture::terrace_plan().pot;
  plan.notices = {{NoticeCode::too_shallow, Severity::refusal}};
  return plan;
}

Plan in_a_trough(Shape shape) {
  Plan plan = fixture::terrace_plan();
  plan.pot.shape = shape;
  const auto cut = [shape](double length, double width) {
    return Section{shape, Millimetres{length}, Millimetres{width}, Millimetres{0.0}};
  };
  plan.pot.rim = cut(1000.0, 200.0);
  plan.pot.base = cut(940.0, 160.0);
  plan.pot.profile.clear();
  return plan;
}

struct Case {
  std::string name;
  Plan plan;
};

std::vector<Case> many_plans() {
  std::vector<Case> cases{{"terrace", fixture::terrace_plan()},
                          {"mixture", with_mixture()},
                          {"south", in_the_south()},
                          {"own bulbs", with_own_bulbs()},
                          {"long names", with_long_names()},
                          {"refused", refused()},
                          {"refused at once", refused_at_once()},
                          {"trough", in_a_trough(Shape::rectangle)},
                          {"oval", in_a_trough(Shape::oval)},
                          {"wall pot", in_a_trough(Shape::half_round)}};
  for (int count = 1; count <= 6; ++count) {
    cases.push_back({fmt::format("{} layers", count), with_layers(count)});
  }
  return cases;
}

std::vector<TextStyle> many_styles() {
  std::vector<TextStyle> styles;
  for (const int width : {40, 60, 80, 99, 200}) {
    for (const bool utf8 : {true, false}) {
      for (const Units units : {Units::millimetres, Units::inches}) {
        styles.push_back({utf8, width, units, false});
      }
    }
  }
  return styles;
}

/// The numbers in a text: runs of digits, with a decimal part.
std::set<std::string> numbers_in(const std::string& text) {
  std::set<std::string> numbers;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i;
    const auto digit = [&](std::size_t at) {
      return at < text.size() && std::isdigit(static_cast<unsigned char>(text[at])) != 0;
    };
    while (digit(end) || (end > i && text[end] == '.' && digit(end + 1))) ++end;
    if (end > i) numbers.insert(text.substr(i, end - i));
    i = std::max(end, i + 1);
  }
  return numbers;
}

}  // namespace

TEST_CASE("no plan passes the width, and three layers stay under 70 lines", "[plan_text][law]") {
  for (const Case& one : many_plans()) {
    for (const TextStyle& style : many_styles()) {
      INFO(one.name << ", width " << style.width << ", utf8 " << style.utf8);
      const std::string text = plan_text(one.plan, style);
      const Lines lines = lines_of(text);
      int widest = 0;
      for (const std::string& line : lines) widest = std::max(widest, columns(line));
      CHECK(widest <= std::min(style.width, 99));
      if (one.plan.layers.size() <= 3 && style.width >= 80 && one.name != "long names") {
        CHECK(lines.size() < 70);
      }
      CHECK(text.ends_with('\n'));
      CHECK_FALSE(has(text, " \n"));
      CHECK_FALSE(has(text, "\n\n\n"));
    }
  }
}

TEST_CASE("ASCII mode prints no other byte, but for the grower's own names", "[plan_text][law]") {
  for (const Case& one : many_plans()) {
    const std::string text = plan_text(one.plan, {false, 80, Units::inches, false});
    INFO(one.name);
    const bool ascii = std::all_of(text.begin(), text.end(),
                                   [](char c) { return static_cast<unsigned char>(c) < 128; });
    CHECK(ascii == (one.name != "long names"));
  }
}

TEST_CASE("a reader meets no word of the engine room", "[plan_text][law]") {
  for (const Case& one : many_plans()) {
    std::string text = plan_text(one.plan, {});
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    INFO(one.name);
    for (const char* word : {"bound", "section", "certif", "taxon", "taxa", "tulip-triumph", "code",
                             "groemer", "too-shallow", "nan", "-0 "}) {
      CHECK_FALSE(has(text, word));
    }
  }
}

TEST_CASE("steps come from the bottom up with one ruler figure a level", "[plan_text]") {
  for (const int width : {80, 99}) {
    const Plan plan = fixture::terrace_plan();
    const std::string text = flowing(plan_text(plan, {true, width, Units::millimetres, false}));
    const std::size_t bottom = text.find("Bottom layer: "), middle = text.find("Middle layer: "),
                      top = text.find("Top layer: ");
    REQUIRE(top != std::string::npos);
    CHECK(bottom < middle);
    CHECK(middle < top);
    CHECK(has(text.substr(bottom, middle - bottom), "275 mm"));
    CHECK(has(text.substr(bottom, middle - bottom), "19 Triumph tulips"));
    CHECK(has(text.substr(middle, top - middle), "204 mm"));
    CHECK(has(text.substr(middle, top - middle), "13 Large-cupped daffodils"));
    CHECK(has(text.substr(top, 100), "117 mm"));
    CHECK(has(text.substr(top, 100), "31 Large Dutch crocuses"));
    CHECK(has(text, "spring 2027"));
  }
}

TEST_CASE("inches are eighths on the ruler", "[plan_text]") {
  const std::string text =
      flowing(plan_text(fixture::terrace_plan(), {true, 80, Units::inches, false}));
  CHECK(has(text, "10 7/8 in"));  // 275 mm = 10.827 in
  CHECK(has(text, "15 in across the rim"));
  CHECK_FALSE(has(text, " mm"));
}

TEST_CASE("every number printed is a number of the plan", "[plan_text][law]") {
  const Plan plan = fixture::terrace_plan();
  std::set<std::string> known;
  const auto know = [&](double value) {
    known.insert(short_number(value));
    known.insert(fmt::format("{:.0f}", rounded(value, 1.0)));
  };
  const auto know_day = [&](Day day) {
    know(day.day());
    know(day.year());
  };
  for (const Millimetres length :
       {plan.pot.height, plan.pot.headspace, plan.pot.rim.length, plan.pot.base.length,
        plan.materials.mesh_disc, plan.materials.mesh_opening}) {
    know(length.value());
  }
  int sum = 0;
  for (const PlannedLayer& layer : plan.layers) {
    know(layer.fill_below_rim.value());
    know(layer.gap.value());
    know(layer.count);
    know(layer.count_set_close);
    sum += layer.count;
  }
  know(sum);
  for (const TaxonCold& cold : plan.cold) {
    know(cold.storage_weeks);
    know(cold.storage_temperature.value());
    know(cold.storage_temperature.value() * 1.8 + 32.0);
    know_day(*cold.storage_start);
  }
  for (const PlannedDate& date : plan.dates) {
    know_day(date.date);
    if (date.until) know_day(*date.until);
  }
  for (const PlannedWave& wave : plan.waves) {
    know_day(wave.first);
    know_day(wave.last);
  }
  know(plan.display.days_in_flower);
  for (const DayGap& gap : plan.display.gaps) {
    know_day(gap.from);
    know_day(gap.to);
  }
  const PlanMaterials& m = plan.materials;
  for (const double value : {m.mix_loose.value(), m.perlite.value(), m.filled_weight.value(),
                             m.pins * 1.0, m.labels * 1.0}) {
    know(value);
  }
  know(rounded(m.filled_weight_low.value(), 1.0));
  know(rounded(m.filled_weight_high.value(), 1.0));
  for (const ShoppingNeed& need : plan.shopping) {
    know(need.buy);
    know(need.spares);
    known.insert(need.grade);
  }
  known.insert({"0.75", "13.5"});  // of the notices
  known.insert({"9", "10"});       // "zone 9b"; set close, 10 mm apart
  for (int step = 1; step <= 5; ++step) know(step);
  // Mondays from 8 February to 19 April 2027 head the chart (calendar).
  known.insert({"8", "15", "22", "1", "29", "5", "12", "19"});
  for (const std::string& number : numbers_in(plan_text(plan, {}))) {
    INFO(number);
    CHECK(known.count(number) == 1);
  }
}

TEST_CASE("a bulb's mark stands in the row of its level, to scale", "[plan_text]") {
  const Lines lines =
      lines_of(plan_text(fixture::terrace_plan(), {true, 99, Units::millimetres, false}));
  const auto row_of = [&](const std::string& words) {
    const auto at = std::find_if(lines.begin(), lines.end(),
                                 [&](const std::string& l) { return has(l, words); });
    REQUIRE(at != lines.end());
    return static_cast<double>(at - lines.begin());
  };
  const double surface = row_of("mix up to here"), floor = row_of("mm  floor") - 1.0;
  const double row_mm = (360.0 - 25.0) / (floor - surface);
  for (const PlannedLayer& layer : fixture::terrace_plan().layers) {
    const double shown =
        25.0 + row_mm * (row_of(fmt::format("{:.0f} mm  ", layer.below_rim.value())) - surface);
    CHECK(std::abs(shown - layer.below_rim.value()) <= row_mm);
  }
}

TEST_CASE("the bloom chart has a bar per wave, its peak inside, and shows the gaps",
          "[plan_text]") {
  const Lines lines =
      lines_of(plan_text(fixture::terrace_plan(), {false, 80, Units::millimetres, false}));
  const auto row = [&](const std::string& name) {
    for (const std::string& line : lines) {
      if (line.starts_with(name)) return line;
    }
    return std::string{};
  };
  const std::string crocus = row("Large Dutch crocus"), tulip = row("Triumph tulip"),
                    none = row("nothing open");
  CHECK(has(crocus, "==#==="));
  CHECK(has(crocus, "18 Feb to 3 Mar"));
  CHECK(crocus.find('=') < tulip.find('='));
  // Nothing is open between the last crocus and the first daffodil.
  CHECK(none.find('x') > crocus.find_last_of('='));
  CHECK(none.find('x') < row("Large-cupped daffodil").find('#'));
}

TEST_CASE("what is said of several kinds alike is said once", "[plan_text]") {
  Plan plan = fixture::terrace_plan();
  plan.dates.push_back({Day{2027, 3, 4},
                        Day{2027, 4, 20},
                        Task::after_flowering,
                        {{"crocus-large", "Large Dutch crocus (Crocus vernus)"}},
                        3,
                        AfterFlowering::keep});
  plan.dates.push_back({Day{2027, 3, 26},
                        Day{2027, 5, 9},
                        Task::after_flowering,
                        {{"narcissus-large-cupped", "Large-cupped daffodil"}},
                        2,
                        AfterFlowering::keep});
  const std::vector<Detail> lacking{{DetailName::lacking, Weeks{2.0}}};
  plan.notices.push_back({NoticeCode::less_than_recommended,
                          Severity::note,
                          {{"tulip-triumph", "Triumph tulip"}},
                          lacking});
  plan.notices.push_back({NoticeCode::less_than_recommended,
                          Severity::note,
                          {{"narcissus-large-cupped", "Large-cupped daffodil (Narcissus)"}},
                          lacking});
  const std::string text = flowing(plan_text(plan, {}));
  CHECK(has(text, "4 Mar to 9 May"));
  CHECK(has(text, "Large Dutch crocuses and Large-cupped daffodils: cut dead flowers, feed, and"));
  CHECK(has(text, "Triumph tulips and Large-cupped daffodils: 2 weeks less cold than"));
}

TEST_CASE("a plan with very much to say is set closer and stays a sheet", "[plan_text]") {
  Plan plan = fixture::terrace_plan();
  for (int i = 0; i < 6; ++i) {
    const std::string genus = fmt::format("note {} {}", i, std::string(20, 'n'));
    plan.notices.push_back(
        {NoticeCode::used_mix, Severity::note, {}, {{DetailName::genus, genus}}});
    Caution caution;
    caution.code = "c";
    caution.severity = CautionSeverity::low;
    caution.short_text = fmt::format("caution {} {}", i, std::string(60, 'c'));
    plan.cautions.push_back(caution);
  }
  plan.notices.push_back(
      {NoticeCode::used_mix, Severity::warning, {}, {{DetailName::genus, std::string(60, 'w')}}});
  const std::string text = plan_text(plan, {});
  CHECK(lines_of(text).size() < 70);
  CHECK(has(text, std::string(60, 'w')));  // a warning is never left out
  CHECK(has(flowing(text), "more in the full list (--format json)"));
}

// Renewed by UPDATE_GOLDEN=1 bulbwright_tests "[golden]", then read by a person.
TEST_CASE("the whole terrace plan reads as it did", "[plan_text][golden]") {
  const std::vector<std::pair<std::string, TextStyle>> documents{
      {"terrace_plan.txt", {}},
      {"terrace_plan_ascii_inches.txt", {false, 99, Units::inches, false}}};
  for (const auto& [name, style] : documents) {
    const std::string path = bulbwright::fixture::source_path("tests/golden/" + name);
    const std::string text = plan_text(fixture::terrace_plan(), style);
    if (std::getenv("UPDATE_GOLDEN") != nullptr) std::ofstream{path, std::ios::binary} << text;
    std::ifstream file{path, std::ios::binary};
    const std::string golden{std::istreambuf_iterator<char>{file}, {}};
    CHECK(text == golden);
  }
}

TEST_CASE("a refusal stands at the top in plain words", "[plan_text]") {
  const std::string text = plan_text(refused(), {});
  CHECK(has(text, "No, it cannot be done as asked:\n"));
  CHECK(text.find("an inner height of 400 mm") < text.find("275 mm"));
  CHECK(text.find("400 mm") == text.rfind("400 mm"));
  Plan plan = refused_at_once();
  plan.display = fixture::terrace_plan().display;
  CHECK(has(plan_text(plan, {}),
            "Kinds want depths that exclude one another, in a pot of any height."));
  CHECK_FALSE(has(plan_text(plan, {}), "In flower on"));
}

TEST_CASE("a place with enough winter needs no refrigerator, and an unmet need never says so",
          "[plan_text]") {
  Plan plan = fixture::terrace_plan();
  for (TaxonCold& cold : plan.cold) {
    cold.storage_weeks = 0.0;
    cold.storage_start = cold.storage_end = std::nullopt;
  }
  CHECK(has(plan_text(plan, {}), "no refrigerator needed"));
  plan.cold[0].missing_weeks = 3.0;
  CHECK_FALSE(has(plan_text(plan, {}), "no refrigerator needed"));
}

TEST_CASE("what the grower wrote cannot drive the terminal", "[plan_text][input]") {
  Plan plan = fixture::terrace_plan();
  plan.pot.name = "steps\x1b[2J";
  plan.layers[0].bulbs[0].label = "a\r\nb";
  const std::string text = plan_text(plan, {});
  CHECK_FALSE(has(text, "\x1b"));
  CHECK_FALSE(has(text, "\r"));
}

TEST_CASE("colour only adds to the same words", "[plan_text]") {
  for (const Plan& plan : {fixture::terrace_plan(), refused()}) {
    std::string coloured = plan_text(plan, {true, 80, Units::millimetres, true});
    CHECK(has(coloured, "\x1b[1m"));
    for (const char* code : {"\x1b[1m", "\x1b[31m", "\x1b[0m"}) {
      for (std::size_t at = coloured.find(code); at != std::string::npos;
           at = coloured.find(code)) {
        coloured.erase(at, std::string{code}.size());
      }
    }
    CHECK(coloured == plan_text(plan, {}));
  }
}

// Prints plans for reading: bulbwright_tests "[show]".
TEST_CASE("show constructed plans", "[.][show]") {
  for (const Case& one : many_plans()) {
    std::printf("######## %s\n%s", one.name.c_str(), plan_text(one.plan, {}).c_str());
  }
}
