#pragma once

namespace bulbwright {

/// Spares for bulbs lost between shop and flower while the grower's own losses are not known: one
/// in ten. common practice
inline constexpr double flat_loss_rate = 0.10;

/// Spares at a flat rate: rate * count, rounded up (2 for 11 at 10 %).
/// `rate` 0 to below 1, `count` 0 or more.
int flat_spares(int count, double rate);

}  // namespace bulbwright
