// One hand for the whole window: sizes of letters, distances and radii in points, the only place where they are chosen.
#pragma once

namespace pourbook::theme {

// Letters: a step is about a quarter larger than the one before. Answers are large, what is beside them is body, where
// it comes from is small.
constexpr float small_letter = 12.5F, body_letter = 15, large_letter = 19, clock_letter = 34;

// Distances: within a thing, between things, between groups, around a page.
constexpr float hair = 1, tight = 4, near = 8, apart = 14, wide = 24;

constexpr float radius = 4;

// A narrow window, in points of its width (a phone has 360 to 430 upright, a tablet 770 to 1030; side by side the views
// need 1240): one thing stands below another, as high as a finger needs. A row of body letters with this padding is 32
// high.
constexpr float narrow_below = 1240, touch_padding = 7, touch_button = 40;

} // namespace pourbook::theme
