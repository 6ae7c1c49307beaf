#include "answers/picture/picture.hpp"

#include "answers/picture/cairo_pen.hpp"
#include "answers/picture/surface.hpp"

#include <cairo-svg.h>

#include <algorithm>
#include <cmath>
#include <cstring>

namespace pourbook {
namespace {

constexpr double most_pixels_a_side = 20000;

Surface surface_for(PictureFormat format, double width, double height, const PictureLook& look, std::string& bytes) {
    if (format == PictureFormat::png)
        return Surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, static_cast<int>(std::lround(width)),
                                                  static_cast<int>(std::lround(height))));
    if (format == PictureFormat::svg) {
        Surface svg(cairo_svg_surface_create_for_stream(append_bytes, &bytes, width, height));
        cairo_svg_surface_set_document_unit(svg.get(), CAIRO_SVG_UNIT_PX);
        return svg;
    }
    return pdf_surface(width, height, look.title, look.date, bytes);
}

void paint(const Scene& scene, const Letters& letters, const PictureLook& look, cairo_surface_t* surface) {
    const Pen context(cairo_create(surface));
    constexpr double top = 255;
    const Colour& g = look.ground;
    if (g.alpha > 0) {
        cairo_set_source_rgba(context.get(), g.red / top, g.green / top, g.blue / top, g.alpha / top);
        cairo_paint(context.get());
    }
    cairo_scale(context.get(), look.scale, look.scale);
    draw(scene, letters, context.get());
}

/// cairo numbers the surfaces of a process, so that the same picture would differ from the second one on.
void drop_number(std::string& svg) {
    const std::size_t from = svg.find(" id=\"surface");
    const std::size_t to = from == std::string::npos ? from : svg.find('>', from);
    if (to != std::string::npos) svg.erase(from, to - from);
}

} // namespace

Result<PictureFormat> picture_format(const std::string& file) {
    const std::size_t dot = file.find_last_of("./");
    std::string ending = dot == std::string::npos || file[dot] == '/' ? "" : file.substr(dot + 1);
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    if (ending == "png") return PictureFormat::png;
    if (ending == "svg") return PictureFormat::svg;
    if (ending == "pdf") return PictureFormat::pdf;
    return Problem{Problem::Kind::unreadable, "'" + file + "': a picture's name ends in .png, .svg or .pdf", 0};
}

Result<std::string> picture_of(const Scene& scene, PictureFormat format, const PictureLook& look) {
    const Result<const Letters*> found = letters();
    if (!found) return found.problem();
    const double width = scene.width * look.scale, height = scene.height * look.scale;
    if (!(width >= 1 && height >= 1 && width <= most_pixels_a_side && height <= most_pixels_a_side))
        return Problem{Problem::Kind::refused, "a picture has 1 to 20000 pixels a side", 0};
    std::string bytes;
    const Surface surface = surface_for(format, width, height, look, bytes);
    paint(scene, **found, look, surface.get());
    if (format == PictureFormat::png) cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
    if (const auto problem = finish(surface.get(), "the picture")) return *problem;
    if (format == PictureFormat::svg) drop_number(bytes);
    return bytes;
}

Result<std::vector<std::uint8_t>> pixels_of(const Scene& scene, const PictureLook& look) {
    const Result<const Letters*> found = letters();
    if (!found) return found.problem();
    std::string none;
    const Surface surface =
        surface_for(PictureFormat::png, scene.width * look.scale, scene.height * look.scale, look, none);
    paint(scene, **found, look, surface.get());
    cairo_surface_flush(surface.get());
    const int width = cairo_image_surface_get_width(surface.get());
    const int height = cairo_image_surface_get_height(surface.get());
    std::vector<std::uint8_t> out;
    for (int y = 0; y < height; ++y) {
        const unsigned char* row =
            cairo_image_surface_get_data(surface.get()) + y * cairo_image_surface_get_stride(surface.get());
        for (int x = 0; x < width; ++x) {
            std::uint32_t pixel = 0;
            std::memcpy(&pixel, row + 4 * x, sizeof pixel);
            const std::uint32_t alpha = pixel >> 24;
            for (const int shift : {16, 8, 0})
                out.push_back(static_cast<std::uint8_t>(alpha ? ((pixel >> shift) & 0xFF) * 255 / alpha : 0));
            out.push_back(static_cast<std::uint8_t>(alpha));
        }
    }
    if (const auto problem = finish(surface.get(), "the picture")) return *problem;
    return out;
}

} // namespace pourbook
