// The picture room: one picture of the window in the frame of a video or a sheet. What is seen there is the file.
//
// Whatever can be a picture offers itself in each frame under its id; the room holds the one it was opened for.
#pragma once

#include "charts/frame.hpp"
#include "gui/widgets/ui.hpp"

namespace pourbook {

/// From the next frame on the room shows the picture of this id.
void open_room(Ui& ui, const std::string& id);

/// Lays the picture out for the room where it is this one and `key` or the wish is new. Cheap otherwise.
void offer_to_room(Ui& ui, const std::string& id, const std::string& key, const SceneMaker& make);

/// Over the whole window, where it is open.
void draw_picture_room(Ui& ui);

} // namespace pourbook
