#pragma once

namespace bulbwright {

/// Where a figure comes from. published: seen in the named source; common_practice: a trade grade
/// or rule of thumb; from_memory: general knowledge, not checked.
enum class Origin { published, common_practice, from_memory };
const char* to_string(Origin origin);

}  // namespace bulbwright
