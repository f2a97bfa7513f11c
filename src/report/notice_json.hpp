#pragma once

#include <nlohmann/json.hpp>

#include "base/notice.hpp"

namespace bulbwright::report {

/// { code, severity, kinds, layer, details, text }: what programs read beside the sentence. `kinds`
/// are ids; `layer` (from 1) is absent where none is meant; the keys of `details` end in their unit
/// as everywhere in documents.
nlohmann::ordered_json notice_json(const Notice& notice);

}  // namespace bulbwright::report
