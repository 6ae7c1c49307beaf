#include "answers/picture/cairo_pen.hpp"

#include <cairo.h>

#include <algorithm>
#include <numbers>
#include <vector>

namespace pourbook {
namespace {

constexpr std::array dashes = {6.0, 4.0};

class ScenePen {
public:
    ScenePen(cairo_t* context, const Letters& letters) : to_(context), letters_(letters) {
        cairo_set_line_join(to_, CAIRO_LINE_JOIN_ROUND);
    }

    void operator()(const Polyline& p) {
        trace(p.spots);
        ink(p.colour);
        cairo_set_line_width(to_, p.width);
        if (p.dashed) cairo_set_dash(to_, dashes.data(), static_cast<int>(dashes.size()), 0);
        cairo_stroke(to_);
        cairo_set_dash(to_, nullptr, 0, 0);
    }

    void operator()(const Polygon& p) {
        trace(p.spots);
        fill(p.fill);
    }

    void operator()(const Band& b) {
        std::vector<Spot> around = b.upper;
        around.insert(around.end(), b.lower.rbegin(), b.lower.rend());
        trace(around);
        fill(b.fill);
    }

    void operator()(const Rectangle& r) {
        cairo_rectangle(to_, r.box.x, r.box.y, r.box.width, r.box.height);
        fill(r.fill);
    }

    void operator()(const Circle& c) {
        cairo_new_path(to_);
        cairo_arc(to_, c.centre.x, c.centre.y, c.radius, 0, 2 * std::numbers::pi);
        if (c.width <= 0) return fill(c.colour);
        ink(c.colour);
        cairo_set_line_width(to_, c.width);
        cairo_stroke(to_);
    }

    void operator()(const Text& t) {
        const double width = letters_.width(t.text, t.style);
        const double shift = t.anchor == Anchor::start ? 0 : t.anchor == Anchor::middle ? width / 2 : width;
        const double x = t.at.x - shift, y = t.at.y + letters_.baseline(t.style);
        const std::vector<Letters::Glyph> glyphs = letters_.glyphs(t.text, t.style);
        ink(t.colour);
        for (auto run = glyphs.begin(); run != glyphs.end();) { // a run of letters from one face
            const auto end =
                std::find_if(run, glyphs.end(), [&](const Letters::Glyph& g) { return g.face != run->face; });
            std::vector<cairo_glyph_t> drawn;
            for (auto g = run; g != end; ++g) drawn.push_back({g->index, x + g->x, y});
            cairo_set_font_face(to_, letters_.cairo_face(run->face));
            cairo_set_font_size(to_, run->em);
            cairo_show_glyphs(to_, drawn.data(), static_cast<int>(drawn.size()));
            run = end;
        }
    }

    void operator()(const ClipTo& c) {
        cairo_save(to_);
        cairo_rectangle(to_, c.box.x, c.box.y, c.box.width, c.box.height);
        cairo_clip(to_);
    }
    void operator()(const ClipEnd&) { cairo_restore(to_); }

private:
    void trace(const std::vector<Spot>& spots) {
        cairo_new_path(to_);
        for (const Spot& s : spots) cairo_line_to(to_, s.x, s.y);
    }

    void ink(Colour c) {
        constexpr double top = 255;
        cairo_set_source_rgba(to_, c.red / top, c.green / top, c.blue / top, c.alpha / top);
    }

    void fill(Colour c) {
        ink(c);
        cairo_fill(to_);
    }

    cairo_t* to_;
    const Letters& letters_;
};

/// Letters keep their shape and place at every size.
void without_hinting(cairo_t* context) {
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_set_font_options(context, options);
    cairo_font_options_destroy(options);
}

} // namespace

void draw(const Scene& scene, const Letters& letters, _cairo* context) {
    without_hinting(context);
    ScenePen pen(context, letters);
    for (const Primitive& p : scene.parts) std::visit(pen, p);
}

} // namespace pourbook
