#include "answers/picture/page_pdf.hpp"

#include "answers/picture/cairo_pen.hpp"
#include "answers/picture/page_layout.hpp"
#include "answers/picture/surface.hpp"

namespace pourbook {
Result<std::string> page_pdf(const Page& page, const std::string& date) {
    const Result<const Letters*> found = letters();
    if (!found) return found.problem();
    std::string bytes;
    const Surface pdf = pdf_surface(paper_width_pt, paper_height_pt, page.title, date, bytes);
    const Pen context(cairo_create(pdf.get()));
    for (const PageSide& side : lay_out(page, **found)) {
        for (const PageLayer& layer : side) {
            cairo_save(context.get());
            cairo_scale(context.get(), layer.scale, layer.scale);
            draw(layer.scene, **found, context.get());
            cairo_restore(context.get());
        }
        cairo_show_page(context.get());
    }
    if (const auto problem = finish(pdf.get(), "the page")) return *problem;
    return bytes;
}

} // namespace pourbook
