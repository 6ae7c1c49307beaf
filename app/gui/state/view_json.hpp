// What is chosen in the window as JSON, for the state file and for links. Fields by their names in ViewState.
#pragma once

#include "gui/state/view_state.hpp"

#include <nlohmann/json.hpp>

#include <string>

namespace pourbook {

nlohmann::json json_of(const ViewState& view);

struct ReadView {
    ViewState view;
    std::string odd; // names of fields that can't be read, separated by ", "
};

/// `start` with each field of `from` that can be read.
ReadView view_from(const nlohmann::json& from, const ViewState& start);

} // namespace pourbook
