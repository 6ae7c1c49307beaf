// Pieces of the workshop's bench (trials.cpp): what is open in the form, and the grids of what is kept.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

EntryDesk& entry_desk(Ui& ui);
/// The form of an entry that is not there yet.
Entry fresh_entry(Ui& ui, const Kind& kind);
void open_entry(Ui& ui, const Kind& kind, const Entry& entry);
/// The first entry of a kind, or an empty form.
void open_kind(Ui& ui, const Kind& kind);

/// The fields of what is open, and the buttons that keep it.
void draw_entry_form(Ui& ui, const Kind& kind);

/// The same text as the kind keeps it: a name as people write it becomes one that commands can name.
std::string as_kept(const Field& field, const std::string& typed);

/// Keeps the entry at once, so that it can be undone. Empty, or why it can't be kept.
std::string keep_now(Ui& ui, const Kind& kind, const Entry& entry, const Entry& as_opened);
std::string remove_now(Ui& ui, const Kind& kind, const Entry& as_opened);

/// All entries of the kind, a row each, every cell kept when it is left; the last row adds one. `height` in pixels.
void draw_grid(Ui& ui, const Kind& kind, float height);

} // namespace pourbook
