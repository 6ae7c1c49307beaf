#include "charts/frame.hpp"

#include "charts/place_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double video_height = 540;                    // points: letters of 12.5 are 1/43 of it
constexpr double sheet_width = 595, sheet_height = 842; // A4 in points of print

} // namespace

FrameSize frame_size(FrameShape shape, int lines) {
    FrameSize size{video_height, video_height, 1};
    if (shape == FrameShape::wide) size.width = video_height * 16 / 9;
    if (shape == FrameShape::tall) size.width = video_height * 9 / 16;
    if (shape == FrameShape::sheet) size = {sheet_width, sheet_height, 1};
    size.scale = lines / std::min(size.width, size.height);
    return size;
}

Scene framed(const SceneMaker& make, const PictureWish& wish, const TextMeasure& measure, const std::string& date,
             const std::function<std::string(const std::string&)>& source_name, const Marks* marks) {
    const FrameSize size = frame_size(wish.shape, wish.lines);
    const Palette& colours = palette(wish.dark);
    const double strip = wish.credit.empty() ? 0 : label_line;
    Canvas canvas{size.width, size.height - strip, colours, measure, date, source_name};
    canvas.marks = marks;
    canvas.title = wish.title;
    Scene scene = make(canvas);
    scene.width = size.width;
    scene.height = size.height;
    if (!wish.credit.empty())
        scene.parts.push_back(Text{{size.width - chart_margin, size.height - chart_margin / 2 - label_line / 2},
                                   shortened(wish.credit, size.width - 2 * chart_margin, TextStyle::label, measure),
                                   colours.dim,
                                   Anchor::end});
    return scene;
}

} // namespace pourbook
