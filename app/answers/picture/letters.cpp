#include "answers/picture/letters.hpp"

#include "answers/picture/font_files.hpp"

#include <cairo-ft.h>

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_ADVANCES_H

#include <algorithm>

namespace pourbook {
namespace {

constexpr std::size_t signs_face = 2;

std::size_t face_of(TextStyle style) {
    return style == TextStyle::label ? 0 : 1;
}

/// The next sign of UTF-8 text; a byte that starts none stands for the replacement character.
char32_t next_sign(const std::string& text, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(at++);
    if (first < 0x80) return first;
    const std::size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC0 ? 1 : 0;
    char32_t sign = first & (0x3FU >> more);
    for (std::size_t i = 0; i < more; ++i, ++at) {
        if (at >= text.size() || (byte(at) & 0xC0) != 0x80) return U'\uFFFD';
        sign = (sign << 6) | (byte(at) & 0x3FU);
    }
    return more > 0 ? sign : U'\uFFFD';
}

/// Arrows, signs of arithmetic and plain shapes, as the window draws them.
bool is_sign(char32_t sign) {
    return (sign >= 0x2190 && sign <= 0x22FF) || (sign >= 0x25A0 && sign <= 0x25FF);
}

double units_per_em(const FT_Face& face) {
    return static_cast<double>(face->units_per_EM);
}

} // namespace

Letters::Glyph Letters::find(char32_t sign, TextStyle style) const {
    const std::size_t own = face_of(style);
    const FT_UInt letter = is_sign(sign) ? 0 : FT_Get_Char_Index(faces_[own].file, sign);
    if (letter > 0) return {own, letter, 0, text_size(style)};
    return {signs_face, FT_Get_Char_Index(faces_[signs_face].file, sign), 0, text_size(style) * sign_size};
}

double Letters::advance(const Glyph& glyph) const {
    const FT_Face face = faces_[glyph.face].file;
    FT_Fixed units = 0;
    FT_Get_Advance(face, static_cast<FT_UInt>(glyph.index), FT_LOAD_NO_SCALE, &units);
    return static_cast<double>(units) / units_per_em(face) * glyph.em;
}

Letters::Laid Letters::lay(const std::string& text, TextStyle style) const {
    Laid out;
    for (std::size_t at = 0; at < text.size();) {
        Glyph glyph = find(next_sign(text, at), style);
        glyph.x = out.width;
        out.width += advance(glyph);
        out.glyphs.push_back(glyph);
    }
    return out;
}

double Letters::width(const std::string& text, TextStyle style) const {
    return lay(text, style).width;
}

std::vector<Letters::Glyph> Letters::glyphs(const std::string& text, TextStyle style) const {
    return lay(text, style).glyphs;
}

bool Letters::covers(const std::string& text) const {
    const std::vector<Glyph> all = glyphs(text, TextStyle::label);
    return std::all_of(all.begin(), all.end(), [](const Glyph& g) { return g.index > 0; });
}

double Letters::baseline(TextStyle style) const {
    const FT_Face face = faces_[face_of(style)].file;
    return (face->ascender + face->descender) / 2.0 / units_per_em(face) * text_size(style);
}

Result<const Letters*> letters() {
    static const Result<const Letters*> loaded = []() -> Result<const Letters*> {
        FT_Library library = nullptr;
        if (FT_Init_FreeType(&library) != 0) return Problem{Problem::Kind::no_value, "the fonts can't be drawn", 0};
        static Letters kept; // cairo holds on to the faces, so they are never given back
        const std::array files = {font_files::regular, font_files::semi_bold, font_files::signs};
        for (std::size_t i = 0; i < files.size(); ++i) {
            const Result<std::string> path = path_of(files[i]);
            if (!path) return path.problem();
            FT_Face face = nullptr;
            if (FT_New_Face(library, path->c_str(), 0, &face) != 0)
                return no_value("font " + *path + " can't be read: install " + files[i].package + " again");
            kept.faces_[i] = {face, cairo_ft_font_face_create_for_ft_face(face, 0)};
        }
        return &kept;
    }();
    return loaded;
}

} // namespace pourbook
