#pragma once

#include <array>
#include <span>
#include <string_view>

namespace bulbwright::input {

/// The keys of a pot file by the object they stand in, in the order they are written, and the words
/// that their values may be where these are no enumeration (base/enum_words.hpp). The one list:
/// reader, writer, unknown-key messages and the tests of docs/schema/pot.schema.json all take it
/// from here.
using Words = std::string_view;

inline constexpr std::array file_keys{Words{"$schema"}, Words{"pot"},    Words{"place"},
                                      Words{"season"},  Words{"plant"},  Words{"flower"},
                                      Words{"spread"},  Words{"order"},  Words{"storage"},
                                      Words{"pests"},   Words{"winter"}, Words{"layers"}};
inline constexpr std::array pot_keys{
    Words{"name"},      Words{"group"},    Words{"note"},      Words{"shape"},  Words{"top"},
    Words{"base"},      Words{"height"},   Words{"profile"},   Words{"corner"}, Words{"thickness"},
    Words{"headspace"}, Words{"material"}, Words{"last_crop"}, Words{"mix"}};
inline constexpr std::array profile_keys{Words{"height"}, Words{"width"}, Words{"length"},
                                         Words{"depth"}};
inline constexpr std::array place_keys{Words{"zone"},     Words{"south"},   Words{"region"},
                                       Words{"site"},     Words{"near"},    Words{"elevation"},
                                       Words{"normals"},  Words{"offset"},  Words{"records"},
                                       Words{"latitude"}, Words{"exposure"}};
inline constexpr std::array normals_keys{Words{"tmin"}, Words{"tmax"}, Words{"unit"}};
inline constexpr std::array storage_keys{Words{"temperature"}, Words{"method"}, Words{"weeks"}};
inline constexpr std::array layer_keys{
    Words{"taxon"}, Words{"mix"},           Words{"grade"},        Words{"count"},
    Words{"gap"},   Words{"wall"},          Words{"arrange"},      Words{"label"},
    Words{"note"},  Words{"received"},      Words{"cold_already"}, Words{"use"},
    Words{"state"}, Words{"storage_weeks"}, Words{"pattern"},      Words{"own"}};
inline constexpr std::array part_keys{Words{"taxon"}, Words{"share"}, Words{"storage_weeks"}};

struct KeyTable {
  std::span<const std::string_view> keys;
  std::string_view path;   ///< keys that lead to the object, "/layers/mix"; arrays add nothing
  std::string_view where;  ///< the same in words
};
inline constexpr std::array key_tables{
    KeyTable{pot_keys, "/pot", "\"pot\""},
    KeyTable{profile_keys, "/pot/profile", "an entry of \"profile\" of \"pot\""},
    KeyTable{place_keys, "/place", "\"place\""},
    KeyTable{storage_keys, "/storage", "\"storage\""},
    KeyTable{normals_keys, "/place/normals", "\"normals\" of \"place\""},
    KeyTable{layer_keys, "/layers", "an entry of \"layers\""},
    KeyTable{part_keys, "/layers/mix", "\"mix\" of a layer"},
    KeyTable{file_keys, "", "the file's outermost object"}};

inline constexpr std::array mix_words{Words{"fresh"}, Words{"used"}};
inline constexpr std::array unit_words{Words{"C"}, Words{"F"}};

}  // namespace bulbwright::input
