// A text input that keeps what is typed apart from the committed value: only text that can be read is committed (on
// Return or on leaving the field); a fault is shown at the field and the earlier value stays in force.
#pragma once

#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>
#include <string_view>

namespace pourbook {

/// `fault` gives why a text can't be committed, empty where it can. Returns true when a new value was committed.
/// `shown` stands in the field while nobody writes in it, such as a metal's name in place of its short one.
bool text_field(Ui& ui, const std::string& id, std::string& committed, const char* hint, float width,
                const std::function<std::string(const std::string&)>& fault, const std::string& shown = "");

/// A hint as far as it can be read in an empty field of this width.
std::string fitted_hint(const std::string& hint, float width);

/// A list to choose from, `width` pixels wide, that shows what is chosen. True while it is open: then end it.
bool begin_combo(const std::string& id, const std::string& shown, float width);
void end_combo();

/// Where the text can't be read: what is answered is not what stands in the field (widgets/stale.hpp).
void note_field(Ui& ui, const Draft& draft);

/// The field's fault, to be drawn beside or below it; empty without one.
const std::string& field_fault(Ui& ui, std::string_view id);

/// The name of a field in front of it, `width` points wide, with what it means on hover; the field follows in the line.
void field_label(Ui& ui, const char* words, const std::string& help, double width);

/// The field's fault as a line of its own, where there is one.
void fault_line(Ui& ui, const std::string& id);
void fault_line(Ui& ui, const std::string& id, const std::string& fault);

} // namespace pourbook
