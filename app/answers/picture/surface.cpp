#include "answers/picture/surface.hpp"

#include <cairo-pdf.h>

namespace pourbook {

cairo_status_t append_bytes(void* to, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

Surface pdf_surface(double width_pt, double height_pt, const std::string& title, const std::string& date,
                    std::string& bytes) {
    Surface pdf(cairo_pdf_surface_create_for_stream(append_bytes, &bytes, width_pt, height_pt));
    const std::string day = date.empty() ? "1970-01-01" : date;
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_TITLE, title.c_str());
    cairo_pdf_surface_set_metadata(pdf.get(), CAIRO_PDF_METADATA_CREATE_DATE, (day + "T00:00:00Z").c_str());
    return pdf;
}

std::optional<Problem> finish(cairo_surface_t* surface, const char* what) {
    cairo_surface_finish(surface);
    const cairo_status_t status = cairo_surface_status(surface);
    if (status == CAIRO_STATUS_SUCCESS) return std::nullopt;
    return Problem{Problem::Kind::refused, std::string(what) + " can't be drawn: " + cairo_status_to_string(status), 0};
}

} // namespace pourbook
