// bulbs_list_text() and taxon_text(): the catalogue for people.
#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include <fmt/core.h>

#include "base/text.hpp"
#include "report/bulbs_report.hpp"
#include "report/text_layout.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

struct Heading {
  std::string_view quantity;  ///< empty: `words` heads a group
  std::string_view words;
};

/// Quantities by subject, with words for people.
constexpr std::array headings{
    Heading{"", "Names"},
    Heading{"other_names", "also called"},
    Heading{"", "Bulb and pot"},
    Heading{"bulb_circumference", "bulb circumference"},
    Heading{"bulb_height_to_diameter", "height to diameter"},
    Heading{"depth_to_base", "planting depth in a pot"},
    Heading{"depth_ground", "planting depth in a bed"},
    Heading{"container_spacing", "spacing in a pot"},
    Heading{"spacing_ground", "spacing in a bed"},
    Heading{"bulbs_per_15cm_pot", "in a 15 cm forcing pot"},
    Heading{"", "Cold"},
    Heading{"outdoor_cold_weeks", "cold, pot outdoors"},
    Heading{"cold_weeks", "cold, forced indoors"},
    Heading{"cold_form", "how it takes cold"},
    Heading{"dry_cold_max_weeks", "dry cold at most"},
    Heading{"max_refrigerated_weeks", "in the refrigerator at most"},
    Heading{"refrigerator_temp", "refrigerator"},
    Heading{"prechill_dry_weeks", "pre-chilling as printed"},
    Heading{"prechill_temp", "pre-chilling at"},
    Heading{"weeks_to_flower_forcing", "forcing, cold to flower"},
    Heading{"", "Storing and planting"},
    Heading{"storage_temp", "dry storage at"},
    Heading{"max_dry_storage_weeks", "dry storage at most"},
    Heading{"storage_medium", "kept in"},
    Heading{"soak_hours", "soak"},
    Heading{"plant_by", "plant"},
    Heading{"plant_soil_max", "mix at planting at most"},
    Heading{"rooting_start", "rooting starts"},
    Heading{"hardiness_min_zone", "hardy from zone"},
    Heading{"frost_lethal_temp", "rooted bulbs die below"},
    Heading{"hardiness_max_zone_without_prechill", "unchilled to zone"},
    Heading{"", "Leaf and flower"},
    Heading{"bloom_month_mid_temperate", "flowers, zones 6 and 7"},
    Heading{"bloom_season_order", "season class, 1 to 8"},
    Heading{"flower_length", "in flower for"},
    Heading{"height", "height in flower"},
    Heading{"foliage_height", "leaves"},
    Heading{"foliage_density", "leaf cover"},
    Heading{"light", "light"},
    Heading{"moisture_growth", "moisture in growth"},
    Heading{"moisture_rest", "moisture at rest"},
    Heading{"after", "afterwards"},
    Heading{"after_cold_winter", "after a cold winter"},
    Heading{"", "Animals and poison"},
    Heading{"deer", "deer"},
    Heading{"gopher", "gophers"},
    Heading{"squirrel", "squirrels"},
    Heading{"vole", "voles"},
    Heading{"toxicity_people", "poison, people"},
    Heading{"toxicity_cat", "poison, cats"},
    Heading{"toxicity_dog", "poison, dogs"},
    Heading{"toxicity_horse", "poison, horses"},
    Heading{"toxicity", "poison"},
    Heading{"skin", "skin"},
};

constexpr int fact_width = 30;
constexpr int origin_width = 21;  ///< "common practice [12]" and a space

/// The catalogue has checked that it is one.
double figure(const std::string& text) {
  return plain_number(text).value_or(0.0);
}

/// "180", or "7 1/8" in inches; degrees Fahrenheit with inches.
std::string number_in_units(const std::string& value, const std::string& unit,
                            const TextStyle& style) {
  const bool inches = style.units == Units::inches;
  if (unit == "mm") return length_number(Millimetres{figure(value)}, style);
  if (unit == "cm" && inches) return length_number(Millimetres{10.0 * figure(value)}, style);
  if (unit == "degC" && inches) {
    return fmt::format("{:.0f}", rounded(figure(value) * 1.8 + 32.0, 1.0));
  }
  return value;
}

std::string unit_in_units(const std::string& unit, const TextStyle& style) {
  const bool inches = style.units == Units::inches;
  if (unit == "ratio" || unit == "class" || unit == "USDA zone") return "";
  if ((unit == "mm" || unit == "cm") && inches) return " in";
  if (unit == "degC") return inches ? " °F" : " °C";
  return " " + unit;
}

/// "180 mm (100 to 250)", "7 1/8 in (4 to 9 7/8)".
std::string value_text(const TaxonFact& fact, const TextStyle& style) {
  if (fact.unit.empty()) return fact.value;
  std::string text =
      number_in_units(fact.value, fact.unit, style) + unit_in_units(fact.unit, style);
  if (!fact.low.empty() && (fact.low != fact.value || fact.high != fact.value)) {
    text += fmt::format(" ({} to {})", number_in_units(fact.low, fact.unit, style),
                        number_in_units(fact.high, fact.unit, style));
  }
  return text;
}

/// Numbers the sources in the order in which they are first named.
class Sources {
 public:
  int number_of(const std::string& source) {
    const auto found = std::find(sources_.begin(), sources_.end(), source);
    if (found != sources_.end()) return static_cast<int>(found - sources_.begin()) + 1;
    sources_.push_back(source);
    return static_cast<int>(sources_.size());
  }
  [[nodiscard]] Lines lines(int width) const {
    Lines result;
    for (std::size_t i = 0; i < sources_.size(); ++i) {
      append(result, hanging(fmt::format("[{}]", i + 1), sources_[i], 5, width));
    }
    return result;
  }

 private:
  std::vector<std::string> sources_;
};

void add_fact(Lines& lines, std::string_view words, const TaxonFact& fact, Sources& sources,
              const TextStyle& style, int width) {
  std::string origin{word_of(fact.origin)};
  if (!fact.source.empty()) origin += fmt::format(" [{}]", sources.number_of(fact.source));
  const int value_width = std::max(20, width - fact_width - origin_width);
  Lines values = wrap(value_text(fact, style), value_width);
  for (std::size_t i = 0; i < values.size(); ++i) {
    std::string line = pad_right(i == 0 ? fmt::format("  {}", words) : "", fact_width);
    line += i == 0 ? pad_right(values[i], value_width) + " " + origin : values[i];
    lines.push_back(std::move(line));
  }
}

std::string finished(Lines lines, const TextStyle& style) {
  for (std::string& line : lines) line = in_style(line, style);
  if (!lines.empty()) lines.front() = bold(lines.front(), style);
  return joined(lines);
}

}  // namespace

std::string bulbs_list_text(std::span<const Taxon* const> taxa, const TextStyle& style) {
  const int width = text_width(style);
  constexpr int id_width = 26, depth_width = 10, cold_width = 7;
  const int name_width = std::max(10, width - id_width - depth_width - cold_width - 1);
  Lines lines{pad_right("id", id_width) + pad_right("name", name_width) +
              pad_left("depth", depth_width) + pad_left("cold", cold_width)};
  for (const Taxon* taxon : taxa) {
    lines.push_back(pad_right(taxon->id, id_width) +
                    pad_right(cut_to(printable(taxon->name), name_width - 1, style), name_width) +
                    pad_left(length_text(Millimetres{taxon->depth_mm.value}, style), depth_width) +
                    pad_left(short_number(taxon->outdoor_cold_weeks.value) + " wk", cold_width));
  }
  lines.emplace_back();
  append(lines, wrap("Depth: top of the mix to the base of the bulb, in a pot. Cold: weeks of full "
                     "cold for a pot that stands outdoors. One kind with every figure and its "
                     "source: bulbwright bulbs ID",
                     width));
  return finished(std::move(lines), style);
}

std::string taxon_text(const Taxon& taxon, const TextStyle& style) {
  const int width = text_width(style);
  Sources sources;
  Lines lines = wrap(fmt::format("{} ({}), genus {}", taxon.name, taxon.id, taxon.genus), width);
  Lines group;
  std::string_view title;
  const auto end_group = [&] {
    if (!group.empty()) {
      lines.emplace_back();
      lines.emplace_back(title);
      append(lines, group);
    }
    group.clear();
  };
  for (const Heading& heading : headings) {
    if (heading.quantity.empty()) {
      end_group();
      title = heading.words;
      continue;
    }
    for (const TaxonFact& fact : taxon.facts) {
      if (fact.quantity == heading.quantity) {
        add_fact(group, heading.words, fact, sources, style, width);
      }
    }
  }
  end_group();
  lines.emplace_back();
  lines.emplace_back("Sources");
  append(lines, sources.lines(width));
  return finished(std::move(lines), style);
}

}  // namespace bulbwright::report
