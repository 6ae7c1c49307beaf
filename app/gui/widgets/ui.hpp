// What every panel draws with: the session, fonts, colours and scale, and what is half typed.
#pragma once

#include "charts/canvas.hpp"
#include "charts/frame.hpp"
#include "charts/palette.hpp"
#include "charts/race.hpp"
#include "charts/scene.hpp"
#include "gui/state/session.hpp"
#include "gui/widgets/probe.hpp"
#include "gui/widgets/theme.hpp"

#include <imgui.h>

#include <functional>
#include <memory>
#include <string>
#include <unordered_map>

namespace pourbook {

struct Fonts {
    ImFont* body = nullptr;
    ImFont* italic = nullptr;
    ImFont* strong = nullptr;
    ImFont* heading = nullptr;
    ImFont* small = nullptr;
    ImFont* large = nullptr; // answers
    ImFont* clock = nullptr; // the one figure that is read from across the room
};

/// Text being typed, apart from the committed value.
struct Draft {
    std::string typed, fault;
    bool open = false;     // being typed, or left with a fault
    std::string unit = {}; // shown beside a quantity
    bool hovered = false;  // in the last frame
    int place = 0;         // in the list below
};

struct CachedScene {
    std::string key;
    Scene scene;
};

/// How far a person has moved into a chart, and where the cross-hair stands (widgets/plot_hands.hpp); for as long as
/// the window is open.
struct PlotHands {
    PlotRange range;
    std::optional<double> cursor, mark, at; // by keys, left by a click, of this frame; in the unit shown
    std::string told;                       // what the strip says
    std::optional<double> handle;           // a place on the horizontal axis that can be pulled elsewhere
    bool holds = false;                     // the pointer has taken it
    std::optional<double> pulled;           // to where it is being pulled, in the unit shown
};

/// The value whose sources are shown beside the view (panels/evidence.cpp), and those shown before it.
struct Evidence {
    bool open = false;
    std::string metal, property;
    std::vector<std::pair<std::string, std::string>> earlier = {};

    void show(const std::string& of_metal, const std::string& of_property) {
        if (open && !metal.empty() && (metal != of_metal || property != of_property))
            earlier.emplace_back(metal, property);
        open = true;
        metal = of_metal;
        property = of_property;
    }
    void go_back() {
        metal = earlier.back().first;
        property = earlier.back().second;
        earlier.pop_back();
    }
};

/// What the pointer rests on, and since when: its words appear after a moment.
struct Resting {
    std::string words;
    double since_s = 0;
    int frame = -2;
    bool waiting = false; // a frame is due when the moment is over
};

/// By which column a table is ordered (widgets/table_order.hpp); -1: as it came.
struct TableOrder {
    int column = -1;
    bool falling = true;
    std::string key = {};
    std::vector<std::size_t> rows = {};
};

/// A picture or table on its way out of the window.
struct LeavingState {
    std::string open_in;       // id of the line that is a field now
    std::string file;          // as typed
    std::string warned_of;     // a file that is there already
    std::string told_in, told; // what came of it, and in which line
    bool fault = false, fresh = false;
    std::string picture_folder, table_folder; // where the last one went
};

/// A race as it is played.
struct RacePlay {
    std::string key;
    Race race;
    double time_s = 0, slow = 1; // after the release; times slower than life
    bool running = false;
};

/// The edge of a drawn tube that the pointer holds.
struct RaceGrip {
    enum class Edge { none, side, foot };
    Edge edge = Edge::none;
    double metres_a_point = 0; // of the pointer's way
    double size_m = 0;         // outside or length when it was taken
    double from = 0;           // where, in points of the scene
};

struct Recording; // widgets/film_room.cpp

/// The picture that is being framed, and how.
struct PictureRoom {
    std::string of; // id of the picture; empty: the room is closed
    PictureWish wish;
    std::string own_title; // of the picture itself
    Scene scene;
    std::string laid_out, shown; // keys of the scene and of the preview
    ImTextureID texture = nullptr;
    std::string folder, file, warned_of, told;
    bool fault = false;
    std::vector<std::string> last;        // saved, the newest first
    std::shared_ptr<Recording> recording; // of a race, while it goes on
};

/// The pouring mode, and the clock of the carry from the kiln.
struct Pouring {
    bool open = false, counting = false;
    double carry_s = 60, left_s = 60;
};

/// The view that was in front in the last frame, and whether its help covered it (panels/desk.cpp, narrow windows).
struct Front {
    std::string view;
    bool help = false;
};

struct Pixels;

struct Ui {
    Session& session;
    Fonts fonts;
    float scale = 1;
    Probe probe = {};
    std::unordered_map<std::string, Draft> drafts = {};
    std::unordered_map<std::string, CachedScene> scenes = {};
    std::unordered_map<std::string, RacePlay> races = {};
    RaceGrip race_grip = {};
    Front front = {};
    bool settings_open = false; // of a narrow window: temperature, condition, units, theme
    bool tour = false;          // the help keeps the first page beside the views that it leads to
    bool moving = false;        // something moves in this frame: the next one follows at once
    PictureRoom room = {};
    Pouring pouring = {};
    std::string answer_copied = {};
    std::function<ImTextureID(const Pixels&)> show_pixels = {}; // as a texture, the one before it gone; empty: none
    std::function<void(const std::string& folder)> open_folder = {}; // in the system's file manager; empty: none
    std::unordered_map<std::string, PlotHands> plots = {};
    std::unordered_map<std::string, float> split_left = {}, split_room = {}; // pixels, of this frame
    float table_needs = 0; // pixels the columns of the ranking took in the last frame
    std::unordered_map<std::string, TableOrder> orders = {};
    std::string told = {}; // passing.told as it was seen first, and when
    double told_at_s = 0;
    Evidence evidence = {};
    Resting resting = {};
    LeavingState leaving = {};
    int faulty_frame = -2;                                          // when a field with a fault was drawn last
    std::function<bool(const std::string& png)> offer_picture = {}; // to other programs; false where that can't be

    ViewState& view() { return session.view; }
    const Palette& colours() const { return palette(session.view.dark); }
    float px(double points) const { return static_cast<float>(points) * scale; }
    /// Whether panels stand one below another in a page that scrolls.
    bool narrow() const { return ImGui::GetIO().DisplaySize.x < px(theme::narrow_below); }
};

inline ImVec4 vec(Colour c) {
    constexpr float top = 255;
    return {static_cast<float>(c.red) / top, static_cast<float>(c.green) / top, static_cast<float>(c.blue) / top,
            static_cast<float>(c.alpha) / top};
}

inline ImU32 u32(Colour c) {
    return IM_COL32(c.red, c.green, c.blue, c.alpha);
}

/// Colours, rounding and spacing of the whole window for the palette and scale.
void apply_style(const Palette& palette, float scale);

/// Heights that a finger hits, until the end of the block, where the window is narrow.
class TouchSizes {
public:
    explicit TouchSizes(const Ui& ui);
    ~TouchSizes();
    TouchSizes(const TouchSizes&) = delete;
    TouchSizes& operator=(const TouchSizes&) = delete;

private:
    int pushed_ = 0;
};

/// Lines to choose from, each as high as a table's row, until the end of the block.
class ListRows {
public:
    ListRows();
    ~ListRows() { ImGui::PopStyleVar(); }
    ListRows(const ListRows&) = delete;
    ListRows& operator=(const ListRows&) = delete;
};

/// Font and text colour until the end of the block.
class TextLook {
public:
    TextLook(ImFont* font, Colour colour) {
        ImGui::PushFont(font);
        ImGui::PushStyleColor(ImGuiCol_Text, u32(colour));
    }
    ~TextLook() {
        ImGui::PopStyleColor();
        ImGui::PopFont();
    }
    TextLook(const TextLook&) = delete;
    TextLook& operator=(const TextLook&) = delete;
};

} // namespace pourbook
