#pragma once

#include <string>
#include <string_view>

namespace bulbwright::report {

/// One cell of a CSV document: quoted where RFC 4180 asks for it. A text that a spreadsheet would
/// take for a formula, one that starts with = + - @ or with a tab or line end, gets a leading
/// apostrophe. Source: OWASP, "CSV Injection". For words, not for numbers: -5 would become '-5.
std::string text_cell(std::string_view text);

}  // namespace bulbwright::report
