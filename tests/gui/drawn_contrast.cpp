#include "tests/gui/drawn_contrast.hpp"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <utility>

namespace pourbook::testing {
namespace {

struct Shade {
    double red = 0, green = 0, blue = 0, alpha = 1; // 0 to 1
};

Shade shade(ImU32 c) {
    const auto part = [&](int shift) { return ((c >> shift) & 0xFF) / 255.0; };
    return {part(IM_COL32_R_SHIFT), part(IM_COL32_G_SHIFT), part(IM_COL32_B_SHIFT), part(IM_COL32_A_SHIFT)};
}

Shade over(const Shade& below, const Shade& top) {
    const auto mix = [&](double b, double t) { return b + (t - b) * top.alpha; };
    return {mix(below.red, top.red), mix(below.green, top.green), mix(below.blue, top.blue), 1};
}

Colour colour(const Shade& s) {
    const auto byte = [](double part) { return static_cast<std::uint8_t>(std::lround(255 * part)); };
    return {byte(s.red), byte(s.green), byte(s.blue)};
}

using Triangle = std::array<ImDrawVert, 3>;

/// The triangle's colour at the spot, where it covers it.
bool covers(const Triangle& t, ImVec2 spot, Shade& at) {
    const auto side = [](ImVec2 a, ImVec2 b, ImVec2 c) {
        return static_cast<double>((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
    };
    const double area = side(t[0].pos, t[1].pos, t[2].pos);
    if (area == 0) return false;
    const double w0 = side(t[1].pos, t[2].pos, spot) / area, w1 = side(t[2].pos, t[0].pos, spot) / area,
                 w2 = 1 - w0 - w1;
    if (w0 < 0 || w1 < 0 || w2 < 0) return false;
    const Shade a = shade(t[0].col), b = shade(t[1].col), c = shade(t[2].col);
    at = {w0 * a.red + w1 * b.red + w2 * c.red, w0 * a.green + w1 * b.green + w2 * c.green,
          w0 * a.blue + w1 * b.blue + w2 * c.blue, w0 * a.alpha + w1 * b.alpha + w2 * c.alpha};
    return true;
}

struct Piece {
    Triangle triangle;
    ImVec4 clip;
};

bool inside(const ImVec4& clip, ImVec2 p) {
    return p.x >= clip.x && p.x <= clip.z && p.y >= clip.y && p.y <= clip.w;
}

/// Reads the frame piece after piece, keeping what can lie behind a text.
class Reader {
public:
    explicit Reader(Colour ground) : ground_(shade(IM_COL32(ground.red, ground.green, ground.blue, 255))) {
        for (const ImFont* font : ImGui::GetIO().Fonts->Fonts)
            for (const ImFontGlyph& g : font->Glyphs)
                if (g.Visible) letters_[{g.U0, g.V0}] = static_cast<ImWchar>(g.Codepoint);
    }

    std::vector<DrawnText> run() {
        const ImDrawData& data = *ImGui::GetDrawData();
        for (int n = 0; n < data.CmdListsCount; ++n)
            for (const ImDrawCmd& command : data.CmdLists[n]->CmdBuffer) read(*data.CmdLists[n], command);
        return std::move(out_);
    }

private:
    void read(const ImDrawList& list, const ImDrawCmd& command) {
        const auto corner = [&](unsigned i) {
            return list.VtxBuffer[static_cast<int>(list.IdxBuffer[static_cast<int>(command.IdxOffset + i)] +
                                                   command.VtxOffset)];
        };
        float end = -1e9F, line = -1e9F; // of the letter before
        for (unsigned i = 0; i + 3 <= command.ElemCount;) {
            const ImDrawVert low = corner(i);
            const auto letter = letters_.find({low.uv.x, low.uv.y});
            if (letter == letters_.end()) {
                pieces_.push_back({{low, corner(i + 1), corner(i + 2)}, command.ClipRect});
                i += 3;
                continue;
            }
            const ImVec2 high = corner(i + 2).pos;
            const bool goes_on = low.pos.x >= end - 2 && low.pos.x < end + 12 && std::abs(low.pos.y - line) < 14;
            if (goes_on && !out_.empty())
                out_.back().words += letter->second < 128 ? static_cast<char>(letter->second) : '?';
            else
                begin_text(letter->second, low, high, command.ClipRect);
            end = high.x;
            line = low.pos.y;
            i += 6;
        }
    }

    void begin_text(ImWchar sign, const ImDrawVert& low, ImVec2 high, const ImVec4& clip) {
        const ImVec2 middle{(low.pos.x + high.x) / 2, (low.pos.y + high.y) / 2};
        const std::string words(1, sign < 128 ? static_cast<char>(sign) : '?');
        if (!inside(clip, middle)) return out_.push_back({words, {}, {}, 21}); // nobody sees it
        std::array<DrawnText, 3> seen; // a line as thin as a hair behind one of these spots hides no letter
        for (std::size_t i = 0; i < seen.size(); ++i) {
            const float share = 0.2F + 0.3F * static_cast<float>(i);
            seen[i] = at({low.pos.x + share * (high.x - low.pos.x), middle.y}, shade(low.col));
            seen[i].words = words;
        }
        std::sort(seen.begin(), seen.end(),
                  [](const DrawnText& a, const DrawnText& b) { return a.contrast < b.contrast; });
        out_.push_back(seen[1]);
    }

    DrawnText at(ImVec2 spot, const Shade& letter) const {
        Shade behind = ground_;
        for (const Piece& piece : pieces_) {
            Shade here;
            if (inside(piece.clip, spot) && covers(piece.triangle, spot, here)) behind = over(behind, here);
        }
        const Colour below = colour(behind), ink = colour(over(behind, letter));
        return {"", ink, below, contrast(ink, below)};
    }

    Shade ground_;
    std::map<std::pair<float, float>, ImWchar> letters_;
    std::vector<Piece> pieces_;
    std::vector<DrawnText> out_;
};

double part(std::uint8_t value) {
    const double c = value / 255.0;
    return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
    return 0.2126 * part(c.red) + 0.7152 * part(c.green) + 0.0722 * part(c.blue);
}

} // namespace

double contrast(Colour a, Colour b) {
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

std::vector<DrawnText> drawn_texts(Colour ground) {
    return Reader(ground).run();
}

} // namespace pourbook::testing
