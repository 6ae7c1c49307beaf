// A page (answers/writers/page.hpp) laid out on A4: the plan on the front, shop notes and sources on the back. Text is
// set as small as it must be to fit, down to a limit below which a third side follows.
#pragma once

#include "answers/writers/page.hpp"
#include "charts/scene.hpp"

#include <vector>

namespace pourbook {

/// Part of a side; its own points are `scale` points of the paper.
struct PageLayer {
    double scale = 1;
    Scene scene;
};
using PageSide = std::vector<PageLayer>;

constexpr double paper_width_pt = 595.28, paper_height_pt = 841.89; // A4 (ISO 216), 210 x 297 mm

std::vector<PageSide> lay_out(const Page& page, const TextMeasure& measure);

} // namespace pourbook
