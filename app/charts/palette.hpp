// Colours of charts and window, dark and light. The eight of the series follow the set of Okabe and Ito (Color
// Universal Design, 2008), made to be told apart with any colour vision; black becomes grey, and each is as light or as
// dark as its ground asks: graphics stand out 3:1, texts 4.5:1 (Web Content Accessibility Guidelines 2.1, 1.4.3
// and 1.4.11).
#pragma once

#include "charts/scene.hpp"

#include <array>
#include <cstddef>

namespace pourbook {

struct Palette {
    Colour ground;  // behind everything
    Colour raised;  // panels, fields
    Colour pressed; // hovered and held
    Colour line;    // grid, what parts two areas
    Colour edge;    // borders of what can be used, empty rings
    Colour ink;
    Colour dim; // secondary text
    Colour accent;
    Colour warning;
    Colour other; // a metal without a mark of its own
    std::array<Colour, 8> series;

    /// Of a metal's mark (charts/marker.hpp).
    Colour of_slot(std::size_t slot) const { return series[slot % series.size()]; }
};

const Palette& palette(bool dark);

} // namespace pourbook
