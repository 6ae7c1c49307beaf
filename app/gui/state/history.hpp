// Earlier view states, for undo and redo.
#pragma once

#include "gui/state/view_state.hpp"

namespace pourbook {

class History {
public:
    explicit History(const ViewState& start) : states_{{start}} {}

    /// Call once a frame with the committed state; true where it differs from the last one noted.
    bool note(const ViewState& view) {
        if (view == states_[at_].view) return false;
        push({view});
        return true;
    }
    /// The workshop's file was changed in this window: undo takes that back in its turn.
    void note_file(const ViewState& view) { push({view, true}); }

    bool can_undo() const { return at_ > 0; }
    /// What comes next is a change of the file, not of a choice.
    bool undoes_file() const { return at_ > 0 && states_[at_].of_file; }
    bool redoes_file() const { return at_ + 1 < states_.size() && states_[at_ + 1].of_file; }

    const ViewState& undo() { return states_[at_ > 0 ? --at_ : 0].view; }
    const ViewState& redo() { return states_[at_ + 1 < states_.size() ? ++at_ : at_].view; }

private:
    struct Step {
        ViewState view;
        bool of_file = false;
    };
    void push(Step step) {
        states_.resize(at_ + 1, step);
        states_.push_back(std::move(step));
        if (states_.size() > most) states_.erase(states_.begin());
        at_ = states_.size() - 1;
    }

    static constexpr std::size_t most = 200;
    std::vector<Step> states_;
    std::size_t at_ = 0;
};

} // namespace pourbook
