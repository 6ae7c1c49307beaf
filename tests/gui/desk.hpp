// The window's content without a window: frames on demand, a pointer and keys set by hand.
#pragma once

#include "gui/panels/panels.hpp"
#include "support/small_catalogue.hpp"

#include <string>

namespace pourbook::testing {

class Desk {
public:
    explicit Desk(const Catalogue& catalogue, double width = 1440, double height = 900, float scale = 1,
                  Workshop* workshop = nullptr);
    explicit Desk(const Catalogue&& would_dangle) = delete;
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    /// Draws this many frames.
    void frames(int count = 3);
    /// Frames until no answer is being worked out, then a few more.
    void settle();

    bool shows(const std::string& id) const { return ui.probe.items().count(id) > 0; }
    /// The text of what a probe recorded; fails the test where it isn't on screen.
    std::string text(const std::string& id) const;

    void point_at(const std::string& id);
    void click(const std::string& id);
    void type(const std::string& words);
    /// Types these words in place of what the field holds, and Return.
    void fill(const std::string& field, const std::string& words);
    /// A key of the window library (letters as in ASCII), held for a frame.
    void press(int key, bool ctrl = false);
    void tap(ImGuiKey key) { press(ImGui::GetKeyIndex(key)); }

    Session session;
    Ui ui;
};

} // namespace pourbook::testing
