// The signs of a text in UTF-8, and which of them may be kept or shown.
#pragma once

#include <cstddef>
#include <string_view>

namespace pourbook {

/// Length of the sign at the start of the text; 0 where there is none (RFC 3629: no overlong forms, no surrogates).
std::size_t utf8_length(std::string_view text);

/// A control sign other than line end and tab, of the second set too (U+0080 to U+009F, which terminals obey as they do
/// ESC), or one that turns the direction of a line (UAX 9: U+061C, 200E, 200F, 202A to 202E, 2066 to 2069).
bool is_control(std::string_view sign);

} // namespace pourbook
