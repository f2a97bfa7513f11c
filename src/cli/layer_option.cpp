#include "cli/layer_option.hpp"

#include <algorithm>
#include <span>

#include <fmt/core.h>

#include "input/field_values.hpp"

namespace bulbwright::cli {
namespace {

using input::Faults;

const input::Field layer_field{"--layer", {}};

bool add_count(std::string_view text, LayerRequest& layer, Faults& faults) {
  try {
    layer.count = static_cast<int>(parse_whole_number(text, 1, most_counted_bulbs));
    return true;
  } catch (const InvalidValue& fault) {
    faults.add(layer_field, fault.expectation());
    return false;
  }
}

constexpr std::string_view own_word = "own";

/// What stands behind the commas: "own", the state of the bulbs, each once at most.
bool add_words(std::span<const std::string_view> said, LayerRequest& layer, Faults& faults) {
  std::vector<std::string_view> words{own_word};
  const auto states = words_of<BulbState>();
  words.insert(words.end(), states.begin(), states.end());
  std::optional<std::size_t> state;
  for (const std::string_view text : said) {
    const auto which = input::read_word(layer_field, text, words, "word about bulbs", faults);
    if (!which) return false;
    if (*which == 0 ? layer.own : state.has_value()) {
      faults.add(layer_field, fmt::format("{} after {}; expected one of {} at most, and \"own\"",
                                          in_quotes(trimmed(text)),
                                          in_quotes(*which == 0 ? own_word : words[*state]),
                                          listed(states, "or")));
      return false;
    }
    if (*which == 0) {
      layer.own = true;
    } else {
      state = which;
      layer.state = static_cast<BulbState>(*which - 1);
    }
  }
  return true;
}

/// "tulip-triumph 20": a number of bulbs without its sign. Empty where there is none.
std::string_view number_behind(std::string_view piece) {
  const std::size_t blank = piece.find_last_of(" \t");
  if (blank == std::string_view::npos) return "";
  const std::string_view last = piece.substr(blank + 1);
  return last.find_first_not_of("0123456789") == std::string_view::npos ? last : "";
}

/// A share in front of a kind: "2" of "2 grape hyacinth"; a kind's own first word is none.
std::string_view share_of(std::string_view piece) {
  const std::size_t blank = piece.find_first_of(" \t");
  if (blank == std::string_view::npos) return "";
  const std::string_view first = piece.substr(0, blank);
  return first.find_first_of("0123456789") == std::string_view::npos ? "" : first;
}

/// "2 narcissus-jonquilla"; the share may be missing in a layer of one kind only.
bool add_part(std::string_view piece, bool mixture, LayerRequest& layer, Faults& faults) {
  const std::string_view share = share_of(piece);
  const std::string_view kind = trimmed(piece.substr(share.size()));
  if (kind.empty()) {
    faults.add(layer_field, fmt::format("{} is no kind to plant; expected something like "
                                        "\"tulip-triumph\" or \"2 narcissus-jonquilla + 1 "
                                        "muscari\"",
                                        in_quotes(piece)));
    return false;
  }
  if (mixture && share.empty()) {
    faults.add(layer_field, fmt::format("{0} has no share; did you mean \"1 {1}\"?",
                                        in_quotes(piece), input::bare(piece)));
    return false;
  }
  if (!mixture && !share.empty()) {
    faults.add(layer_field, fmt::format("{} has a share but is alone; for a number of bulbs write "
                                        "\"{} = {}\"",
                                        in_quotes(piece), input::bare(kind), input::bare(share)));
    return false;
  }
  if (const std::string_view number = number_behind(kind); !number.empty()) {
    faults.add(layer_field,
               fmt::format(
                   "{} ends in a number; for a number of bulbs write \"{} = {}\"", in_quotes(piece),
                   input::bare(trimmed(kind.substr(0, kind.size() - number.size()))), number));
    return false;
  }
  LayerPart part{std::string{kind}, 1.0};
  if (mixture) {
    const auto number = input::read_decimal(layer_field, share, least_share, most_share, faults);
    if (!number) return false;
    part.share = *number;
  }
  const bool twice = std::any_of(layer.parts.begin(), layer.parts.end(),
                                 [&](const LayerPart& other) { return other.taxon == part.taxon; });
  if (twice) {
    faults.add(layer_field, fmt::format("{} stands twice in one mix", in_quotes(part.taxon)));
    return false;
  }
  layer.parts.push_back(std::move(part));
  return true;
}

}  // namespace

std::optional<LayerRequest> read_layer_option(std::string_view text, Faults& faults) {
  LayerRequest layer;
  const std::vector<std::string_view> said = split(text, ',');
  if (!add_words(std::span{said}.subspan(1), layer, faults)) return std::nullopt;
  const std::vector<std::string_view> sides = split(said[0], '=');
  if (trimmed(text).empty() || sides.size() > 2) {
    faults.add(layer_field, fmt::format("{} is no layer; expected something like "
                                        "\"tulip-triumph\" or \"tulip-triumph = 20\"",
                                        in_quotes(text)));
    return std::nullopt;
  }
  if (sides.size() == 2 && !add_count(sides[1], layer, faults)) return std::nullopt;
  const std::vector<std::string_view> pieces = split(sides[0], '+');
  if (pieces.size() > most_parts) {
    faults.add(layer_field, fmt::format("{} kinds in one layer; expected at most {}", pieces.size(),
                                        most_parts));
    return std::nullopt;
  }
  for (const std::string_view piece : pieces) {
    if (!add_part(piece, pieces.size() > 1, layer, faults)) return std::nullopt;
  }
  return layer;
}

}  // namespace bulbwright::cli
