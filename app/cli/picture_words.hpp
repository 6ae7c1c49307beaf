// The words of a picture: into which file, how large, on what ground; and the way from a chart to the file.
#pragma once

#include "charts/canvas.hpp"
#include "cli/context.hpp"

#include <functional>
#include <string>

namespace pourbook {

struct PictureWords {
    std::string to, format, size, caption, ground = "solid";
    double scale = 0; // 0: what suits the size
    bool light = false, dark = false, caption_line = false;
};

void with_picture_words(CLI::App* command, PictureWords& words);

/// Lays the chart out, writes the file, prints the caption line where it is asked for. Returns the exit code.
int answer_picture(const Context& context, const Catalogue& catalogue, const PictureWords& words,
                   const std::function<Scene(const Canvas&)>& chart);

} // namespace pourbook
