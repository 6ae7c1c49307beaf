// One field for every metal: shows its mark and name; opened, a list of all metals, own ones and mixes among them,
// found by typing part of a name, each with family, conductivity and whether it lies on the shelf.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

/// `width` pixels wide. Returns the slug of the metal chosen in this frame, else an empty text.
std::string metal_field(Ui& ui, const std::string& id, const std::string& slug, float width);

/// What stands in a field in which `words` name a metal by its slug; the words where they name none.
std::string metal_name(const Catalogue& catalogue, const std::string& words);

/// Whether a lot of it is in the workshop's stock.
bool on_shelf(Ui& ui, const std::string& slug);

} // namespace pourbook
