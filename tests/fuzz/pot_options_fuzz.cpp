// Any text as the values of the pot flags, one a line, its first character choosing the flag:
// merged over a file or not, it gives a request or an InputError.
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/error.hpp"
#include "cli/judged_options.hpp"
#include "input/judged_pot_file.hpp"

using namespace bulbwright;

namespace {

constexpr std::string_view steps = R"({
  "pot": { "top": "380 mm", "base": "290 mm", "height": "360 mm" },
  "place": { "zone": "9b" }, "season": 2026, "plant": "2027-01-08",
  "layers": [ { "taxon": "tulip-triumph" }, { "taxon": "crocus-large" } ] })";

using Option = std::optional<std::string> cli::PotOptions::*;
constexpr std::array options{&cli::PotOptions::name,
                             &cli::PotOptions::shape,
                             &cli::PotOptions::top,
                             &cli::PotOptions::base,
                             &cli::PotOptions::height,
                             &cli::PotOptions::corner,
                             &cli::PotOptions::thickness,
                             &cli::PotOptions::headspace,
                             &cli::PotOptions::material,
                             &cli::PotOptions::last_crop,
                             &cli::PotOptions::zone,
                             &cli::PotOptions::site,
                             &cli::PotOptions::near,
                             &cli::PotOptions::elevation,
                             &cli::PotOptions::offset,
                             &cli::PotOptions::winter,
                             &cli::PotOptions::records,
                             &cli::PotOptions::latitude,
                             &cli::PotOptions::exposure,
                             &cli::PotOptions::season,
                             &cli::PotOptions::plant,
                             &cli::PotOptions::flower,
                             &cli::PotOptions::gap,
                             &cli::PotOptions::wall,
                             &cli::PotOptions::storage_temperature,
                             &cli::PotOptions::storage_method,
                             &cli::PotOptions::storage_weeks};

void set_option(cli::PotOptions& values, std::string_view line) {
  if (line.empty()) return;
  const auto which =
      static_cast<std::size_t>(static_cast<unsigned char>(line.front())) % (options.size() + 4);
  const std::string text{line.substr(1)};
  if (which < options.size()) {
    values.*options[which] = text;
  } else if (which == options.size()) {
    values.pests.push_back(text);
  } else if (which == options.size() + 1) {
    values.south = true;
  } else {
    values.layers.push_back(text);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  std::string_view text{reinterpret_cast<const char*>(data) + 1, size - 1};
  cli::PotOptions values;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    set_option(values, text.substr(0, end));
    text = end == std::string_view::npos ? "" : text.substr(end + 1);
  }
  try {
    std::optional<input::LocatedRequest> file;
    if ((data[0] & 1U) != 0) file = input::read_pot_file(steps, "steps.json");
    (void)cli::merged(std::move(file), values);
  } catch (const InputError& error) {
    if (error.faults().empty() || describe(error).size() > 2000) std::abort();
  }
  return 0;
}
