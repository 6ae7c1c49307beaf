// Opens the view that a question asks for, with what was read filled in. No drawing here.
#pragma once

#include "gui/state/session.hpp"

namespace pourbook {

/// A question that was read; the view then stands at the temperature that the question names, else at 20 degC, as its
/// sentence does.
void open_question(Session& session, const QuestionRead& read);

/// An entry of what Ask found.
void open_entry(Session& session, const AskFound& found, const AskEntry& entry);

} // namespace pourbook
