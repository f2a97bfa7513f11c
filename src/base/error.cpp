#include "base/error.hpp"

#include <fmt/core.h>

#include "base/utf8.hpp"

namespace bulbwright {
namespace {

constexpr std::size_t most_faults = 20;
constexpr std::size_t most_bytes = 2000;
constexpr std::size_t most_quoted = 60;

std::string joined(const std::vector<InputFault>& faults) {
  std::string text;
  for (const InputFault& fault : faults) {
    if (!text.empty()) text += '\n';
    text += fault.message;
  }
  return text;
}

std::string line_of(const InputFault& fault) {
  const SourcePlace& at = fault.place;
  // A file name may hold anything; control characters must not reach the terminal.
  std::string name = at.file.empty() ? "bulbwright" : in_quotes(at.file);
  if (name.front() == '"') name = name.substr(1, name.size() - 2);
  if (at.line > 0)
    return fmt::format("{}:{}:{}: error: {}\n", name, at.line, at.column, fault.message);
  return fmt::format("{}: error: {}\n", name, fault.message);
}

}  // namespace

InvalidValue::InvalidValue(std::string field, std::string expectation)
    : std::runtime_error{field.empty() ? expectation : field + ": " + expectation},
      field_{std::move(field)},
      expectation_{std::move(expectation)} {}

InputError::InputError(std::vector<InputFault> faults)
    : std::runtime_error{joined(faults)}, faults_{std::move(faults)} {}

InputError::InputError(SourcePlace place, std::string message)
    : InputError{std::vector<InputFault>{{std::move(place), std::move(message)}}} {}

std::string describe(const InputError& error) {
  std::string text;
  std::size_t shown = 0;
  const std::size_t all = error.faults().size();
  for (const InputFault& fault : error.faults()) {
    const std::string line = line_of(fault);
    if (shown == most_faults || text.size() + line.size() > most_bytes - 40) break;
    text += line;
    ++shown;
  }
  if (shown == 0 && all > 0) {
    // One message longer than the limit: cut it at a code point.
    std::string line = line_of(error.faults().front());
    std::size_t end = most_bytes - 40;
    while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xc0U) == 0x80U) --end;
    text = line.substr(0, end) + "…\n";
    shown = 1;
  }
  if (shown < all) text += fmt::format("… and {} more\n", all - shown);
  return text;
}

std::string in_quotes(std::string_view text) {
  std::string out = "\"";
  std::size_t points = 0;
  for (std::size_t i = 0; i < text.size();) {
    if (points == most_quoted) {
      out += "…";
      break;
    }
    const std::size_t length = utf8_sequence_length(text, i);
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool c1_control =
        length == 2 && byte == 0xc2 && static_cast<unsigned char>(text[i + 1]) < 0xa0;
    if (length == 0 || c1_control || byte < 0x20 || byte == 0x7f) {
      const std::size_t bytes = length == 0 ? 1 : length;
      for (std::size_t k = 0; k < bytes; ++k) {
        out += fmt::format("\\x{:02x}",
                           static_cast<unsigned>(static_cast<unsigned char>(text[i + k])));
      }
      i += bytes;
    } else {
      out.append(text.substr(i, length));
      i += length;
    }
    ++points;
  }
  return out + "\"";
}

}  // namespace bulbwright
