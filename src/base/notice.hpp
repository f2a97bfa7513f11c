#pragma once

#include <string>
#include <vector>

namespace bulbwright {

/// refusal: the plan cannot be carried out (exit 1). warning: it can, at a cost or a risk. note: an
/// assumption or a fact worth knowing.
enum class Severity { note, warning, refusal };
const char* to_string(Severity severity);

/// Something the plan has to say about itself, in a gardener's words; `code` is stable, for
/// programs.
struct Notice {
  std::string code;
  Severity severity = Severity::note;
  std::string text;
};

}  // namespace bulbwright
