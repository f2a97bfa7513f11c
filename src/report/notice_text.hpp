#pragma once

#include <string>
#include <vector>

#include "base/notice.hpp"
#include "report/text_style.hpp"

namespace bulbwright::report {

/// The sentence of a notice, without capital letter and full stop, in the style's units; numbers
/// are held to their units by no-break spaces.
std::string notice_text(const Notice& notice, const TextStyle& style);

/// The same of a remark.
std::string remark_text(const Remark& remark, const TextStyle& style);

/// For documents that programs read: metric, plain spaces.
std::string plain_text(const Notice& notice);
std::string plain_text(const Remark& remark);

/// Notices that say the same of one kind each (nothing of another kind, nor of a layer) as one that
/// names all of them, at the place of the first; what is said twice is said once.
std::vector<Notice> merged(const std::vector<Notice>& notices);

}  // namespace bulbwright::report
