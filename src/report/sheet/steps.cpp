#include <algorithm>

#include <fmt/format.h>

#include "report/notice_text.hpp"
#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

/// From this closeness on a step is one line where it can be.
constexpr int short_steps = 3;

std::string size_text(const Section& section, const TextStyle& style) {
  switch (section.shape) {
    case Shape::round:
      return length_text(section.length, style);
    case Shape::oval:
    case Shape::rectangle:
      return fmt::format("{} by {}", length_text(section.length, style),
                         length_text(section.width, style));
    case Shape::half_round:
      return fmt::format("{} along the wall by {} out", length_text(section.length, style),
                         length_text(section.width, style));
  }
  return "";
}

/// "Round terracotta pot, 380 mm across the rim, 290 mm across the base, 360 mm deep inside."
std::string pot_text(const PlannedPot& pot, const TextStyle& style) {
  const bool round = pot.shape == Shape::round;
  const std::string base =
      pot.base == pot.rim
          ? std::string{"the base alike"}
          : fmt::format("{} {} the base", size_text(pot.base, style), round ? "across" : "at");
  return fmt::format("{} {} pot, {} {} the rim, {}, {} deep inside.",
                     capitalised(shape_word(pot.shape)), in_style(pot.material, style),
                     size_text(pot.rim, style), round ? "across" : "at", base,
                     length_text(pot.height, style));
}

int bulbs_in(const Plan& plan) {
  int sum = 0;
  for (const PlannedLayer& layer : plan.layers) sum += layer.count;
  return sum;
}

/// How a gap is told by the chance that it comes: words before and after its days.
struct GapWords {
  double least_chance;
  const char* one;
  const char* several;
  const char* after;
};
constexpr GapWords gap_words[] = {{0.9, "nothing open ", "nothing open ", ""},
                                  {0.6, "probably nothing open ", "probably nothing open ", ""},
                                  {0.0, "a gap ", "gaps ", " as likely as not"}};
/// A meeting of two waves is doubtful from this chance of a gap on.
constexpr double doubtful_meeting = 0.4;

const GapWords& words_of_gap(double chance) {
  for (const GapWords& words : gap_words) {
    if (chance >= words.least_chance) return words;
  }
  return gap_words[std::size(gap_words) - 1];
}

/// "on 3 Mar", "4 to 8 Mar"; of waves that only just meet "about 3 Mar".
std::string gap_days_text(const PlannedWave& after, const WaveJoint& joint) {
  const Day to = after.first - 1;
  if (joint.gap_days <= 0) return "about " + day_text(after.first, false);
  const Day from = after.first - joint.gap_days;
  return (from == to ? "on " : "") + days_text(from, to, false);
}

/// "; nothing open 4 to 8 Mar and 26 to 27 Mar; probably nothing open ...", in the order of days.
std::string gaps_text(const Plan& plan) {
  std::vector<WaveJoint> joints;
  for (const WaveJoint& joint : plan.display.joints) {
    if (joint.gap_days > 0 || joint.gap_chance >= doubtful_meeting) joints.push_back(joint);
  }
  std::string text;
  for (auto joint = joints.begin(); joint != joints.end();) {
    const GapWords& words = words_of_gap(joint->gap_chance);
    std::vector<std::string> days;
    for (; joint != joints.end() && &words_of_gap(joint->gap_chance) == &words; ++joint)
      days.push_back(gap_days_text(plan.waves[joint->after], *joint));
    text += fmt::format("; {}{}{}", days.size() > 1 ? words.several : words.one, listed(days),
                        words.after);
  }
  return text;
}

std::string flowering_text(const Plan& plan) {
  const Display& display = plan.display;
  if (!display.first || !display.last || display.days_in_flower <= 0) return "";
  return fmt::format("In flower on {}, {}{}.", counted(display.days_in_flower, "day", "days"),
                     days_text(*display.first, *display.last, true), gaps_text(plan));
}

/// "14 Triumph tulips and 5 Jonquil daffodils".
std::string layer_bulbs(const PlannedLayer& layer, const TextStyle& style) {
  std::vector<std::string> kinds;
  for (const LayerBulbs& bulbs : layer.bulbs) kinds.push_back(bulbs_text(bulbs, style));
  return listed(kinds);
}

/// How the bulbs of a layer stand: ", mixed evenly", or ", in rings of 15, 9 and 1 from the rim
/// inwards (2 fewer than fit)".
std::string arrangement_text(const PlannedLayer& layer) {
  if (layer.bulbs.size() > 1) {
    return layer.arrange == Arrange::drift ? ", each kind together, from left to right"
                                           : ", mixed evenly";
  }
  if (layer.pattern == Pattern::dense || layer.sets.empty()) return "";
  std::vector<std::string> sets;
  for (const int count : layer.sets) sets.push_back(fmt::format("{}", count));
  std::string text = layer.pattern == Pattern::rings
                         ? fmt::format(", in rings of {} from the rim inwards", listed(sets))
                         : fmt::format(", in rows of {}", listed(sets));
  const int fewer = layer.dense_count - layer.count;
  if (fewer > 0) text += fmt::format(" ({} fewer than fit)", fewer);
  return text;
}

/// "Fill to 275 mm below the rim, firmed. Bottom layer: set 19 Triumph tulips on this, 25 mm apart,
/// none touching."; set close without what the heading says for all steps.
std::string layer_step(const Plan& plan, const PlannedLayer& layer, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  const std::size_t layers = plan.layers.size();
  const std::string which =
      layers <= 1 ? "" : capitalised(layer_word(layer.level, layers)) + " layer: ";
  const std::string level = length_text(layer.fill_below_rim, style);
  const std::string bulbs = (layer.own ? "your " : "") + layer_bulbs(layer, style);
  const std::string mixed = arrangement_text(layer);
  const std::string apart =
      layer.count > 1 ? fmt::format(", {} apart", length_text(layer.gap, style)) : "";
  if (layout.closeness >= short_steps) {
    return capitalised(fmt::format("{}fill to {}, set {}{}{}.", which, level, bulbs, mixed, apart));
  }
  return fmt::format("Fill to {} below the rim, firmed. {}{} on this{}{}{}.", level, which,
                     which.empty() ? "Set " + bulbs : "set " + bulbs, mixed, apart,
                     layer.count > 1 ? ", none touching" : "");
}

std::string last_step(const Plan& plan, const SheetLayout& layout) {
  const std::string level = length_text(plan.pot.headspace, layout.style);
  const int pins = plan.materials.pins;
  const std::string pinned =
      pins > 0 ? fmt::format(" and pin it down ({})", counted(pins, "pin", "pins")) : "";
  const std::string mesh = plan.materials.mesh_disc > Millimetres{0.0} ? "the mesh" + pinned : "";
  if (layout.closeness >= short_steps) {
    return fmt::format("Fill to {}{}, water well, label.", level,
                       mesh.empty() ? "" : ", lay on " + mesh);
  }
  return fmt::format("Fill to {} below the rim, firmed.{} Water until it runs out below. Label it.",
                     level, mesh.empty() ? "" : " Lay on " + mesh + ".");
}

}  // namespace

Lines heading_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  const std::string season = season_text(plan.season, plan.place.hemisphere);
  const std::string name = plan.pot.name.empty() ? "Your pot" : printable(plan.pot.name);
  Lines lines;
  for (const std::string& line : wrap(fmt::format("{}, {}", name, season), layout.width)) {
    lines.push_back(bold(line, style));
  }
  const std::string pot = pot_text(plan.pot, style);
  std::string place = fmt::format("Place: {}.", printable(plan.place.label));
  if (plan.place.basis && layout.closeness < 2)
    place += " " + sentence(in_style(remark_text(*plan.place.basis, style), style));
  if (plan.place.measured_until) {
    place += fmt::format(" Measured until {}, expected from then on.",
                         day_text(*plan.place.measured_until, true));
  }
  if (plan.place.label.empty()) place.clear();
  if (layout.closeness >= 1) {
    append(lines, wrap(pot + " " + place, layout.width));
  } else {
    append(lines, wrap(pot, layout.width));
    append(lines, wrap(place, layout.width));
  }
  return lines;
}

Lines verdict_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  Lines lines;
  if (plan.ok) {
    const bool warned =
        std::any_of(plan.notices.begin(), plan.notices.end(),
                    [](const Notice& notice) { return notice.severity != Severity::note; });
    const bool barren =
        !plan.waves.empty() && std::none_of(plan.waves.begin(), plan.waves.end(),
                                            [](const PlannedWave& wave) { return wave.flowers; });
    const char* head = barren   ? "No flowers are to be expected"
                       : warned ? "Yes, it can be done, but mind what is said below"
                                : "Yes, it can be done";
    std::string text =
        fmt::format("{}: {} in {}.", head, counted(bulbs_in(plan), "bulb", "bulbs"),
                    counted(static_cast<int>(plan.layers.size()), "layer", "layers"));
    text += " " + flowering_text(plan);
    for (const std::string& line : wrap(text, layout.width)) lines.push_back(bold(line, style));
    return lines;
  }
  for (const Notice& notice : plan.notices) {
    if (notice.severity != Severity::refusal) continue;
    const std::string text = sentence(in_style(notice_text(notice, style), style));
    append(lines, hanging("  -", text, 4, layout.width));
  }
  const char* head =
      lines.empty() ? "No, it cannot be done as asked." : "No, it cannot be done as asked:";
  lines.insert(lines.begin(), red(bold(head, style), style));
  return lines;
}

Lines step_lines(const Plan& plan, const SheetLayout& layout) {
  if (plan.layers.empty()) return {};
  const TextStyle& style = layout.style;
  const std::string how = layout.closeness >= short_steps
                              ? " (below the rim, firmed; no bulbs touching):"
                              : ", measuring down from the rim:";
  const std::string heading = "Fill and plant on " + to_words(plan.plant, true) + how;
  Lines lines;
  for (const std::string& line : wrap(heading, layout.width)) lines.push_back(bold(line, style));
  int number = 0;
  const auto step = [&](const std::string& text) {
    append(lines, hanging(fmt::format("{:2}.", ++number), text, 4, layout.width));
  };
  step(plan.materials.mesh_beneath > Millimetres{0.0}
           ? "Lay the floor's mesh over the hole, close to the wall; water must run out."
           : "Cover the hole with a curved shard or mesh; water must run out.");
  for (const PlannedLayer& layer : plan.layers) step(layer_step(plan, layer, layout));
  step(last_step(plan, layout));
  return lines;
}

Lines buy_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  std::vector<std::string> buy, own, close;
  for (const ShoppingNeed& need : needs_by_kind(plan.shopping)) {
    const int count = need.own || need.buy == 0 ? need.need : need.buy;
    const LayerBulbs bulbs{need.taxon, need.name, need.label, need.grade, count, {}};
    std::vector<std::string> remarks;
    if (!need.grade.empty()) remarks.push_back(in_style(grade_text(need.grade, style), style));
    if (!need.own && need.spares > 0) remarks.push_back(fmt::format("{}\u00A0spare", need.spares));
    std::string text = bulbs_text(bulbs, style);
    if (!remarks.empty()) text += fmt::format(" ({})", fmt::join(remarks, ", "));
    (need.own ? own : buy).push_back(text);
  }
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.count_set_close > 0) close.push_back(fmt::format("{}", layer.count_set_close));
  }
  Lines lines = labelled("Buy", buy.empty() ? "" : listed(buy) + ".", layout);
  append(lines, labelled("You have", own.empty() ? "" : listed(own) + ".", layout));
  if (!close.empty() && close.size() == plan.layers.size()) {
    append(lines, labelled("Set close",
                           fmt::format("{} apart there is room for {}{}.",
                                       length_text(Millimetres{10.0}, style), listed(close),
                                       close.size() > 1 ? ", from the bottom up" : ""),
                           layout));
  }
  return lines;
}

}  // namespace bulbwright::report
