// The view state in a small JSON file, replaced as a whole so that a crash never leaves half of it.
#pragma once

#include "core/result.hpp"
#include "gui/state/view_state.hpp"

#include <optional>

namespace pourbook {

/// A file that isn't there gives `start`. Errors: unreadable (damaged file), with its name.
Result<ViewState> read_view(const std::string& file, const ViewState& start);

/// Errors: refused, with the file's name and why.
std::optional<Problem> write_view(const std::string& file, const ViewState& view);

} // namespace pourbook
