// Colours of charts and window, dark and light. The eight of the series are the set of Okabe and Ito (Color Universal
// Design, 2008), made to be told apart with any colour vision; black becomes grey so that it shows on both grounds.
#pragma once

#include "charts/scene.hpp"

#include <array>
#include <cstddef>

namespace pourbook {

struct Palette {
    Colour ground;  // behind everything
    Colour raised;  // panels, fields
    Colour pressed; // hovered and held
    Colour line;    // borders, grid
    Colour ink;
    Colour dim; // secondary text
    Colour accent;
    Colour warning;
    Colour tied;  // not told apart from the best
    Colour other; // the rest of a ranking

    static constexpr std::array<Colour, 8> series = {
        Colour{0x56, 0xB4, 0xE9}, Colour{0xE6, 0x9F, 0x00}, Colour{0x00, 0x9E, 0x73}, Colour{0xCC, 0x79, 0xA7},
        Colour{0xD5, 0x5E, 0x00}, Colour{0x00, 0x72, 0xB2}, Colour{0xF0, 0xE4, 0x42}, Colour{0x99, 0x99, 0x99}};
    /// The same metal keeps its colour in every view: by its place among the pinned.
    static constexpr Colour of_slot(std::size_t slot) { return series[slot % series.size()]; }
};

const Palette& palette(bool dark);

} // namespace pourbook
