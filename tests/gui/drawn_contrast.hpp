// How far each text of the frame drawn last stands out from what lies behind it, read back from what goes to the
// graphics card: whatever colours were chosen, these were drawn.
#pragma once

#include "charts/scene.hpp"

#include <string>
#include <vector>

namespace pourbook::testing {

/// Relative luminance and contrast ratio as defined by the Web Content Accessibility Guidelines 2.1 (W3C, 2018).
double contrast(Colour a, Colour b);

struct DrawnText {
    std::string words;
    Colour ink, behind;
    double contrast = 0;
};

/// Of every text, the middle one of three spots across its first letter; `ground`: what the frame is cleared with.
std::vector<DrawnText> drawn_texts(Colour ground);

} // namespace pourbook::testing
