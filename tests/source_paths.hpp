#pragma once

#include <string>

namespace bulbwright::fixture {

/// "NAME" of the repository as an absolute path: source_path("tests/vectors/x.csv").
std::string source_path(const std::string& name);

}  // namespace bulbwright::fixture
