#include "gui/widgets/help_text.hpp"

#include "gui/actions/actions.hpp"

#include <cfloat>

namespace pourbook {
namespace {

using Look = HelpPiece::Look;

constexpr double point_indent = 16, set_off_indent = 10, caution_indent = 12; // of the text
constexpr double hanging = 20;                                                // more, from a set-off line's second on
constexpr double leading = 4, bar = 3, code_margin = 4, rounding = 3, beside = 6;
constexpr double gap_small = 2, gap = 10, gap_heading = 18;

double indent_of(HelpBlock::Kind kind) {
    return kind == HelpBlock::Kind::point     ? point_indent
           : kind == HelpBlock::Kind::set_off ? set_off_indent
           : kind == HelpBlock::Kind::caution ? caution_indent
                                              : 0;
}

/// Room above a block that follows another.
double gap_between(HelpBlock::Kind before, HelpBlock::Kind kind) {
    if (kind == HelpBlock::Kind::set_off && before == kind) return 0;
    if (kind == HelpBlock::Kind::point && before == kind) return gap_small;
    if (before == HelpBlock::Kind::heading) return kind == HelpBlock::Kind::set_off ? gap / 2 : gap_small;
    return kind == HelpBlock::Kind::heading ? gap_heading : gap;
}

/// What a key named in the text does.
const Action* pressed_by(const HelpPiece& piece) {
    if (piece.look != Look::code) return nullptr;
    for (const Action& a : actions())
        if (a.shortcut.key && a.shortcut.text() == piece.text) return &a;
    return nullptr;
}

/// Draws the words of a block from the cursor on, line after line.
class Lines {
public:
    Lines(Ui& ui, HelpBlock::Kind kind)
        : ui_(ui), kind_(kind), list_(*ImGui::GetWindowDrawList()), origin_(ImGui::GetCursorScreenPos()),
          width_(ImGui::GetContentRegionAvail().x - ui.px(beside)), left_(ui.px(indent_of(kind))) {
        begin_line();
    }

    void add(const HelpWord& word) {
        float width = 0;
        for (const HelpPiece& piece : word) width += width_of(piece.text, piece.look);
        if (x_ > left_) x_ += width_of(" ", Look::plain);
        if (x_ > left_ && x_ + width > width_) {
            y_ += height();
            if (kind_ == HelpBlock::Kind::set_off) left_ = ui_.px(indent_of(kind_) + hanging);
            begin_line();
        }
        for (const HelpPiece& piece : word) draw(piece);
    }

    void end() const { ImGui::Dummy({width_, y_ + height()}); }

    /// Of the key that was clicked; null where none was.
    const Action* clicked() const { return clicked_; }

private:
    ImFont* font(Look look) const {
        if (kind_ == HelpBlock::Kind::title) return ui_.fonts.heading;
        return kind_ == HelpBlock::Kind::heading || look == Look::strong ? ui_.fonts.strong : ui_.fonts.body;
    }
    float margin(Look look) const { return look == Look::code ? ui_.px(code_margin) : 0; }
    float width_of(const std::string& words, Look look) const {
        const ImFont& f = *font(look);
        return f.CalcTextSizeA(f.FontSize, FLT_MAX, 0, words.c_str()).x + 2 * margin(look);
    }
    float height() const { return font(Look::plain)->FontSize + ui_.px(leading); }
    ImVec2 at(float x, float y) const { return {origin_.x + x, origin_.y + y}; }

    /// The mark of the block beside or behind the line.
    void begin_line() {
        x_ = left_;
        const float below = y_ + height();
        if (kind_ == HelpBlock::Kind::set_off)
            list_.AddRectFilled(at(0, y_), at(width_, below), u32(ui_.colours().ground));
        if (kind_ == HelpBlock::Kind::caution)
            list_.AddRectFilled(at(0, y_), at(ui_.px(bar), below), u32(ui_.colours().warning));
        if (kind_ == HelpBlock::Kind::point && y_ == 0)
            list_.AddText(font(Look::plain), font(Look::plain)->FontSize, at(ui_.px(2), y_ + ui_.px(leading) / 2),
                          u32(ui_.colours().dim), "•");
    }

    void draw(const HelpPiece& piece) {
        ImFont* f = font(piece.look);
        const float width = width_of(piece.text, piece.look);
        if (piece.look == Look::code)
            list_.AddRectFilled(at(x_, y_ + ui_.px(1)), at(x_ + width, y_ + height() - ui_.px(1)),
                                u32(ui_.colours().pressed), ui_.px(rounding));
        const Action* does = pressed_by(piece);
        list_.AddText(f, f->FontSize, at(x_ + margin(piece.look), y_ + ui_.px(leading) / 2),
                      u32(does ? ui_.colours().accent : ui_.colours().ink), piece.text.c_str());
        if (does) offer(*does, width);
        x_ += width;
    }

    /// A key that is named can be clicked.
    void offer(const Action& does, float width) {
        const ImVec2 cursor = ImGui::GetCursorScreenPos();
        ImGui::SetCursorScreenPos(at(x_, y_));
        ImGui::PushID(static_cast<int>(y_));
        if (ImGui::InvisibleButton(does.id, {width, height()})) clicked_ = &does;
        ui_.probe.item(std::string("help.go.") + does.id, does.label);
        if (ImGui::IsItemHovered()) {
            ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
            list_.AddRect(at(x_, y_), at(x_ + width, y_ + height()), u32(ui_.colours().accent), ui_.px(rounding));
        }
        ImGui::PopID();
        ImGui::SetCursorScreenPos(cursor);
    }

    Ui& ui_;
    HelpBlock::Kind kind_;
    ImDrawList& list_;
    ImVec2 origin_;
    float width_, left_, x_ = 0, y_ = 0;
    const Action* clicked_ = nullptr;
};

} // namespace

const Action* help_text(Ui& ui, const std::vector<HelpBlock>& blocks) {
    const Action* clicked = nullptr;
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    const HelpBlock* before = nullptr;
    for (const HelpBlock& block : blocks) {
        if (before) ImGui::Dummy({0, ui.px(gap_between(before->kind, block.kind))});
        Lines lines(ui, block.kind);
        for (const HelpWord& word : block.words) lines.add(word);
        lines.end();
        if (lines.clicked()) clicked = lines.clicked();
        before = &block;
    }
    ImGui::PopStyleVar();
    return clicked;
}

} // namespace pourbook
