// A cairo surface that writes into a string, for whoever draws with it.
#pragma once

#include "core/result.hpp"

#include <cairo.h>

#include <memory>
#include <optional>
#include <string>

namespace pourbook {

struct FreeCairo {
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_t* c) const { cairo_destroy(c); }
};
using Surface = std::unique_ptr<cairo_surface_t, FreeCairo>;
using Pen = std::unique_ptr<cairo_t, FreeCairo>;

/// For cairo's streams: `to` is a std::string.
cairo_status_t append_bytes(void* to, const unsigned char* bytes, unsigned int count);

/// A PDF; `date` "2026-11-25" stands in its description, never the clock's time: the same drawing gives the same bytes.
Surface pdf_surface(double width_pt, double height_pt, const std::string& title, const std::string& date,
                    std::string& bytes);

/// Ends the drawing. Errors: refused, with cairo's reason; `what` is drawn: "the picture".
std::optional<Problem> finish(cairo_surface_t* surface, const char* what);

} // namespace pourbook
