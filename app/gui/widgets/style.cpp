#include "gui/widgets/theme.hpp"
#include "gui/widgets/ui.hpp"

namespace pourbook {
namespace {

void set_sizes(ImGuiStyle& style) {
    style.WindowPadding = {theme::apart, 10};
    style.FramePadding = {theme::near, theme::tight};
    style.ItemSpacing = {theme::near, 6};
    style.ItemInnerSpacing = {6, theme::tight};
    style.CellPadding = {5, 3};
    style.ScrollbarSize = 12;
    style.WindowBorderSize = 0;
    style.FrameBorderSize = theme::hair;
    style.PopupBorderSize = theme::hair;
    style.ChildBorderSize = 0;
    style.WindowRounding = 0;
    style.ChildRounding = style.FrameRounding = style.PopupRounding = style.GrabRounding = style.ScrollbarRounding =
        theme::radius;
}

} // namespace

TouchSizes::TouchSizes(const Ui& ui) {
    if (!ui.narrow()) return;
    const auto push = [&](ImGuiStyleVar which, float x, float y) {
        ImGui::PushStyleVar(which, ImVec2{ui.px(static_cast<double>(x)), ui.px(static_cast<double>(y))});
        ++pushed_;
    };
    push(ImGuiStyleVar_WindowPadding, theme::near, theme::near);
    push(ImGuiStyleVar_FramePadding, theme::near, theme::touch_padding);
    push(ImGuiStyleVar_ItemSpacing, theme::near, theme::near);
    push(ImGuiStyleVar_CellPadding, theme::tight, theme::touch_padding);
}

TouchSizes::~TouchSizes() {
    ImGui::PopStyleVar(pushed_);
}

ListRows::ListRows() {
    const ImGuiStyle& style = ImGui::GetStyle();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {style.ItemSpacing.x, 2 * style.CellPadding.y});
}

void apply_style(const Palette& p, float scale) {
    ImGuiStyle& style = ImGui::GetStyle();
    style = ImGuiStyle();
    set_sizes(style);
    style.ScaleAllSizes(scale);
    for (ImVec4& colour : style.Colors) colour = vec(p.raised);
    const auto set = [&](Colour colour, std::initializer_list<ImGuiCol> where) {
        for (const ImGuiCol c : where) style.Colors[c] = vec(colour);
    };
    const Colour clear{0, 0, 0, 0};
    set(p.ink, {ImGuiCol_Text, ImGuiCol_CheckMark});
    set(p.dim, {ImGuiCol_TextDisabled});
    set(p.ground, {ImGuiCol_WindowBg});
    set(clear, {ImGuiCol_ChildBg, ImGuiCol_BorderShadow, ImGuiCol_TableRowBg, ImGuiCol_ScrollbarBg});
    set(p.edge, {ImGuiCol_Border});
    set(p.line, {ImGuiCol_Separator, ImGuiCol_TableBorderStrong, ImGuiCol_TableBorderLight, ImGuiCol_ScrollbarGrab});
    set(p.pressed, {ImGuiCol_FrameBgHovered, ImGuiCol_FrameBgActive, ImGuiCol_ButtonHovered, ImGuiCol_HeaderHovered,
                    ImGuiCol_Header});
    set(p.accent.with_alpha(70), {ImGuiCol_ButtonActive, ImGuiCol_HeaderActive, ImGuiCol_TextSelectedBg});
    set(p.accent,
        {ImGuiCol_NavHighlight, ImGuiCol_ScrollbarGrabActive, ImGuiCol_SliderGrab, ImGuiCol_SliderGrabActive});
    set(p.dim, {ImGuiCol_ScrollbarGrabHovered});
    set(p.ground, {ImGuiCol_TableHeaderBg});
    set(p.raised.with_alpha(150), {ImGuiCol_TableRowBgAlt});
}

} // namespace pourbook
