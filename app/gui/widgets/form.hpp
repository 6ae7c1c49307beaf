// A form drawn from the table of a question's fields, so that the window asks for all that the command line does.
#pragma once

#include "gui/widgets/ui.hpp"
#include "questions/fields.hpp"

namespace pourbook {

/// The fields that stand in this part of the form, one in a line, names `label_width` points wide. A text is kept only
/// where it can be read; its fault stands below the field, under the probe "question.field.fault".
void draw_form(Ui& ui, Stated& stated, const std::string& place, double label_width);

/// One of them.
void draw_form_field(Ui& ui, Stated& stated, const QuestionField& field, double label_width);

} // namespace pourbook
