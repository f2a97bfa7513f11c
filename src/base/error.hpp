#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// A place in an input: file name (or "--option"), line and column counted from 1 in code points;
/// line 0 means that the place is the whole file or a command-line option.
struct SourcePlace {
  std::string file;
  int line = 0;
  int column = 0;
};

/// One fault in an input, ready to print as `file:line:column: error: message`.
struct InputFault {
  SourcePlace place;
  std::string message;
};

/// A value that cannot be used, thrown by checked makers and parsers of single values.
/// what() is "field: expectation", or the expectation alone where the field is empty. The reader
/// that knows the place turns it into an InputError.
class InvalidValue : public std::runtime_error {
 public:
  InvalidValue(std::string field, std::string expectation);
  [[nodiscard]] const std::string& field() const { return field_; }
  [[nodiscard]] const std::string& expectation() const { return expectation_; }

 private:
  std::string field_;
  std::string expectation_;
};

/// The input is wrong: one or more faults, in order of their places. Thrown only where input is
/// read; main() prints it and exits 2.
class InputError : public std::runtime_error {
 public:
  explicit InputError(std::vector<InputFault> faults);
  InputError(SourcePlace place, std::string message);
  [[nodiscard]] const std::vector<InputFault>& faults() const { return faults_; }

 private:
  std::vector<InputFault> faults_;
};

/// Writing a result failed; main() exits 3.
class OutputError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// All faults as text for standard error, one a line, at most 20 of them and 2,000 bytes in all,
/// of each file name 60 bytes counted ("… and 13 more" beyond); a first message longer than that
/// stands alone, up to 20,000 bytes, for it may hold the longest path there is. Ends with a
/// newline.
std::string describe(const InputError& error);

/// `text` as it can be shown: controls (is_control() of utf8.hpp) and bytes that are no UTF-8
/// escaped, as in \x1b and \u202e.
std::string escaped(std::string_view text);

/// `text` as quoted in messages: escaped, cut after 60 code points with "…"; in double quotes.
std::string in_quotes(std::string_view text);

/// The name of a file as quoted in messages: escaped and never cut; in double quotes.
std::string path_in_quotes(std::string_view path);

}  // namespace bulbwright
