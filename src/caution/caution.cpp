#include "caution/caution.hpp"

#include <algorithm>
#include <iterator>
#include <map>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/text.hpp"
#include "caution/words.hpp"

namespace bulbwright {
namespace {

using Kind = CautionTerm::Kind;
using Taxa = std::vector<const Taxon*>;

bool has_class(const Taxon& taxon, std::string_view word) {
  // Horses are left out: their class is unverified for many kinds that are known for the others.
  for (const Toxicity class_ : {taxon.toxicity_cat, taxon.toxicity_dog, taxon.toxicity_people}) {
    if (word == word_of(class_)) return true;
  }
  return false;
}

/// Whether the term speaks of taxa, and which of the plan's it meets.
bool names_taxa(Kind kind) {
  return kind == Kind::genus || kind == Kind::taxon || kind == Kind::toxicity;
}
bool meets(const Taxon& taxon, const CautionTerm& term) {
  if (term.kind == Kind::genus) return lower_case(taxon.genus) == term.word;
  if (term.kind == Kind::taxon) return taxon.id == term.word;
  return has_class(taxon, term.word);
}

bool holds(const CautionTerm& term, const CautionFacts& facts) {
  switch (term.kind) {
    case Kind::always:
      return true;
    case Kind::stored:
      return facts.stored;
    case Kind::refrigerated:
      return facts.refrigerated;
    case Kind::pre_cooled:
      return facts.pre_cooled;
    case Kind::vermiculite:
      return lower_case(facts.storage_method).find("vermiculite") != std::string::npos;
    case Kind::frost:
      return facts.frost_expected;
    case Kind::mild_winter:
      return facts.mild_winter;
    case Kind::porous:
      return facts.cracks_in_frost;
    case Kind::wall_pot:
      return facts.wall_pot;
    case Kind::mesh:
      return facts.mesh;
    case Kind::perlite:
      return facts.perlite_share > 0.0;
    case Kind::weight:
      return facts.filled_weight > Kilograms{0.0};
    case Kind::weight_over_one:
      return facts.lift_one > Kilograms{0.0} &&
             rounded(facts.filled_weight.value(), 0.1) > rounded(facts.lift_one.value(), 0.1);
    case Kind::volume_over:
      return rounded(facts.volume.value(), 0.1) > term.number;
    case Kind::genus:
    case Kind::taxon:
    case Kind::toxicity:
      return std::any_of(facts.taxa.begin(), facts.taxa.end(),
                         [&](const Taxon* taxon) { return meets(*taxon, term); });
    case Kind::pest:
      return term.pest ? std::find(facts.pests.begin(), facts.pests.end(), *term.pest) !=
                             facts.pests.end()
                       : !facts.pests.empty();
  }
  return false;
}

/// What fired: a rule, the kinds it speaks of and the pest, if any.
struct Fired {
  const CautionRule* rule;
  Taxa taxa;
  std::optional<Pest> pest;
};

/// The plan's taxa in their order that a term of a true alternative names; fires if one is true.
bool fires(const CautionRule& rule, const CautionFacts& facts, Fired& fired) {
  bool any = false;
  std::vector<const CautionTerm*> about;
  for (const auto& terms : rule.alternatives) {
    const bool all = std::all_of(terms.begin(), terms.end(),
                                 [&](const CautionTerm& term) { return holds(term, facts); });
    if (!all) continue;
    any = true;
    for (const CautionTerm& term : terms) {
      if (names_taxa(term.kind)) about.push_back(&term);
      if (term.pest) fired.pest = term.pest;
    }
  }
  for (const Taxon* taxon : facts.taxa) {
    if (std::any_of(about.begin(), about.end(),
                    [&](const CautionTerm* term) { return meets(*taxon, *term); })) {
      fired.taxa.push_back(taxon);
    }
  }
  fired.rule = &rule;
  return any;
}

void replace(std::string& text, std::string_view mark, const std::string& by) {
  for (std::size_t at = text.find(mark); at != std::string::npos;
       at = text.find(mark, at + by.size())) {
    text.replace(at, mark.size(), by);
  }
}

std::string about_kilograms(Kilograms weight) {
  return fmt::format("{:.0f} kg", rounded(weight.value(), 1.0));
}

std::string filled(std::string text, const Fired& fired, const CautionFacts& facts) {
  if (text.find('{') == std::string::npos) return text;
  const std::string kinds = kinds_of(fired.taxa);
  replace(text, "{kinds}", kinds);
  replace(text, "{Kinds}", capitalised(kinds));
  if (fired.pest) replace(text, "{eats}", eats(facts.taxa, *fired.pest));
  return text;
}

/// filled(), weights included: for text that is metric.
std::string filled_metric(std::string text, const Fired& fired, const CautionFacts& facts) {
  replace(text, "{weight}", about_kilograms(facts.filled_weight));
  replace(text, "{lift_one}", about_kilograms(facts.lift_one));
  return filled(std::move(text), fired, facts);
}

/// What a topic has to say on the sheet, and which of the fired cautions says it.
struct TopicLine {
  std::size_t speaker = 0;
  bool named = false;  ///< the speaker's line names kinds
  Taxa taxa;
  std::vector<Pest> pests;
};

/// Cautions that share a line: those of one topic, and of the pests those that eat the same.
std::string line_key(const Fired& fired, const CautionFacts& facts) {
  std::string key = fired.rule->caution.topic;
  if (fired.pest) key += eats_short(facts.taxa, *fired.pest, sheet_width);
  return key;
}

std::map<std::string, TopicLine> topic_lines(const std::vector<Fired>& fired,
                                             const CautionFacts& facts) {
  std::map<std::string, TopicLine> lines;
  for (std::size_t i = 0; i < fired.size(); ++i) {
    const Caution& caution = fired[i].rule->caution;
    if (caution.short_text.empty()) continue;
    const bool names = caution.short_text.find("{kinds}") != std::string::npos;
    const auto [entry, fresh] = lines.try_emplace(line_key(fired[i], facts));
    TopicLine& line = entry->second;
    if (fresh || (names && !line.named)) {
      line.speaker = i;
      line.named = names;
    }
    line.taxa.insert(line.taxa.end(), fired[i].taxa.begin(), fired[i].taxa.end());
    if (fired[i].pest) line.pests.push_back(*fired[i].pest);
  }
  return lines;
}

/// The line of a topic for the bench, with all kinds that the topic speaks of, in the plan's order.
std::string sheet_line(const Fired& fired, const TopicLine& line, const CautionFacts& facts) {
  Taxa taxa;
  std::copy_if(facts.taxa.begin(), facts.taxa.end(), std::back_inserter(taxa), [&](auto taxon) {
    return std::find(line.taxa.begin(), line.taxa.end(), taxon) != line.taxa.end();
  });
  std::string text = fired.rule->caution.short_text;
  replace(text, "{Pests}", capitalised(pests_of(line.pests)));
  const auto room = [&](std::string_view mark) {
    return sheet_width + mark.size() - std::min(text.size(), sheet_width);
  };
  if (text.find("{kinds}") != std::string::npos) {
    replace(text, "{kinds}", kinds_within(taxa, facts.taxa, room("{kinds}")));
  }
  if (text.find("{eats_short}") != std::string::npos && fired.pest) {
    replace(text, "{eats_short}", eats_short(facts.taxa, *fired.pest, room("{eats_short}")));
  }
  return filled(std::move(text), fired, facts);
}

}  // namespace

std::vector<Caution> cautions_for(const CautionFacts& facts, std::span<const CautionRule> rules) {
  std::vector<Fired> fired;
  for (const CautionRule& rule : rules) {
    Fired one{};
    if (fires(rule, facts, one)) fired.push_back(std::move(one));
  }
  std::stable_sort(fired.begin(), fired.end(), [](const Fired& a, const Fired& b) {
    return a.rule->caution.severity < b.rule->caution.severity;
  });
  const auto lines = topic_lines(fired, facts);

  std::vector<Caution> result;
  for (std::size_t i = 0; i < fired.size(); ++i) {
    Caution caution = fired[i].rule->caution;
    const auto line = lines.find(line_key(fired[i], facts));
    caution.hazard = filled_metric(std::move(caution.hazard), fired[i], facts);
    caution.advice = filled_metric(std::move(caution.advice), fired[i], facts);
    caution.weight = facts.filled_weight;
    caution.text = fmt::format("{}. {}.", caution.hazard, caution.advice);
    caution.short_text = line != lines.end() && line->second.speaker == i
                             ? sheet_line(fired[i], line->second, facts)
                             : std::string{};
    result.push_back(std::move(caution));
  }
  return result;
}

std::vector<Caution> cautions_for(const CautionFacts& facts) {
  return cautions_for(facts, builtin_cautions());
}

}  // namespace bulbwright
