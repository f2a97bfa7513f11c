#include "source_paths.hpp"

namespace bulbwright::fixture {

std::string source_path(const std::string& name) {
  return std::string{SOURCE_ROOT} + "/" + name;
}

}  // namespace bulbwright::fixture
