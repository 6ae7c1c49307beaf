#include "gui/widgets/text.hpp"

#include "charts/marker.hpp"
#include "charts/metal_colour.hpp"
#include "charts/place_text.hpp"
#include "gui/state/window_words.hpp"
#include "gui/widgets/scene_painter.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double mark_radius = 5;
constexpr double widest_hover = 520;
constexpr double hover_margin = 14;

float hover_width(const Ui& ui) {
    return std::min(ui.px(widest_hover), ImGui::GetIO().DisplaySize.x - ui.px(2 * hover_margin));
}

void mark_at(const Ui& ui, ImVec2 low, ImVec2 size, std::size_t slot, bool pinned) {
    Scene scene;
    const Spot middle{static_cast<double>(size.x / ui.scale) / 2, static_cast<double>(size.y / ui.scale) / 2};
    if (pinned)
        add_marker(scene, slot, middle, mark_radius, ui.colours().of_slot(slot));
    else
        add_marker(scene, 0, middle, mark_radius - 1, ui.colours().edge, false);
    paint(ui, scene, *ImGui::GetWindowDrawList(), low);
}

/// Widths in pixels of whatever font is pushed; a chart's text styles mean nothing here.
class CurrentFont : public TextMeasure {
public:
    double width(const std::string& words, TextStyle) const override {
        return static_cast<double>(ImGui::CalcTextSize(words.c_str()).x);
    }
};

/// As many whole lines as the window is high enough for.
std::string cut_to_window(const Ui& ui, const std::string& words) {
    const float room = ImGui::GetIO().DisplaySize.y - ui.px(2 * hover_margin);
    std::string shown = words;
    for (std::size_t end = words.size(); end != std::string::npos && end > 0; end = words.rfind('\n', end - 1)) {
        if (end < words.size()) shown = words.substr(0, end) + "\n…";
        if (ImGui::CalcTextSize(shown.c_str(), nullptr, false, hover_width(ui)).y <= room) break;
    }
    return shown;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Up to the next blank at which a line may break.
std::string next_piece(const std::string& words, std::size_t from) {
    std::size_t begin = from, end = std::min(words.find_first_of(" \n", from), words.size());
    while (end < words.size() && words[end] == ' ') {
        const std::size_t next = std::min(words.find_first_of(" \n", end + 1), words.size());
        if (!clings(words.substr(begin, end - begin), words.substr(end + 1, next - end - 1))) break;
        begin = end + 1;
        end = next;
    }
    return words.substr(from, end - from);
}

/// The pointer has been on it for a moment.
bool has_rested(Ui& ui, const std::string& words) {
    constexpr double moment_s = 0.4;
    Resting& r = ui.resting;
    const int frame = ImGui::GetFrameCount();
    if (r.words != words || r.frame < frame - 1) r.words = words, r.since_s = ImGui::GetTime();
    r.frame = frame;
    const bool rested = ImGui::GetTime() - r.since_s >= moment_s;
    r.waiting = !rested;
    return rested;
}

/// Right or left of the item; of one as wide as a row above it, so that the next row stays free.
void place_beside_item(const Ui& ui, const std::string& words) {
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax(), room = ImGui::GetIO().DisplaySize;
    const ImVec2 size = ImGui::CalcTextSize(words.c_str(), nullptr, false, hover_width(ui));
    const float gap = ui.px(10), width = size.x + ui.px(2 * 12), height = size.y + ui.px(2 * 9);
    const bool wide = high.x - low.x > room.x * 0.3F;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const float edge_right = wide ? mouse.x : high.x, edge_left = wide ? mouse.x : low.x;
    float x = edge_right + gap + (wide ? gap : 0), y = wide ? mouse.y - gap - height : low.y;
    if (x + width > room.x) x = std::max(0.0F, std::min(edge_left - gap, room.x) - width);
    if (y < 0) y = mouse.y + 2 * gap;
    ImGui::SetNextWindowPos({x, std::max(0.0F, std::min(y, room.y - height))});
}

} // namespace

void text(const std::string& words) {
    ImGui::TextUnformatted(words.c_str(), words.c_str() + words.size());
}

void dim_text(const Ui& ui, const std::string& words) {
    const TextLook look(ui.fonts.body, ui.colours().dim);
    text(words);
}

void small_dim_text(const Ui& ui, const std::string& words) {
    // Lower by the difference in ascent, so that it stands on the line of the text beside it.
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() + (ui.fonts.body->Ascent - ui.fonts.small->Ascent));
    const TextLook look(ui.fonts.small, ui.colours().dim);
    if (!ui.narrow()) return text(words);
    ImGui::PushTextWrapPos(0);
    text(words);
    ImGui::PopTextWrapPos();
}

void wrapped_text(const std::string& words, Colour colour) {
    ImGui::PushStyleColor(ImGuiCol_Text, u32(colour));
    ImGui::PushTextWrapPos(0);
    text(in_lines(in_window(words), ImGui::GetContentRegionAvail().x));
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
}

std::string in_lines(const std::string& words, float width) {
    if (std::none_of(words.begin(), words.end(), is_digit)) return words;
    std::string out;
    const float blank = ImGui::CalcTextSize(" ").x;
    float x = 0; // of the line so far
    for (std::size_t from = 0; from < words.size();) {
        const std::string word = next_piece(words, from);
        const std::size_t end = from + word.size();
        const float room = ImGui::CalcTextSize(word.c_str()).x;
        if (x > 0) {
            const bool fits = x + blank + room <= width;
            out += fits ? ' ' : '\n';
            x = fits ? x + blank : 0;
        }
        out += word;
        x += room;
        if (end < words.size() && words[end] == '\n') out += '\n', x = 0;
        from = end + 1;
    }
    return out;
}

void heading(const Ui& ui, const std::string& words) {
    const TextLook look(ui.fonts.heading, ui.colours().ink);
    text(words);
}

void warning_text(const Ui& ui, const std::string& words) {
    wrapped_text(words, ui.colours().warning);
}

std::string fitted(const std::string& words, float width) {
    return shortened(words, static_cast<double>(width), TextStyle::label, CurrentFont());
}

void fitted_text(const std::string& words) {
    text(fitted(words, ImGui::GetContentRegionAvail().x));
}

void small_fitted_text(const Ui& ui, const std::string& words) {
    std::string shown;
    {
        const TextLook look(ui.fonts.small, ui.colours().dim);
        shown = fitted(words, ImGui::GetContentRegionAvail().x);
    }
    small_dim_text(ui, shown);
}

void text_right(const std::string& words) {
    const float room = ImGui::GetContentRegionAvail().x - ImGui::CalcTextSize(words.c_str()).x;
    if (room > 0) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room);
    text(words);
}

void header_row(const Ui& ui, int left) {
    const TextLook look(ui.fonts.small, ui.colours().dim);
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    for (int i = 0; i < ImGui::TableGetColumnCount(); ++i) {
        ImGui::TableSetColumnIndex(i);
        const std::string name = ImGui::TableGetColumnName(i);
        if (name.starts_with("##")) continue;
        i < left ? text(name) : text_right(name);
    }
}

void hover_text(Ui& ui, const std::string& words) {
    ui.probe.say("hover", words);
    if (!has_rested(ui, words)) return;
    const std::string shown = cut_to_window(ui, in_lines(words, hover_width(ui)));
    place_beside_item(ui, shown);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {ui.px(12), ui.px(9)});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(hover_width(ui));
    const std::size_t first = shown.find('\n');
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text(shown.substr(0, first));
    }
    if (first != std::string::npos) text(shown.substr(first + 1));
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
    ui.probe.say("hover.shown", shown);
}

bool word_button(Ui& ui, const std::string& id, const std::string& words, bool current) {
    const TextLook look(current ? ui.fonts.strong : ui.fonts.body, current ? ui.colours().ink : ui.colours().dim);
    ImGui::PushStyleColor(ImGuiCol_Button, 0);
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
    const bool clicked = ImGui::Button((words + "##" + id).c_str());
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    ui.probe.item(id, words);
    if (current) {
        const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
        ImGui::GetWindowDrawList()->AddRectFilled({low.x + ui.px(8), high.y - ui.px(1)},
                                                  {high.x - ui.px(8), high.y + ui.px(1)}, u32(ui.colours().accent));
    }
    return clicked;
}

bool folding_head(const Ui& ui, const std::string& words) {
    constexpr double tall = 840;
    ImGui::SetNextItemOpen(!ui.narrow() && ImGui::GetIO().DisplaySize.y > ui.px(tall), ImGuiCond_Once);
    return ImGui::CollapsingHeader(words.c_str());
}

void flow(float width, float gap) {
    const float between = gap < 0 ? ImGui::GetStyle().ItemSpacing.x : gap;
    const float right =
        ImGui::GetCursorScreenPos().x + ImGui::GetContentRegionAvail().x; // the cursor is in the next line
    if (ImGui::GetItemRectMax().x + between + width <= right + 1) ImGui::SameLine(0, gap);
}

float button_width(const std::string& words) {
    return ImGui::CalcTextSize(words.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x;
}

int choice(Ui& ui, const std::string& id, const std::vector<std::string>& words, int current) {
    int clicked = -1;
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {ui.px(2), ui.px(6)});
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool on = static_cast<int>(i) == current;
        if (i) flow(button_width(words[i]));
        ImGui::PushStyleColor(ImGuiCol_Button, u32(on ? ui.colours().pressed : ui.colours().ground));
        ImGui::PushStyleColor(ImGuiCol_Text, u32(on ? ui.colours().ink : ui.colours().dim));
        if (ImGui::Button((words[i] + "##" + id).c_str())) clicked = static_cast<int>(i);
        ImGui::PopStyleColor(2);
        ui.probe.item(id + "." + std::to_string(i), words[i]);
    }
    ImGui::PopStyleVar();
    return clicked;
}

bool pin_button(Ui& ui, const std::string& id, const std::string& slug) {
    const ImVec2 low = ImGui::GetCursorScreenPos(), size{ui.px(20), ImGui::GetTextLineHeight()};
    const bool clicked = ImGui::InvisibleButton(id.c_str(), size);
    const bool pinned = is_pinned(ui.view(), slug);
    ui.probe.item(id, pinned ? "pinned" : "");
    mark_at(ui, low, size, mark_of(ui.view(), slug), pinned);
    if (ImGui::IsItemHovered()) hover_text(ui, pinned ? "Unpin" : "Pin");
    return clicked;
}

void pin_mark(Ui& ui, std::size_t slot, float height) {
    const ImVec2 low = ImGui::GetCursorScreenPos(), size{ui.px(14), height};
    ImGui::Dummy(size);
    mark_at(ui, low, size, slot, true);
}

void metal_swatch(const Ui& ui, const Metal& metal, float height) {
    const ImVec2 low = ImGui::GetCursorScreenPos(), size{ui.px(swatch_width), height};
    ImGui::Dummy(size);
    const auto shade = [&](double share) {
        Colour c = metal_colour(metal);
        for (std::uint8_t* part : {&c.red, &c.green, &c.blue}) *part = static_cast<std::uint8_t>(*part * share);
        return u32(c);
    };
    constexpr double lit = 1, dark = 0.5; // as a round bar catches the light
    const float edge = ui.px(2), middle = low.x + size.x * 0.4F, high_x = low.x + size.x;
    const float top = low.y + edge, foot = low.y + size.y - edge;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilledMultiColor({low.x, top}, {middle, foot}, shade(dark), shade(lit), shade(lit), shade(dark));
    list.AddRectFilledMultiColor({middle, top}, {high_x, foot}, shade(lit), shade(dark), shade(dark), shade(lit));
}

} // namespace pourbook
