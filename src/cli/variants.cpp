#include "cli/variants.hpp"

#include <algorithm>
#include <set>

#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"
#include "base/text.hpp"

namespace bulbwright::cli {
namespace {

/// The flags of a pot by name without dashes, writing into `options`.
std::vector<Option> flags_of(PotOptions& options) {
  std::vector<Option> flags;
  declare_pot(flags, options);
  return flags;
}

bool is_day(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(),
                     [](char c) { return (c >= '0' && c <= '9') || c == '-'; }) &&
         text.find('-') != std::string_view::npos && text.front() != '-';
}

std::string_view name_of(std::string_view setting) {
  return trimmed(setting.substr(0, setting.find('=')));
}

bool is_flag(std::string_view name) {
  PotOptions nowhere;
  const std::vector<Option> flags = flags_of(nowhere);
  return std::any_of(flags.begin(), flags.end(), [&](const Option& flag) {
    return flag.spelling == fmt::format("--{}", name);
  });
}

/// A part that begins a variant; else it belongs to a value with a comma in it.
bool begins_variant(std::string_view part) {
  return is_day(part) || part.find('=') != std::string_view::npos || is_flag(name_of(part));
}

[[noreturn]] void unknown(std::string_view name, const std::vector<Option>& flags) {
  std::vector<std::string_view> names;
  for (const Option& flag : flags) names.push_back(std::string_view{flag.spelling}.substr(2));
  throw InvalidValue{"--compare",
                     fmt::format("{} is neither a day such as 2027-01-25 nor a flag of "
                                 "a pot such as site=London{}",
                                 in_quotes(name), did_you_mean(name, names))};
}

void set(PotOptions& options, std::string_view setting, std::set<std::string>& begun) {
  if (is_day(setting)) {
    options.plant = std::string{setting};
    options.flower.reset();
    return;
  }
  const std::string_view name = name_of(setting);
  const std::size_t sign = setting.find('=');
  const std::string value{sign == std::string_view::npos ? std::string_view{}
                                                         : trimmed(setting.substr(sign + 1))};
  std::vector<Option> flags = flags_of(options);
  const auto flag = std::find_if(flags.begin(), flags.end(), [&](const Option& known) {
    return known.spelling == fmt::format("--{}", name);
  });
  if (flag == flags.end()) unknown(name, flags);
  if (auto* const* text = std::get_if<std::optional<std::string>*>(&flag->value)) {
    **text = value;
  } else if (auto* const* list = std::get_if<std::vector<std::string>*>(&flag->value)) {
    if (begun.insert(flag->spelling).second) (*list)->clear();
    (*list)->push_back(value);
  } else if (auto* const* truth = std::get_if<bool*>(&flag->value)) {
    **truth = true;
  }
}

}  // namespace

std::vector<Variant> variants_of(const std::vector<std::string>& written, const PotOptions& base) {
  std::vector<std::string> labels;
  for (const std::string& words : written) {
    bool first = true;
    for (const std::string_view part : split(words, ',')) {
      if (part.empty()) {
        throw InvalidValue{"--compare",
                           "expected days such as 2026-12-25,2027-01-25, or flags such as "
                           "\"site=London\""};
      }
      if (first || begins_variant(part)) {
        labels.emplace_back(part);
      } else {
        labels.back() += fmt::format(",{}", part);
      }
      first = false;
    }
  }
  std::vector<Variant> variants;
  for (std::string& label : labels) {
    Variant variant{std::move(label), base};
    std::set<std::string> begun;
    for (const std::string_view setting : split(variant.label, ';'))
      set(variant.pot, setting, begun);
    variants.push_back(std::move(variant));
  }
  return variants;
}

}  // namespace bulbwright::cli
