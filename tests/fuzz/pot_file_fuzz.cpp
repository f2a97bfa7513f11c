// Any bytes as a pot file: read, or refused with an InputError whose text keeps its limits; what is
// read is written and read back the same. Run from a corpus of examples:
//   build/fuzz/tests/pot_file_fuzz -dict=tests/fuzz/pot_file.dict -max_len=20000 -timeout=5
//     -rss_limit_mb=2048 CORPUS examples
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "base/error.hpp"
#include "input/judged_pot_file.hpp"
#include "input/pot_file_writer.hpp"

using namespace bulbwright;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

void check_round_trip(const Request& request) {
  const std::string text = input::write_pot_file(request);
  const Request again = input::read_pot_file(text, "again.json", input::Extent::partial).request;
  require(again == request);
  require(input::write_pot_file(again) == text);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  Request request;
  try {
    request = input::read_pot_file(text, "fuzz.json", input::Extent::partial).request;
  } catch (const InputError& error) {
    require(!error.faults().empty());
    const std::string message = describe(error);
    require(message.size() <= 2000 && message.ends_with('\n'));
    return 0;
  }
  if (!request.layers.empty()) check_round_trip(request);
  return 0;
}
