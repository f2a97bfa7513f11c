#pragma once

namespace bulbwright::library {

/// Semantic version of program and library; CMakeLists.txt reads it here.
inline constexpr const char* version = "0.1.0";

}  // namespace bulbwright::library
