#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace bulbwright::cli {

/// One thing that a command takes from the command line, as plain data: for the parser, the help,
/// and whatever else has to list what there is.
struct Option {
  /// Where the words go, as written. An empty word is kept, to be refused by name.
  using Value =
      std::variant<bool*, std::string*, std::optional<std::string>*, std::vector<std::string>*>;

  std::string spelling;            ///< "--top", "-o,--out"; "file" for words without a dash
  std::string form;                ///< of the value in the help: "LENGTH", "mm|in"; none for a flag
  std::string help;                ///< one line
  std::string heading;             ///< under which the help lists it
  std::vector<std::string> words;  ///< all values that there are; none: any
  Value value;                     ///< a vector: as often as wanted
};

/// The values of an option that may stand several times and hold several, with commas between;
/// they live as long as `written`.
std::vector<std::string_view> each_of(const std::vector<std::string>& written);

/// Adds options under one heading. What they write to must outlive them.
class OptionGroup {
 public:
  OptionGroup(std::vector<Option>& options, std::string heading)
      : options_{options}, heading_{std::move(heading)} {}

  void text(const char* spelling, std::string& value, const char* form, const char* help);
  void text(const char* spelling, std::optional<std::string>& value, const char* form,
            const char* help);
  /// One of `words`.
  void choice(const char* spelling, std::string& value, std::vector<std::string> words,
              const std::string& help);
  void repeated(const char* spelling, std::vector<std::string>& value, const char* form,
                const char* help);
  void flag(const char* spelling, bool& value, const char* help);

 private:
  void add(const char* spelling, Option::Value value, std::string form, std::string help,
           std::vector<std::string> words = {});
  std::vector<Option>& options_;
  std::string heading_;
};

}  // namespace bulbwright::cli
