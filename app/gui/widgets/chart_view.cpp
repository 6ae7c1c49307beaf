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

Canvas canvas_of(Ui& ui, const std::string& id, double width, double height, const TextMeasure& measure) {
    Canvas canvas{width, height, ui.colours(), measure};
    canvas.marks = &ui.view().marks.of;
    canvas.range = ui.plots[id].range;
    canvas.source_name = [&](const std::string& key) { return short_source(ui.session.catalogue, key); };
    return canvas;
}

/// Who is pinned meanwhile gets a mark of its own.
std::string marks_key(Ui& ui) {
    return std::to_string(ui.view().marks.of.size());
}

const Scene& scene_for(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                       const std::function<Scene(const Canvas&)>& build) {
    CachedScene& cached = ui.scenes[id];
    const std::string full = key + "|" + std::to_string(size.x) + "x" + std::to_string(size.y) +
                             (ui.session.view.dark ? "d" : "l") + marks_key(ui) + range_key(ui.plots[id].range);
    if (cached.key != full) {
        const FontMeasure measure(ui);
        cached.scene = build(
            canvas_of(ui, id, static_cast<double>(size.x / ui.scale), static_cast<double>(size.y / ui.scale), measure));
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
Result<std::string> picture(Ui& ui, const std::string& id, const Scene& shown, const std::string& file,
                            const std::function<Scene(const Canvas&)>& build) {
    const Result<PictureFormat> format = picture_format(file);
    if (!format) return format.problem();
    const Result<const Letters*> measure = letters();
    if (!measure) return measure.problem();
    Canvas canvas = canvas_of(ui, id, shown.width, shown.height, **measure);
    canvas.date = ui.session.date;
    const Scene scene = build(canvas);
    return picture_of(scene, *format, {2, ui.colours().ground, scene.title, ui.session.date});
}

void leave(Ui& ui, const std::string& id, const Scene& scene, const std::function<Scene(const Canvas&)>& build) {
    Leaving l;
    l.what = "picture";
    l.name = file_name_of(scene.title);
    l.ending = ".png";
    l.endings = ".png, .svg or .pdf";
    l.made = [&](const std::string& file) { return picture(ui, id, scene, file, build); };
    l.words = [&] { return caption_line(ui.session.catalogue, scene, ui.session.date); };
    l.frame = [&] { open_room(ui, id); };
    leave_row(ui, id, l);
}

const Hit* hit_under_pointer(const Ui& ui, const Scene& scene, ImVec2 origin) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    return scene.hit_at(
        {static_cast<double>((mouse.x - origin.x) / ui.scale), static_cast<double>((mouse.y - origin.y) / ui.scale)});
}

/// In a plot the lines are there to be read; what stands beside it, or as a point of its own, can be opened.
bool names_metal(const Scene& scene, const Hit& hit) {
    return !scene.plot || hit.opens || hit.box.x >= scene.plot->box.right();
}

std::string chart_with_line(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                            const std::function<Scene(const Canvas&)>& build) {
    size.y -= ImGui::GetFrameHeightWithSpacing();
    const Scene& scene = scene_for(ui, id, key, size, build);
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    const bool released = ImGui::InvisibleButton(id.c_str(), size);
    const bool hovered = ImGui::IsItemHovered();
    ui.probe.item(id, scene.title);
    const float moved = ImGui::GetIO().MouseDragMaxDistanceSqr[0], slack = ui.px(3);
    const bool clicked = released && moved < slack * slack;
    paint(ui, scene, *ImGui::GetWindowDrawList(), origin);
    const Hit* hit = hovered ? hit_under_pointer(ui, scene, origin) : nullptr;
    use_plot(ui, id, scene, origin, clicked && !(hit && names_metal(scene, *hit)), hovered);
    note_hits(ui, id, scene, origin);
    note_words(ui, id, scene);
    leave(ui, id, scene, build);
    offer_to_room(ui, id, key, build);
    if (!hit) return {};
    hover_text(ui, hit->hover);
    return clicked && (!scene.plot || names_metal(scene, *hit)) ? hit->id : std::string();
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

std::string read_chart_view(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                            const std::function<Scene(const Canvas&)>& build, std::size_t lines,
                            const PlotReader& reader) {
    ImGui::BeginGroup();
    draw_strip(ui, id, reader, lines, size.x);
    const std::string clicked = chart_view(ui, id, key, {size.x, size.y - strip_height(ui, lines, size.x)}, build);
    ImGui::EndGroup();
    return clicked;
}

} // namespace pourbook
