#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bulbwright::library {

/// The kinds of bulbs compiled in.
struct Kind {
  std::string id;    ///< "tulip-triumph": what a pot file says
  std::string name;  ///< "Triumph tulip"
  std::string genus;
};

/// All kinds, in the order of the catalogue.
std::vector<Kind> kinds();

/// Every figure of a kind with its range, unit, origin and source: "bulbwright.bulbs/1", as
/// docs/schema/bulbs.schema.json describes it. @throws BadInput for an unknown id, with the near
/// misses.
std::string kind_json(std::string_view id);

}  // namespace bulbwright::library
