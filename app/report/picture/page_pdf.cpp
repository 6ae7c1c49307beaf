#include "report/picture/page_pdf.hpp"

#include "report/picture/cairo_pen.hpp"
#include "report/picture/page_layout.hpp"

#include <cairo-pdf.h>
#include <cairo.h>

#include <memory>

namespace pourbook {
namespace {

struct Free {
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_t* c) const { cairo_destroy(c); }
};

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace

Result<std::string> page_pdf(const Page& page, const std::string& date) {
    const Result<const Letters*> found = letters();
    if (!found) return found.problem();
    std::string bytes;
    const std::unique_ptr<cairo_surface_t, Free> pdf(
        cairo_pdf_surface_create_for_stream(append, &bytes, paper_width_pt, paper_height_pt));
    const std::string day = date.empty() ? "1970-01-01" : date; // never the clock's time
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_TITLE, page.title.c_str());
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_CREATE_DATE, (day + "T00:00:00Z").c_str());
    const std::unique_ptr<cairo_t, Free> context(cairo_create(pdf.get()));
    for (const PageSide& side : lay_out(page, **found)) {
        for (const PageLayer& layer : side) {
            cairo_save(context.get());
            cairo_scale(context.get(), layer.scale, layer.scale);
            draw(layer.scene, **found, context.get());
            cairo_restore(context.get());
        }
        cairo_show_page(context.get());
    }
    cairo_surface_finish(pdf.get());
    const cairo_status_t status = cairo_surface_status(pdf.get());
    if (status != CAIRO_STATUS_SUCCESS)
        return Problem{Problem::Kind::refused,
                       std::string("the page can't be drawn: ") + cairo_status_to_string(status), 0};
    return bytes;
}

} // namespace pourbook
