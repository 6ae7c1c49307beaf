// A page of the help in the current window: wrapped to its width, equations and commands set off, cautions marked.
#pragma once

#include "gui/widgets/ui.hpp"
#include "help/markdown.hpp"

#include <vector>

namespace pourbook {

struct Action;

/// A key of the program that is named as code can be clicked; the action of the one that was, else null.
const Action* help_text(Ui& ui, const std::vector<HelpBlock>& blocks);

} // namespace pourbook
