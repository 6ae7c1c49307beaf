// A picture's frame for a video or a sheet: its shape, how many points a layout gets, how many pixels that makes.
// Letters are a fixed size in points, so fewer points are larger letters: in a video's frame the smallest are 1/43 of
// the height, which a phone still shows.
#pragma once

#include "charts/canvas.hpp"

#include <array>
#include <functional>
#include <string>

namespace pourbook {

/// What lays a picture out for any canvas.
using SceneMaker = std::function<Scene(const Canvas&)>;

enum class FrameShape { wide, tall, square, sheet }; // 16:9, 9:16, 1:1, A4 upright
constexpr std::array<const char*, 4> frame_names = {"16:9", "9:16", "1:1", "sheet"};

struct PictureWish {
    FrameShape shape = FrameShape::wide;
    int lines = 1080; // pixels of the shorter side: 1080, 1440, 2160
    bool dark = true;
    bool clear = false; // nothing behind the picture
    std::string title;  // in place of the picture's own; empty: its own
    std::string credit; // at the foot; empty: none
    bool operator==(const PictureWish&) const = default;
};

struct FrameSize {
    double width, height; // points
    double scale;         // pixels to a point
};

FrameSize frame_size(FrameShape shape, int lines);

/// The picture laid out for the frame. `source_name`, `date` and `marks` as of a Canvas.
Scene framed(const SceneMaker& make, const PictureWish& wish, const TextMeasure& measure, const std::string& date,
             const std::function<std::string(const std::string&)>& source_name, const Marks* marks = nullptr);

} // namespace pourbook
