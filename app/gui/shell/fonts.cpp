#include "gui/shell/fonts.hpp"

#include "answers/picture/font_files.hpp"
#include "gui/widgets/theme.hpp"

#include <imgui_freetype.h>

#include <array>
#include <string>

namespace pourbook {
namespace {

using namespace font_files;

constexpr float line_of_em =
    1.21F; // the atlas counts a font's size from its highest to its lowest part; Inter's is 1.21 em
constexpr float body_size = theme::body_letter * line_of_em, small_size = theme::small_letter * line_of_em,
                large_size = theme::large_letter * line_of_em, clock_size = theme::clock_letter * line_of_em;
constexpr float digit_width = 0.63F / line_of_em; // of Inter's widest figure, and a little air

constexpr std::array<ImWchar, 3> digit_range = {'0', '9', 0};
// Latin with accents (authors' names), Greek, punctuation, raised and lowered figures, currency, letterlike.
constexpr std::array<ImWchar, 15> letter_range = {0x0020, 0x024F, 0x0370, 0x03FF, 0x1E00, 0x1EFF, 0x2000, 0x206F,
                                                  0x2070, 0x209F, 0x20A0, 0x20BF, 0x2100, 0x2126, 0};
constexpr std::array<ImWchar, 5> sign_range = {0x2190, 0x22FF, 0x25A0, 0x25FF, 0};

// The largest letters say names and figures only.
constexpr std::array<ImWchar, 5> short_range = {0x0020, 0x017F, 0x2010, 0x2026, 0};

ImFont* add(const FontFile& font_file, float size, const ImWchar* letter_ranges = letter_range.data()) {
    const std::string file = *path_of(font_file), sign_file = *path_of(signs); // build_fonts has found them

    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    // Figures of one width, so that columns of numbers line up: they go in first, and what is there is not replaced.
    ImFontConfig digits;
    digits.GlyphMinAdvanceX = digits.GlyphMaxAdvanceX = size * digit_width;
    ImFont* font = atlas.AddFontFromFileTTF(file.c_str(), size, &digits, digit_range.data());
    ImFontConfig merged;
    merged.MergeMode = true;
    atlas.AddFontFromFileTTF(file.c_str(), size, &merged, letter_ranges);
    atlas.AddFontFromFileTTF(sign_file.c_str(), size * static_cast<float>(sign_size), &merged, sign_range.data());
    return font;
}

} // namespace

Result<Fonts> build_fonts(float scale) {
    for (const FontFile& file : {regular, italic, semi_bold, signs})
        if (const Result<std::string> path = path_of(file); !path) return path.problem();
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
    const Fonts fonts{add(regular, body_size * scale),
                      add(italic, body_size * scale),
                      add(semi_bold, body_size * scale),
                      add(semi_bold, large_size * scale),
                      add(regular, small_size * scale),
                      add(regular, large_size * scale),
                      add(semi_bold, clock_size * scale, short_range.data())};
    if (!atlas.Build()) return Problem{Problem::Kind::no_value, "the fonts can't be drawn", 0};
    return fonts;
}

} // namespace pourbook
