#pragma once

namespace bulbwright {

/// outdoors: the pot stands out; forcing: brought indoors to flower.
enum class Use { outdoors, forcing };

}  // namespace bulbwright
