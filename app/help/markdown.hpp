// The part of Markdown that a page in the window is written in: a title, headings, paragraphs, lists of points, set-off
// lines (equations, commands: four blanks in front) and cautions (quotes), with **strong** words and `code`.
#pragma once

#include <string>
#include <vector>

namespace pourbook {

struct HelpPiece {
    enum class Look { plain, strong, code };
    std::string text;
    Look look = Look::plain;
};

/// What is kept in one line: the letters between two blanks, and a piece of code whole.
using HelpWord = std::vector<HelpPiece>;

struct HelpBlock {
    enum class Kind { title, heading, paragraph, point, set_off, caution };
    Kind kind = Kind::paragraph;
    std::vector<HelpWord> words;
};

/// A set-off line is a block by itself; the lines of every other block are joined. A mark that is not closed stays as
/// it stands.
std::vector<HelpBlock> help_blocks(const std::string& text);

/// The words as they read, joined by blanks.
std::string plain_text(const HelpBlock& block);

} // namespace pourbook
