// A race recorded from the picture room: the frames that the command `film` writes, a picture in each frame of the
// window, so that it can be watched and stopped.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

/// What to press, how far it is and what came of it, where the picture that is framed is a race.
void draw_recording(Ui& ui);

} // namespace pourbook
