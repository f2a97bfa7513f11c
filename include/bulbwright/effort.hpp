#pragma once

namespace bulbwright::library {

/// How much search for the densest layout: a number of steps, never of seconds, so that the answer
/// is the same on any machine.
enum class Effort { quick, normal, thorough };

}  // namespace bulbwright::library
