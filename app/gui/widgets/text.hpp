// Small pieces every panel uses.
#pragma once

#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

void text(const std::string& words);
void dim_text(const Ui& ui, const std::string& words);
void small_dim_text(const Ui& ui, const std::string& words);
/// Sentences, in lines as wide as the window and as the window says it (state/window_words.hpp): ±, kg/m³, no options.
void wrapped_text(const std::string& words, Colour colour);
/// Broken into lines this wide at blanks alone, in the font at hand; the toolkit by itself would break a figure behind
/// its point, or before its unit. Words without a figure stay as they are.
std::string in_lines(const std::string& words, float width);
void heading(const Ui& ui, const std::string& words);
void warning_text(const Ui& ui, const std::string& words);
/// The words with their end replaced by "…" where they are wider than `width`.
std::string fitted(const std::string& words, float width);
/// As far as the room goes; whoever calls shows the rest on hover.
void fitted_text(const std::string& words);
void small_fitted_text(const Ui& ui, const std::string& words);
/// Right-aligned inside the table cell.
void text_right(const std::string& words);

/// The names of the table's columns, small and dim: the first `left` of them left-aligned, the rest above right-aligned
/// figures.
void header_row(const Ui& ui, int left);

/// A tooltip in the window's own look, beside what the pointer rests on, after a moment. Of the last item.
void hover_text(Ui& ui, const std::string& words);

/// A button that looks like plain text until pointed at; underlined in the accent when `current`.
bool word_button(Ui& ui, const std::string& id, const std::string& words, bool current);

/// The head of what can be folded away, open from the start where the window is wide and tall. True while open.
bool folding_head(const Ui& ui, const std::string& words);

/// Puts the next thing, this wide, on the line of the last one where there is room, else on a line of its own. A gap
/// below 0: the usual one.
void flow(float width, float gap = -1);
float button_width(const std::string& words);

/// A row of two or more words, one of them chosen; of more rows where there is no room. Returns the one clicked, else
/// -1.
int choice(Ui& ui, const std::string& id, const std::vector<std::string>& words, int current);

/// The coloured mark of a pinned metal (hollow when not pinned), as a small button.
bool pin_button(Ui& ui, const std::string& id, const std::string& slug);
/// The same mark without a button, in a line of this height.
void pin_mark(Ui& ui, std::size_t slot, float height);

constexpr double swatch_width = 9; // points
/// A bar of the metal's own colour, as it looks when polished (charts/metal_colour.hpp), in a line of this height.
void metal_swatch(const Ui& ui, const Metal& metal, float height);

} // namespace pourbook
