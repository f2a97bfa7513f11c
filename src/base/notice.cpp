#include "base/notice.hpp"

namespace bulbwright {

const char* to_string(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::warning:
      return "warning";
    case Severity::refusal:
      return "refusal";
  }
  return "";
}

}  // namespace bulbwright
