// The view state in a small JSON file, replaced as a whole so that a crash never leaves half of it.
#pragma once

#include "core/result.hpp"
#include "gui/state/view_state.hpp"

#include <optional>
#include <string>

namespace pourbook {

struct KeptView {
    ViewState view;
    std::string remark; // what could not be read, in which file; empty: all of it could
};

/// A file that isn't there gives `start`; a field that can't be read is as in `start`, and the file is kept beside it
/// as FILE.unreadable.
KeptView read_view(const std::string& file, const ViewState& start);

/// Errors: refused, with the file's name and why.
std::optional<Problem> write_view(const std::string& file, const ViewState& view);

/// The same in Rank and without parts that are read from files: what a window starts with that ended badly.
ViewState without_files(ViewState view);

} // namespace pourbook
