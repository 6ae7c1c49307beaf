#include "gui/widgets/race_view.hpp"

#include "core/quantity/format.hpp"
#include "gui/widgets/picture_room.hpp"
#include "gui/widgets/scene_painter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/theme.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr double stays_s = 0.5; // after the last magnet is out
constexpr std::array<double, 3> paces = {1, 4, 20};

void begin(RacePlay& play) {
    play.time_s = 0;
    play.running = true;
}

void pass_time(Ui& ui, RacePlay& play) {
    if (!play.running) return;
    play.time_s += static_cast<double>(ImGui::GetIO().DeltaTime) / play.slow;
    const double end = play.race.end_s() + stays_s / play.slow;
    if (play.time_s >= end) {
        play.time_s = end;
        play.running = false;
    }
    ui.moving = ui.moving || play.running;
}

void note_places(Ui& ui, const std::string& id, const Scene& scene, ImVec2 origin, const RacePlay& play) {
    if (!ui.probe.on) return;
    ui.probe.say(id + ".time", trimmed(play.time_s, 9));
    const auto at = [&](double points) { return points * static_cast<double>(ui.scale); };
    for (const Hit& h : scene.hits)
        ui.probe.box(id + "." + h.id,
                     {static_cast<double>(origin.x) + at(h.box.x), static_cast<double>(origin.y) + at(h.box.y),
                      at(h.box.width), at(h.box.height), h.hover});
}

} // namespace

std::size_t readable_lanes(double width) {
    constexpr double least_lane = 84; // in which a name can be read
    return static_cast<std::size_t>(std::max(1.0, width / least_lane));
}

Scene race_view(Ui& ui, const std::string& id, const std::string& key, const std::function<Race()>& make, bool at_once,
                ImVec2 size) {
    RacePlay& play = ui.races[id];
    if (play.key != key) {
        play.race = make();
        play.key = key;
        play.time_s = std::min(play.time_s, play.race.end_s());
        if (at_once && !play.running) begin(play);
    }
    pass_time(ui, play);
    const FontMeasure measure(ui);
    Canvas canvas{static_cast<double>(size.x / ui.scale), static_cast<double>(size.y / ui.scale), ui.colours(),
                  measure};
    canvas.marks = &ui.view().marks.of;
    Scene scene = race_scene(play.race, play.time_s, play.slow, canvas);
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(id.c_str(), size);
    paint(ui, scene, *ImGui::GetWindowDrawList(), origin);
    note_places(ui, id, scene, origin, play);
    if (ui.session.passing.leaving == "frame") {
        ui.session.passing.leaving.clear();
        open_room(ui, id);
    }
    offer_to_room(ui, id, key + trimmed(play.time_s, 9),
                  [&](const Canvas& c) { return race_scene(play.race, play.time_s, play.slow, c); });
    return scene;
}

void race_controls(Ui& ui, const std::string& id, bool large) {
    RacePlay& play = ui.races[id];
    const bool over = !play.race.lanes.empty() && play.time_s >= play.race.end_s();
    const char* words = play.running ? "Stop" : over ? "Drop them again" : "Drop the magnets";
    ImGui::PushFont(large ? ui.fonts.heading : ui.fonts.strong);
    ImGui::PushStyleColor(ImGuiCol_Button, u32(ui.colours().accent));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, u32(ui.colours().accent.with_alpha(220)));
    ImGui::PushStyleColor(ImGuiCol_Text, u32(ui.colours().ground));
    ImVec2 size{large ? ui.px(230) : 0, 0};
    if (ui.narrow()) size = {ImGui::GetContentRegionAvail().x, ui.px(static_cast<double>(theme::touch_button))};
    bool pressed = ImGui::Button((std::string(words) + "##" + id).c_str(), size);
    ImGui::PopStyleColor(3);
    ImGui::PopFont();
    ui.probe.item(id + ".go", words);
    const bool space = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Space), false);
    if (space && !ImGui::GetIO().WantTextInput && !ImGui::GetIO().NavVisible) pressed = true;
    if (pressed && play.running)
        play.running = false;
    else if (pressed && (over || play.time_s <= 0))
        begin(play);
    else if (pressed)
        play.running = true;
    ui.moving = ui.moving || play.running;
    flow(button_width("true time"));
    const auto at = std::find(paces.begin(), paces.end(), play.slow);
    const int pace =
        choice(ui, id + ".pace", {"true time", "4 × slower", "20 × slower"}, static_cast<int>(at - paces.begin()));
    if (pace >= 0) play.slow = paces[static_cast<std::size_t>(pace)];
}

} // namespace pourbook
