// The edge between two panels: dragged, kept with what is chosen in the window; a double click puts it back.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

/// Width of the left panel, pixels: as dragged, else `usual`; neither side below its least (points).
float split_width(Ui& ui, const std::string& id, float usual, double least_left, double least_right);

/// The edge itself, on the line of the panels; they follow each other with no gap.
void split_edge(Ui& ui, const std::string& id);

} // namespace pourbook
