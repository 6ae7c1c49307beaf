// How far work off the frame thread is, with a button to stop it.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

/// One line while work has been going on for a moment, or after it was stopped; nothing otherwise, so that quick
/// answers don't flicker.
void work_note(Ui& ui, const std::string& id, BackgroundWork& work);

} // namespace pourbook
