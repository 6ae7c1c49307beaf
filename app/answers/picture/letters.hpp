// The letters of pictures: Inter, and DejaVu Sans for arrows, signs of arithmetic, plain shapes and whatever Inter
// lacks. Widths come from the font files unhinted, so a picture is the same at any size.
#pragma once

#include "charts/scene.hpp"
#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

struct FT_FaceRec_;
struct _cairo_font_face;

namespace pourbook {

class Letters : public TextMeasure {
public:
    /// One letter where it goes: points from the start of the text.
    struct Glyph {
        std::size_t face = 0;
        unsigned long index = 0; // in that face; 0: nobody has it, an empty box is drawn
        double x = 0, em = 0;
    };

    double width(const std::string& text, TextStyle style) const override;
    std::vector<Glyph> glyphs(const std::string& text, TextStyle style) const;
    bool covers(const std::string& text) const;
    _cairo_font_face* cairo_face(std::size_t face) const { return faces_.at(face).cairo; }
    /// From the middle of a line down to the feet of its letters, in points.
    double baseline(TextStyle style) const;

private:
    friend Result<const Letters*> letters();
    struct Face {
        FT_FaceRec_* file = nullptr;
        _cairo_font_face* cairo = nullptr;
    };
    struct Laid {
        std::vector<Glyph> glyphs;
        double width = 0;
    };
    Laid lay(const std::string& text, TextStyle style) const;
    Glyph find(char32_t sign, TextStyle style) const;
    double advance(const Glyph& glyph) const;

    std::array<Face, 3> faces_; // by TextStyle, then signs
};

/// Loaded once and kept until the program ends; for one thread at a time.
/// Errors: no_value, naming the missing file and its package.
Result<const Letters*> letters();

} // namespace pourbook
