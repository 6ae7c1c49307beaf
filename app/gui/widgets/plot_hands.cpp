#include "gui/widgets/plot_hands.hpp"

#include "charts/marker.hpp"
#include "core/quantity/format.hpp"
#include "gui/widgets/scene_painter.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double nearer_by = 0.85;       // what is left of an axis after one notch of the wheel
constexpr double least_cell = 330;       // of the strip
constexpr std::size_t strip_rows = 3;    // of the strip, below its head
constexpr double key_step = 0.01;        // of the axis
constexpr double all_of_home = 1 - 1e-9; // share of home from which all of it is seen

using Range = std::optional<std::pair<double, double>>;

void keep(Range& range, const Axis& axis, const Axis& home) {
    const Axis kept = kept_near(axis, home);
    const bool all = home.share(kept.high) - home.share(kept.low) >= all_of_home;
    range = all ? Range{} : Range{{kept.low, kept.high}};
}

/// Both axes keep the place under the pointer; over the figures of one axis only that one moves.
void turn_wheel(PlotHands& hands, const Plot& plot, Spot at, double notches) {
    const double factor = std::pow(nearer_by, notches);
    const bool below = at.y > plot.box.bottom(), left = at.x < plot.box.x;
    if (below && left) return;
    const double x = std::clamp((at.x - plot.box.x) / plot.box.width, 0.0, 1.0);
    const double y = std::clamp((plot.box.bottom() - at.y) / plot.box.height, 0.0, 1.0);
    if (!left) keep(hands.range.x, nearer(plot.x, x, factor), plot.home_x);
    if (!below) keep(hands.range.y, nearer(plot.y, y, factor), plot.home_y);
}

void drag(PlotHands& hands, const Plot& plot, double dx, double dy) {
    if (dx != 0) keep(hands.range.x, moved(plot.x, -dx / plot.box.width), plot.home_x);
    if (dy != 0 && hands.range.y) keep(hands.range.y, moved(plot.y, dy / plot.box.height), plot.home_y);
}

bool tapped(ImGuiKey key) {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key));
}

/// Signs typed in this frame, "+" and "-" for nearer and further.
double typed_notches() {
    double notches = 0;
    for (const ImWchar sign : ImGui::GetIO().InputQueueCharacters)
        notches += sign == '+' || sign == '=' ? 1 : sign == '-' ? -1 : 0;
    return notches;
}

/// Arrows move the cross-hair while the chart has the focus; then they don't move the focus.
void use_keys(PlotHands& hands, const Plot& plot) {
    ImGui::GetIO().ConfigFlags &= ~ImGuiConfigFlags_NavEnableKeyboard;
    const double step = (ImGui::GetIO().KeyShift ? 10 : 1) * key_step;
    const double way = (tapped(ImGuiKey_RightArrow) ? step : 0) - (tapped(ImGuiKey_LeftArrow) ? step : 0);
    if (way != 0) {
        const double share = hands.cursor ? plot.x.share(*hands.cursor) : 0.5 - way;
        hands.cursor = plot.x.at_share(std::clamp(share + way, 0.0, 1.0));
    }
    if (const double notches = typed_notches(); notches != 0) {
        const double at = hands.cursor ? plot.x.place(*hands.cursor) : plot.box.x + plot.box.width / 2;
        turn_wheel(hands, plot, {at, plot.box.bottom() + 1}, notches);
    }
    if (tapped(ImGuiKey_Space) && hands.cursor) hands.mark = hands.cursor;
    if (tapped(ImGuiKey_Home)) hands.range = {};
    if (tapped(ImGuiKey_Escape)) hands.cursor = hands.mark = std::nullopt;
}

void upright(Ui& ui, const Plot& plot, ImVec2 origin, double x, Colour colour) {
    if (x < plot.x.low || x > plot.x.high) return;
    const float at = std::round(origin.x + ui.px(plot.x.place(x)));
    ImGui::GetWindowDrawList()->AddLine({at, origin.y + ui.px(plot.box.y)}, {at, origin.y + ui.px(plot.box.bottom())},
                                        u32(colour), ui.px(1));
}

void draw_menu(Ui& ui, const std::string& id, PlotHands& hands) {
    if (!ImGui::BeginPopupContextItem((id + ".menu").c_str())) return;
    const auto offer = [&](const char* name, bool usable, const auto& run) {
        if (ImGui::MenuItem(name, nullptr, false, usable)) run();
        ui.probe.item(id + ".menu." + name, name);
    };
    offer("copy the values", !hands.told.empty(), [&] { ImGui::SetClipboardText(hands.told.c_str()); });
    offer("mark this place", hands.at.has_value(), [&] { hands.mark = hands.at; });
    offer("take the mark away", hands.mark.has_value(), [&] { hands.mark.reset(); });
    offer("show all", !(hands.range == PlotRange{}), [&] { hands.range = {}; });
    ImGui::EndPopup();
}

struct StripShape {
    std::size_t rows, columns;
};

/// As few rows as there is width for, and cells as wide as these leave them.
StripShape strip_shape(const Ui& ui, std::size_t lines, float width) {
    const auto most = static_cast<std::size_t>(std::max(1.0F, width / ui.px(least_cell)));
    const std::size_t rows = std::clamp<std::size_t>((lines + most - 1) / most, 1, strip_rows);
    return {rows, std::clamp<std::size_t>((lines + rows - 1) / rows, 1, most)};
}

std::string against(double value, double base) {
    if (!std::isfinite(value) || !std::isfinite(base) || base == 0) return "";
    return "×" + pretty_number(significant(value / base, 3));
}

void draw_cell(Ui& ui, const CurveReading& reading, const std::string& ratio, float width) {
    const float left = ImGui::GetCursorPosX();
    const std::size_t slot = ui.view().marks.of.contains(reading.id) ? mark_of(ui.view(), reading.id) : reading.slot;
    pin_mark(ui, slot, ImGui::GetTextLineHeight());
    ImGui::SameLine(0, ui.px(3));
    const std::string said = reading.text + (ratio.empty() ? "" : "  " + ratio);
    const float value = ImGui::CalcTextSize(said.c_str()).x;
    const float room = std::max(ui.px(40), width - value - ui.px(14 + 3 + 6 + 12));
    text(fitted(reading.name, room));
    ImGui::SameLine(0, ui.px(6));
    text(said);
    ImGui::SameLine(left + width);
}

/// A line that the chart lets be pulled follows the pointer from where it is taken. True while it is held.
bool pull_handle(Ui& ui, const Plot& plot, PlotHands& hands, Spot at) {
    constexpr double grip = 6; // points on either side
    if (!ImGui::IsItemActive()) hands.holds = false;
    if (!hands.holds) hands.pulled.reset();
    if (!hands.handle) return false;
    const bool under =
        ImGui::IsItemHovered() && plot.box.contains(at) && std::abs(at.x - plot.x.place(*hands.handle)) < grip;
    if (under && ImGui::IsItemActivated()) hands.holds = true;
    if (under || hands.holds) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    if (hands.holds && ImGui::IsMouseDragging(0, ui.px(1)))
        hands.pulled = std::clamp(plot.x.value(at.x), plot.x.low, plot.x.high);
    return hands.holds;
}

} // namespace

void use_plot(Ui& ui, const std::string& id, const Scene& scene, ImVec2 origin, bool clicked, bool hovered) {
    if (!scene.plot) return;
    const Plot& plot = *scene.plot;
    PlotHands& hands = ui.plots[id];
    const ImGuiIO& io = ImGui::GetIO();
    const Spot at{static_cast<double>((io.MousePos.x - origin.x) / ui.scale),
                  static_cast<double>((io.MousePos.y - origin.y) / ui.scale)};
    if (ImGui::IsItemFocused() && !io.WantTextInput) use_keys(hands, plot);
    const bool held = pull_handle(ui, plot, hands, at);
    const bool dragged = ImGui::IsItemActive() && ImGui::IsMouseDragging(0, ui.px(3));
    if (dragged && !held)
        drag(hands, plot, static_cast<double>(io.MouseDelta.x / ui.scale),
             static_cast<double>(io.MouseDelta.y / ui.scale));
    hands.at = hands.cursor;
    if (hovered && plot.box.contains(at)) {
        hands.at = plot.x.value(at.x);
        if (clicked && !held && io.MouseClickedLastCount[0] < 2) hands.mark = hands.mark ? std::nullopt : hands.at;
    }
    if (hovered && io.MouseWheel != 0 && !ui.narrow()) turn_wheel(hands, plot, at, static_cast<double>(io.MouseWheel));
    if (hovered && ImGui::IsMouseDoubleClicked(0)) hands.range = {}, hands.mark.reset();
    if (hands.mark) upright(ui, plot, origin, *hands.mark, ui.colours().accent);
    if (hands.pulled) upright(ui, plot, origin, *hands.pulled, ui.colours().ink);
    if (hands.at && !dragged) upright(ui, plot, origin, *hands.at, ui.colours().edge);
    draw_menu(ui, id, hands);
}

float strip_height(const Ui& ui, std::size_t lines, float width) {
    const std::size_t rows = strip_shape(ui, lines, width).rows;
    return static_cast<float>(rows + 1) * (ImGui::GetTextLineHeight() + ui.px(3));
}

void draw_strip(Ui& ui, const std::string& id, const PlotReader& reader, std::size_t lines, float width) {
    PlotHands& hands = ui.plots[id];
    const float left = ImGui::GetCursorPosX(), top = ImGui::GetCursorPosY(),
                line = ImGui::GetTextLineHeight() + ui.px(3);
    const float below = top + strip_height(ui, lines, width);
    hands.told.clear();
    const std::string hint = "point: every line at that place · wheel: nearer · drag: move · click: mark · double "
                             "click: all · keys: arrows, + −, Space, Home";
    const std::optional<double> at = hands.at ? hands.at : reader.usual;
    if (!at) {
        dim_text(ui, fitted(hint, width));
    } else {
        const std::vector<CurveReading> here = reader.read(*at);
        const std::vector<CurveReading> there = hands.mark ? reader.read(*hands.mark) : std::vector<CurveReading>();
        const bool marked = there.size() == here.size() && hands.mark;
        const std::string head =
            reader.place(*at) + (marked            ? " · × of the value at the mark, " + reader.place(*hands.mark)
                                 : here.size() > 1 ? " · × of " + here.front().name
                                                   : "");
        text(fitted(head + (hands.at ? "" : " · " + hint), width));
        hands.told = head;
        const auto [rows, columns] = strip_shape(ui, here.size(), width);
        const float cell = width / static_cast<float>(columns);
        for (std::size_t i = 0; i < here.size(); ++i) {
            const std::string ratio = marked  ? against(here[i].value, there[i].value)
                                      : i > 0 ? against(here[i].value, here.front().value)
                                              : "";
            hands.told += "\n" + here[i].name + "\t" + here[i].text + "\t" + ratio;
            if (i >= columns * rows) continue;
            ImGui::SetCursorPos(
                {left + static_cast<float>(i % columns) * cell, top + static_cast<float>(1 + i / columns) * line});
            draw_cell(ui, here[i], ratio, cell);
        }
    }
    ui.probe.say(id + ".strip", hands.told);
    ImGui::SetCursorPos({left, below});
}

std::string range_key(const PlotRange& range) {
    std::string key;
    for (const Range& r : {range.x, range.y})
        key += r ? "|" + std::to_string(r->first) + ":" + std::to_string(r->second) : "|";
    return key;
}

} // namespace pourbook
