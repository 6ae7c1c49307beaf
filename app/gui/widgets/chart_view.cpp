#include "gui/widgets/chart_view.hpp"

#include "answers/picture/letters.hpp"
#include "answers/picture/picture.hpp"
#include "charts/words.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/picture_room.hpp"
#include "gui/widgets/scene_painter.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {
namespace {

const Scene& scene_for(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                       const std::function<Scene(const Canvas&)>& build) {
    CachedScene& cached = ui.scenes[id];
    const std::string full =
        key + "|" + std::to_string(size.x) + "x" + std::to_string(size.y) + (ui.session.view.dark ? "d" : "l");
    if (cached.key != full) {
        const FontMeasure measure(ui);
        cached.scene = build(
            {static_cast<double>(size.x / ui.scale), static_cast<double>(size.y / ui.scale), ui.colours(), measure});
        cached.key = full;
    }
    return cached.scene;
}

void note_hits(Ui& ui, const std::string& id, const Scene& scene, ImVec2 origin) {
    if (!ui.probe.on) return;
    std::unordered_map<std::string, int> seen;
    for (const Hit& h : scene.hits) {
        const int number = seen[h.id]++;
        if (number > 2) continue; // enough for a test to point at
        ui.probe.box(id + "." + h.id + "." + std::to_string(number),
                     {static_cast<double>(origin.x) + h.box.x * static_cast<double>(ui.scale),
                      static_cast<double>(origin.y) + h.box.y * static_cast<double>(ui.scale),
                      h.box.width * static_cast<double>(ui.scale), h.box.height * static_cast<double>(ui.scale),
                      h.hover});
    }
}

/// What is written on it, a line a piece.
void note_words(Ui& ui, const std::string& id, const Scene& scene) {
    if (!ui.probe.on) return;
    std::string words;
    for (const Primitive& part : scene.parts)
        if (const Text* piece = std::get_if<Text>(&part)) words += piece->text + "\n";
    ui.probe.say(id + ".words", words);
}

/// The chart as a file: as large as it is on screen, in the same colours, with twice the pixels.
Result<std::string> picture(const Ui& ui, const Scene& shown, const std::string& file,
                            const std::function<Scene(const Canvas&)>& build) {
    const Result<PictureFormat> format = picture_format(file);
    if (!format) return format.problem();
    const Result<const Letters*> measure = letters();
    if (!measure) return measure.problem();
    const Scene scene = build({shown.width, shown.height, ui.colours(), **measure, ui.session.date});
    return picture_of(scene, *format, {2, ui.colours().ground, scene.title, ui.session.date});
}

void leave(Ui& ui, const std::string& id, const Scene& scene, const std::function<Scene(const Canvas&)>& build) {
    Leaving l;
    l.what = "picture";
    l.name = file_name_of(scene.title);
    l.ending = ".png";
    l.endings = ".png, .svg or .pdf";
    l.made = [&](const std::string& file) { return picture(ui, scene, file, build); };
    l.words = [&] { return caption_line(ui.session.catalogue, scene, ui.session.date); };
    l.frame = [&] { open_room(ui, id); };
    leave_row(ui, id, l);
}

std::string chart_with_line(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                            const std::function<Scene(const Canvas&)>& build) {
    size.y -= ImGui::GetFrameHeightWithSpacing();
    const Scene& scene = scene_for(ui, id, key, size, build);
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    const bool clicked = ImGui::InvisibleButton(id.c_str(), size);
    const bool hovered = ImGui::IsItemHovered();
    paint(ui, scene, *ImGui::GetWindowDrawList(), origin);
    note_hits(ui, id, scene, origin);
    note_words(ui, id, scene);
    leave(ui, id, scene, build);
    offer_to_room(ui, id, key, build);
    if (!hovered) return {};
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const Hit* hit = scene.hit_at(
        {static_cast<double>((mouse.x - origin.x) / ui.scale), static_cast<double>((mouse.y - origin.y) / ui.scale)});
    if (!hit) return {};
    hover_text(ui, hit->hover);
    return clicked ? hit->id : std::string();
}

} // namespace

std::string chart_view(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                       const std::function<Scene(const Canvas&)>& build) {
    if (size.x < ui.px(80) || size.y < ui.px(80) + ImGui::GetFrameHeightWithSpacing()) {
        ImGui::Dummy(size);
        return {};
    }
    constexpr ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
    ImGui::BeginChild((id + ".box").c_str(), size, false, still); // chart and line are one thing beside others
    const std::string clicked = chart_with_line(ui, id, key, size, build);
    ImGui::EndChild();
    return clicked;
}

} // namespace pourbook
