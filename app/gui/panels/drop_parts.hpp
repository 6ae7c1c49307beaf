// The parts of the Drop view; each draws into the current child.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

/// Fields of one set-up. `id` tells the two apart ("drop", "drop2").
void draw_setup_fields(Ui& ui, const std::string& id, SetupWords& setup, std::string& metal);
/// Fields of the wall's other parts, folded away at first.
void draw_wall_fields(Ui& ui);
/// What can hurt: from the reference, beside the magnet.
void draw_magnet_cautions(Ui& ui);
void draw_setup_picture(Ui& ui, const std::string& id, const SetupWords& setup, ImVec2 size);
/// The chosen metal's numbers and what the model leaves out.
void draw_drop_numbers(Ui& ui, const DropResult& result);
/// The sentence and both set-ups' figures side by side.
void draw_against(Ui& ui, const AgainstResult& result);
/// The metals' falls as a race, with the tube changed in the drawing; with nitrogen each metal twice.
void draw_race(Ui& ui, const std::vector<DropOfMetal>& warm, ImVec2 size);
void draw_race_of_two(Ui& ui, const AgainstResult& result, ImVec2 size);
/// What is swept, from where to where, and its chart.
void draw_sweep(Ui& ui, ImVec2 size);

} // namespace pourbook
