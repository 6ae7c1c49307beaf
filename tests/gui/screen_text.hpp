// The letters of the frame drawn last, read back from what goes to the graphics card.
#pragma once

#include <imgui.h>

#include <string>
#include <vector>

namespace pourbook::testing {

struct Letter {
    std::string sign; // UTF-8
    ImVec2 low, high;
    ImVec4 clip; // what of it is seen lies in here: left, top, right, bottom
};

/// As they were drawn, each run of one text.
std::vector<std::vector<Letter>> texts_on_screen();

std::string words_of(const std::vector<Letter>& text);

} // namespace pourbook::testing
