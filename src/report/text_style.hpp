#pragma once

namespace bulbwright::report {

enum class Units { millimetres, inches };

/// How a text is laid out; filled by the command line, never detected here.
struct TextStyle {
  bool utf8 = true;  ///< false: only ASCII of our own
  int width = 80;    ///< columns
  Units units = Units::millimetres;
  bool colour = false;  ///< ANSI colours; meaning never rests on them alone
};

}  // namespace bulbwright::report
