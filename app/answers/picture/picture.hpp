// A Scene as a picture file: PNG, SVG or PDF, drawn by cairo with the letters of the window. The same scene and date
// give the same bytes.
#pragma once

#include "charts/scene.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace pourbook {

enum class PictureFormat { png, svg, pdf };

/// By the ending of the name. Errors: unreadable, naming the three.
Result<PictureFormat> picture_format(const std::string& file);

struct PictureLook {
    double scale = 1; // pixels of a PNG, or units of an SVG or PDF, to a point of the scene
    Colour ground;    // alpha 0: see-through
    std::string title;
    std::string date; // of the PDF, "2026-11-25"
};

/// Errors: no_value (a font is missing), refused (too large to draw).
Result<std::string> picture_of(const Scene& scene, PictureFormat format, const PictureLook& look);

/// Red, green, blue and alpha of each pixel (rounded up, width and height of the scene times the scale), row by row
/// from the top, not multiplied by alpha. Errors as picture_of.
Result<std::vector<std::uint8_t>> pixels_of(const Scene& scene, const PictureLook& look = {1, {0, 0, 0, 0}, "", ""});

} // namespace pourbook
