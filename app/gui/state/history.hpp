// Earlier view states, for undo and redo.
#pragma once

#include "gui/state/view_state.hpp"

namespace pourbook {

class History {
public:
    explicit History(const ViewState& start) : states_{start} {}

    /// Call once a frame with the committed state; true where it differs from the last one noted.
    bool note(const ViewState& view) {
        if (view == states_[at_]) return false;
        states_.resize(at_ + 1);
        states_.push_back(view);
        if (states_.size() > most) states_.erase(states_.begin());
        at_ = states_.size() - 1;
        return true;
    }

    const ViewState& undo() { return states_[at_ > 0 ? --at_ : 0]; }
    const ViewState& redo() { return states_[at_ + 1 < states_.size() ? ++at_ : at_]; }

private:
    static constexpr std::size_t most = 200;
    std::vector<ViewState> states_;
    std::size_t at_ = 0;
};

} // namespace pourbook
