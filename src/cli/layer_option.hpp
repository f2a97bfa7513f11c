#pragma once

#include <optional>
#include <string_view>

#include "input/faults.hpp"
#include "plan/request.hpp"

namespace bulbwright::cli {

/// One --layer:
///   KIND | KIND = COUNT | SHARE KIND + SHARE KIND [+ ...] [= COUNT], each with ", own" and ",
///   STATE" behind
/// "tulip-triumph", "tulip-triumph = 20", "2 narcissus-jonquilla + 1 muscari = 30",
/// "tulip-triumph = 20, own, rooted": twenty bulbs, the grower's own (else to buy); "grape
/// hyacinth". Blanks around the signs do not matter. Kinds stand as they were written;
/// input::resolve() finds them.
std::optional<LayerRequest> read_layer_option(std::string_view text, input::Faults& faults);

}  // namespace bulbwright::cli
