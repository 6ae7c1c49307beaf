// Panels side by side, or one below another in a narrow window; and the edge between two of them: dragged, kept with
// what is chosen in the window; a double click puts it back.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

/// A panel of a view, of this size in pixels (0: all that is left). Where the window is narrow it stands in the page
/// itself, as high as what is in it.
void begin_panel(const Ui& ui, const char* id, ImVec2 size = {0, 0}, ImGuiWindowFlags flags = 0);
void end_panel(const Ui& ui);
/// Between two panels, a gap in points.
void beside(const Ui& ui, double gap);
/// What is left of a panel for a chart; all the width and this height, in points, where the window is narrow.
ImVec2 rest_of_panel(const Ui& ui, double height);

/// Width of the left panel, pixels: as dragged, else `usual`; neither side below its least (points).
float split_width(Ui& ui, const std::string& id, float usual, double least_left, double least_right);

/// The edge itself, on the line of the panels; they follow each other with no gap.
void split_edge(Ui& ui, const std::string& id);

} // namespace pourbook
