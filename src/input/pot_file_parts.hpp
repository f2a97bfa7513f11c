#pragma once

#include <optional>
#include <string>
#include <vector>

#include "input/object_reader.hpp"
#include "plan/request.hpp"

namespace bulbwright::input {

/// The objects of a pot file, each read in its own source file. Faults go to the context.

PotRequest read_pot(const JsonValue& value, ReadContext& context);
PlaceRequest read_place(const JsonValue& value, ReadContext& context);
StorageRequest read_storage(const JsonValue& value, ReadContext& context);
std::vector<Pest> read_pests(const JsonValue& value, ReadContext& context);
std::vector<LayerRequest> read_layers(const JsonValue& value, ReadContext& context);

/// Most layers in a pot; more is a mistake of another kind.
inline constexpr std::size_t most_layers = 20;

}  // namespace bulbwright::input
