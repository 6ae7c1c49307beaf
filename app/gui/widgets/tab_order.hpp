// Tab goes through everything that can be used, in the order in which it is drawn, and Shift+Tab back; Ctrl+F6 goes to
// the next panel. What has the focus gets a ring once a key was used. (The toolkit's own Tab knows text fields only.)
#pragma once

#include <string>
#include <vector>

namespace pourbook {

class TabOrder {
public:
    /// Before anything is drawn.
    void begin_frame();
    /// Of each widget, right behind it.
    void pass(const std::string& id);
    /// What was passed before in this frame lies covered, and the key leads only through what follows.
    void cover();
    /// The one with the focus; empty where none has.
    const std::string& focused() const { return focused_; }
    /// All of the frame drawn last, in the order of the key.
    std::vector<std::string> stops() const;

private:
    struct Stop {
        std::string id;
        unsigned panel = 0;
    };
    void seek(int steps, bool by_panel);
    void draw_ring() const;

    std::vector<Stop> stops_, before_; // of this frame and the last
    std::string focused_, wanted_;
    bool by_keys_ = false;
};

/// Return presses what has the focus, as Space does. Between the backend's new frame and the toolkit's.
void let_return_press();

} // namespace pourbook
