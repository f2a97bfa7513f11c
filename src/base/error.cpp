#include "base/error.hpp"

#include <algorithm>

#include <fmt/core.h>

#include "base/utf8.hpp"

namespace bulbwright {
namespace {

constexpr std::size_t most_faults = 20;
constexpr std::size_t most_bytes = 2000;
constexpr std::size_t most_bytes_alone = 20000;  // PATH_MAX is 4096, four bytes for each at most
constexpr std::size_t most_quoted = 60;
constexpr std::size_t counted_of_name = 60;

std::string joined(const std::vector<InputFault>& faults) {
  std::string text;
  for (const InputFault& fault : faults) {
    if (!text.empty()) text += '\n';
    text += fault.message;
  }
  return text;
}

/// Where the fault is, as an editor reads it. A file name may hold anything: it is escaped.
std::string place_of(const InputFault& fault) {
  const SourcePlace& at = fault.place;
  const std::string name = at.file.empty() ? "bulbwright" : escaped(at.file);
  return at.line > 0 ? fmt::format("{}:{}:{}: error: ", name, at.line, at.column)
                     : name + ": error: ";
}

/// `message`, cut at a code point where it is longer than `most` bytes.
std::string cut_at(std::string_view message, std::size_t most) {
  if (message.size() <= most) return std::string{message};
  while (most > 0 && (static_cast<unsigned char>(message[most]) & 0xc0U) == 0x80U) --most;
  return std::string{message.substr(0, most)} + "…";
}

/// `text` escaped, at most `most` code points of it.
std::string escaped_head(std::string_view text, std::size_t most) {
  std::string out;
  std::size_t points = 0;
  for (std::size_t i = 0; i < text.size(); ++points) {
    if (points == most) return out + "…";
    const CodePoint point = code_point_at(text, i);
    if (!point.valid) {
      out += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[i]));
    } else if (is_control(point.value)) {
      const auto value = static_cast<unsigned>(point.value);
      out += value < 0x80 ? fmt::format("\\x{:02x}", value) : fmt::format("\\u{:04x}", value);
    } else {
      out.append(text.substr(i, point.bytes));
    }
    i += point.bytes;
  }
  return out;
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
  std::size_t shown = 0, bytes = 0;
  const std::size_t all = error.faults().size();
  for (const InputFault& fault : error.faults()) {
    // Messages quote input in escaped form; those of a library may hold it raw.
    const std::string message = escaped(fault.message);
    const std::string place = place_of(fault);
    bytes += message.size() + std::min(place.size(), counted_of_name) + 1;
    if (shown == most_faults || (shown > 0 && bytes > most_bytes - 40)) break;
    text += place + cut_at(message, most_bytes_alone) + "\n";
    ++shown;
  }
  if (shown < all) text += fmt::format("… and {} more\n", all - shown);
  return text;
}

std::string escaped(std::string_view text) {
  return escaped_head(text, text.size());
}

std::string in_quotes(std::string_view text) {
  return '"' + escaped_head(text, most_quoted) + '"';
}

std::string path_in_quotes(std::string_view path) {
  return '"' + escaped(path) + '"';
}

}  // namespace bulbwright
