// A race in a panel: magnets fall in true or slowed time, each at the computed place of the moment that the clock says.
#pragma once

#include "charts/race.hpp"
#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>

namespace pourbook {

/// As many lanes as can be read in this width, in points; at least one.
std::size_t readable_lanes(double width);

/// Draws the race at the moment it stands at, and lets time pass while it runs. `key` tells one race from another: a
/// new one begins at once where `at_once`. Returns the scene as drawn; its place is the last item's.
Scene race_view(Ui& ui, const std::string& id, const std::string& key, const std::function<Race()>& make, bool at_once,
                ImVec2 size);

/// The button that drops the magnets, and how much slower than life they fall. Space does what the button does.
void race_controls(Ui& ui, const std::string& id, bool large);

} // namespace pourbook
