// The pages of this folder, compiled into the program: one for each view, written in the part of Markdown that the
// window draws, and some in full, with tables, which those refer to and the command line prints.
#pragma once

#include "help/markdown.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct HelpPage {
    std::string name; // "rank", "mix-in-full"
    std::string text; // as written
    std::vector<HelpBlock> blocks;
};

/// In the order of their names.
const std::vector<HelpPage>& help_pages();
/// Null: there is no such page.
const HelpPage* help_page(const std::string& name);

} // namespace pourbook
