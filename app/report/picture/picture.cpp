#include "report/picture/picture.hpp"

#include "report/picture/cairo_pen.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <memory>

namespace pourbook {
namespace {

constexpr double most_pixels_a_side = 20000;

struct Free {
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_t* c) const { cairo_destroy(c); }
};
using Surface = std::unique_ptr<cairo_surface_t, Free>;

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

Surface surface_for(PictureFormat format, double width, double height, const PictureLook& look, std::string& bytes) {
    if (format == PictureFormat::png)
        return Surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, static_cast<int>(std::lround(width)),
                                                  static_cast<int>(std::lround(height))));
    if (format == PictureFormat::svg) {
        Surface svg(cairo_svg_surface_create_for_stream(append, &bytes, width, height));
        cairo_svg_surface_set_document_unit(svg.get(), CAIRO_SVG_UNIT_PX);
        return svg;
    }
    Surface pdf(cairo_pdf_surface_create_for_stream(append, &bytes, width, height));
    const std::string day = look.date.empty() ? "1970-01-01" : look.date; // never the clock's time
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_TITLE, look.title.c_str());
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_CREATE_DATE, (day + "T00:00:00Z").c_str());
    return pdf;
}

void paint(const Scene& scene, const Letters& letters, const PictureLook& look, cairo_surface_t* surface) {
    const std::unique_ptr<cairo_t, Free> context(cairo_create(surface));
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
    if (format == PictureFormat::png) cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
    cairo_surface_finish(surface.get());
    const cairo_status_t status = cairo_surface_status(surface.get());
    if (status != CAIRO_STATUS_SUCCESS)
        return Problem{Problem::Kind::refused,
                       std::string("the picture can't be drawn: ") + cairo_status_to_string(status), 0};
    if (format == PictureFormat::svg) drop_number(bytes);
    return bytes;
}

} // namespace pourbook
