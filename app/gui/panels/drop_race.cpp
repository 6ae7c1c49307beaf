// Drop's face: the race, its tube changed by hand in the drawing, liquid nitrogen beside the room's temperature.
#include "core/quantity/format.hpp"
#include "gui/panels/drop_parts.hpp"
#include "gui/widgets/race_view.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "questions/drop/setup_parts.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double grip = 7;                                   // points on either side of an edge
constexpr double wall_step_m = 0.5e-3, length_step_m = 5e-3; // of a tube changed by hand
constexpr double least_wall_m = 0.5e-3, least_length_m = 20e-3;
constexpr std::size_t most_lanes = 5, most_in_pairs = 3;
constexpr double narrow_race = 420; // points of height in a narrow window

/// The edge of a tube under the pointer.
RaceGrip grip_under(const Ui& ui, const Scene& scene, const Race& race, ImVec2 origin) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const double x = static_cast<double>((mouse.x - origin.x) / ui.scale),
                 y = static_cast<double>((mouse.y - origin.y) / ui.scale);
    for (const Hit& h : scene.hits) {
        if (!h.id.starts_with("tube-")) continue;
        const RaceLane& lane = race.lanes[std::stoul(h.id.substr(5))];
        const bool beside = y > h.box.y && y < h.box.bottom() && std::abs(x - h.box.right()) < grip;
        const bool below = x > h.box.x && x < h.box.right() && std::abs(y - h.box.bottom()) < grip;
        if (below) return {RaceGrip::Edge::foot, lane.tube_length_m / h.box.height, lane.tube_length_m, y};
        if (beside)
            return {RaceGrip::Edge::side, 4 * lane.bore.outer_radius_m / h.box.width, 2 * lane.bore.outer_radius_m, x};
    }
    return {};
}

std::string millimetres(double metres, double step) {
    return trimmed(std::round(metres / step) * step * 1000, 6) + "mm";
}

/// A wall or a length drawn with the pointer becomes the tube's in the fields.
void drag_tube(Ui& ui, const Scene& scene, const Race& race, SetupWords& setup) {
    const ImVec2 origin = ImGui::GetItemRectMin();
    const RaceGrip under = ImGui::IsItemHovered() ? grip_under(ui, scene, race, origin) : RaceGrip{};
    if (ImGui::IsItemActivated()) ui.race_grip = under;
    if (!ImGui::IsItemActive()) ui.race_grip = {};
    const RaceGrip& held = ui.race_grip.edge == RaceGrip::Edge::none ? under : ui.race_grip;
    if (held.edge != RaceGrip::Edge::none)
        ImGui::SetMouseCursor(held.edge == RaceGrip::Edge::foot ? ImGuiMouseCursor_ResizeNS
                                                                : ImGuiMouseCursor_ResizeEW);
    if (ui.race_grip.edge == RaceGrip::Edge::none || race.lanes.empty()) return;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const bool foot = held.edge == RaceGrip::Edge::foot;
    const float pixels = foot ? mouse.y - origin.y : mouse.x - origin.x;
    const double now = held.size_m + (static_cast<double>(pixels / ui.scale) - held.from) * held.metres_a_point;
    TubeParts parts = parts_of_tube(setup.tube);
    if (foot)
        parts.length = millimetres(std::max(now, least_length_m), length_step_m);
    else
        parts.outside =
            millimetres(std::max(now, 2 * (race.lanes.front().bore.inner_radius_m + least_wall_m)), wall_step_m);
    setup.tube = tube_words(parts);
}

/// As many lanes as can be read in this width, in points; in pairs, each metal warm and cold.
std::vector<DropOfMetal> lanes_of(const std::vector<DropOfMetal>& warm, const std::vector<DropOfMetal>* cold,
                                  double width) {
    std::vector<DropOfMetal> out;
    const std::size_t room = readable_lanes(width);
    const std::size_t most = cold ? std::clamp<std::size_t>(room / 2, 1, most_in_pairs) : std::min(room, most_lanes);
    for (std::size_t i = 0; i < std::min(warm.size(), most); ++i) {
        out.push_back(warm[i]);
        if (cold && i < cold->size()) out.push_back((*cold)[i]);
    }
    return out;
}

Race race_in(Ui& ui, const std::vector<DropOfMetal>& drops, bool in_pairs) {
    Race race = race_of(ui.session.catalogue, drops, ui.session.units());
    for (std::size_t i = 0; i < race.lanes.size(); ++i) race.lanes[i].slot = in_pairs ? i / 2 : i;
    return race;
}

std::vector<DropOfMetal> both(const AgainstResult& r) {
    return {{r.first.tube.metal, r.first}, {r.second.tube.metal, r.second}};
}

constexpr double beside_controls = 135; // points that the lever takes in their line

void draw_nitrogen(Ui& ui) {
    bool& on = ui.view().drop.nitrogen;
    flow(ui.px(beside_controls));
    ImGui::Checkbox("liquid nitrogen", &on);
    ui.probe.item("drop.nitrogen", on ? "on" : "off");
}

std::string race_key(Ui& ui, const std::string& what, std::size_t serial) {
    return what + std::to_string(serial) + (ui.view().workshop_units ? "w" : "s");
}

constexpr ImGuiWindowFlags race_still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;

float room_for_race(const Ui& ui) {
    constexpr double controls = 590; // with the lever in their line
    const float lines = ImGui::GetContentRegionAvail().x < ui.px(controls) ? 2 : 1;
    if (ui.narrow()) return ui.px(narrow_race);
    return ImGui::GetContentRegionAvail().y - lines * ImGui::GetFrameHeightWithSpacing() -
           ImGui::GetStyle().ItemSpacing.y;
}

} // namespace

void draw_race(Ui& ui, const std::vector<DropOfMetal>& warm, ImVec2 size) {
    begin_panel(ui, "race", size, race_still);
    const DropQuestions::Falls* cold =
        ui.view().drop.nitrogen ? ui.session.drop.falls_in_nitrogen(ui.session.part_conditions()) : nullptr;
    const bool in_pairs = cold && *cold;
    const std::size_t serial = ui.session.drop.falls_serial() + 1000 * ui.session.drop.nitrogen_serial();
    const double width = static_cast<double>(ImGui::GetContentRegionAvail().x / ui.scale);
    const std::vector<DropOfMetal> lanes = lanes_of(warm, in_pairs ? &(**cold).drops : nullptr, width);
    const std::string of = (in_pairs ? "pairs" : "race") + std::to_string(lanes.size()) + ".";
    const Scene scene =
        race_view(ui, "drop.race", race_key(ui, of, serial), [&] { return race_in(ui, lanes, in_pairs); }, false,
                  {ImGui::GetContentRegionAvail().x, room_for_race(ui)});
    drag_tube(ui, scene, ui.races["drop.race"].race, ui.view().drop_setup);
    race_controls(ui, "drop.race", false);
    draw_nitrogen(ui);
    end_panel(ui);
}

void draw_race_of_two(Ui& ui, const AgainstResult& result, ImVec2 size) {
    begin_panel(ui, "race", size, race_still);
    race_view(ui, "drop.duel", race_key(ui, "duel", ui.session.drop.against_serial()),
              [&] { return race_in(ui, both(result), false); }, false,
              {ImGui::GetContentRegionAvail().x, room_for_race(ui)});
    race_controls(ui, "drop.duel", false);
    end_panel(ui);
}

} // namespace pourbook
