#include "input/located_request.hpp"

#include <fmt/core.h>

namespace bulbwright::input {
namespace {

/// The nearest place known for `path`: its own, or that of the object it would stand in; "" is the
/// whole file.
const SourcePlace* place_of(const LocatedRequest& asked, std::string_view path) {
  for (;;) {
    const auto found = asked.written_at.find(std::string{path});
    if (found != asked.written_at.end()) return &found->second;
    const std::size_t cut = path.find_last_of(".[");
    if (path.empty()) return nullptr;
    path = cut == std::string_view::npos ? "" : path.substr(0, cut);
  }
}

/// The flag that gives a field where nothing at all was given.
std::string_view flag_of(std::string_view path) {
  if (path == "pot.top") return "--top";
  if (path == "place") return "--zone";
  if (path == "place.latitude") return "--latitude";
  if (path == "layers") return "--layer";
  return path;
}

}  // namespace

bool given(const LocatedRequest& asked, std::string_view path) {
  return asked.written_at.contains(std::string{path});
}

InputFault fault_at(const LocatedRequest& asked, std::string_view field,
                    const std::string& message) {
  const SourcePlace* place = place_of(asked, field);
  if (place == nullptr) {
    const std::string_view name = asked.file.empty() ? flag_of(field) : field;
    return {{asked.file, 0, 0}, fmt::format("{}: {}", name, message)};
  }
  if (place->line == 0 && place->file.starts_with("--")) {
    return {SourcePlace{}, fmt::format("{}: {}", place->file, message)};
  }
  return {*place, fmt::format("{}: {}", field, message)};
}

InputError located(const LocatedRequest& asked, const InvalidValue& fault) {
  const bool of_layer = fault.field().starts_with("layers[");
  const std::string field = of_layer && asked.request.layers.empty() ? "pot.top" : fault.field();
  return InputError{{fault_at(asked, field, fault.expectation())}};
}

}  // namespace bulbwright::input
