// What may stand on a terminal: a file that was restored or copied may hold signs that a terminal obeys.
#pragma once

#include <string>
#include <string_view>

namespace pourbook {

/// Control signs (but line ends, tabs and the colours this program sets itself), signs that turn the direction of a
/// line and bytes that are no UTF-8 each become U+FFFD.
std::string for_terminal(std::string_view text);

} // namespace pourbook
