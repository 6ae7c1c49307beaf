// Text for the width of a terminal.
#pragma once

#include <cstddef>
#include <string>

namespace pourbook {

/// What COLUMNS says, at least 40; 0: not said, so that text for a file or a pipe stays as it is.
std::size_t terminal_columns();

/// No line longer than `columns` characters: folded at blanks, the rest set in by four more than its line. A word
/// longer than a line is cut. 0 leaves the text alone. Characters are counted, not bytes.
std::string folded(const std::string& text, std::size_t columns);

/// Heads and the answer itself in bold, cautions in colour, by the signs of SGR (ECMA-48). A head stands behind a blank
/// line, at the margin, before lines that are set in, or with its figure two blanks behind it; a caution says so.
std::string dressed(const std::string& text);

} // namespace pourbook
