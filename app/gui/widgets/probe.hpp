// What a test can see of the window, and the Tab key: the places of visible widgets and the texts shown, fresh each
// frame.
#pragma once

#include "gui/widgets/tab_order.hpp"

#include <map>
#include <string>

namespace pourbook {

class Probe {
public:
    struct Item {
        double x = 0, y = 0, width = 0, height = 0; // window coordinates; width 0: only text
        std::string text;
    };

    bool on = false; // off: nothing is recorded
    TabOrder tab;    // goes through what is told here
    void begin_frame() {
        items_.clear();
        tab.begin_frame();
    }
    /// The last ImGui item, where it is visible and can be hit; `text` is what it shows.
    void item(const std::string& id, const std::string& text = {});
    void box(const std::string& id, Item item);
    void say(const std::string& id, const std::string& text);
    const std::map<std::string, Item>& items() const { return items_; }

private:
    std::map<std::string, Item> items_;
};

} // namespace pourbook
