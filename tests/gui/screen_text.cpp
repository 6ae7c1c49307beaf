#include "tests/gui/screen_text.hpp"

#include <cmath>
#include <map>
#include <utility>

namespace pourbook::testing {
namespace {

using Corner = std::pair<float, float>;

/// Which letter stands at a place of the atlas.
std::map<Corner, ImWchar> letters_by_place() {
    std::map<Corner, ImWchar> out;
    for (const ImFont* font : ImGui::GetIO().Fonts->Fonts)
        for (const ImFontGlyph& g : font->Glyphs)
            if (g.Visible) out[{g.U0, g.V0}] = static_cast<ImWchar>(g.Codepoint);
    return out;
}

std::string utf8(ImWchar sign) {
    if (sign < 0x80) return std::string(1, static_cast<char>(sign));
    if (sign < 0x800) return {static_cast<char>(0xC0 | (sign >> 6)), static_cast<char>(0x80 | (sign & 0x3F))};
    return {static_cast<char>(0xE0 | (sign >> 12)), static_cast<char>(0x80 | ((sign >> 6) & 0x3F)),
            static_cast<char>(0x80 | (sign & 0x3F))};
}

/// Letters of one text stand close behind each other in one line.
bool follows(const Letter& before, const Letter& next) {
    return next.low.x >= before.high.x - 2 && next.low.x < before.high.x + 12 &&
           std::abs(next.low.y - before.low.y) < 14;
}

void add_letters(const ImDrawList& list, const ImDrawCmd& command, const std::map<Corner, ImWchar>& letters,
                 std::vector<std::vector<Letter>>& texts) {
    bool fresh = true;
    for (unsigned i = 0; i + 6 <= command.ElemCount; i += 6) {
        const auto corner = [&](unsigned n) -> const ImDrawVert& {
            return list.VtxBuffer[static_cast<int>(list.IdxBuffer[static_cast<int>(command.IdxOffset + i + n)] +
                                                   command.VtxOffset)];
        };
        const ImDrawVert &low = corner(0), &high = corner(2);
        const auto letter = letters.find({low.uv.x, low.uv.y});
        if (letter == letters.end()) continue;
        const Letter next{utf8(letter->second), low.pos, high.pos, command.ClipRect};
        if (fresh || !follows(texts.back().back(), next)) texts.emplace_back();
        texts.back().push_back(next);
        fresh = false;
    }
}

} // namespace

std::vector<std::vector<Letter>> texts_on_screen() {
    const auto letters = letters_by_place();
    std::vector<std::vector<Letter>> out;
    const ImDrawData& data = *ImGui::GetDrawData();
    for (int n = 0; n < data.CmdListsCount; ++n)
        for (const ImDrawCmd& command : data.CmdLists[n]->CmdBuffer)
            add_letters(*data.CmdLists[n], command, letters, out);
    return out;
}

std::string words_of(const std::vector<Letter>& text) {
    std::string out;
    for (const Letter& letter : text) out += letter.sign;
    return out;
}

} // namespace pourbook::testing
