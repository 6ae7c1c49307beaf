#include "gui/widgets/picture_room.hpp"

#include "answers/picture/letters.hpp"
#include "answers/picture/picture.hpp"
#include "answers/picture/pixels.hpp"
#include "charts/words.hpp"
#include "gui/state/save_folder.hpp"
#include "gui/widgets/film_room.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/theme.hpp"
#include "platform/exchange.hpp"
#include "platform/folders.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;
constexpr double controls_width = 320;
constexpr std::array<int, 3> line_counts = {1080, 1440, 2160};
constexpr std::size_t most_last = 5;

std::string wish_key(const PictureWish& w) {
    return std::to_string(static_cast<int>(w.shape)) + "x" + std::to_string(w.lines) + (w.dark ? "d" : "l") +
           (w.clear ? "c" : "") + "|" + w.title + "|" + w.credit;
}

PictureLook look_of(const Ui& ui, double scale) {
    const PictureRoom& room = ui.room;
    Colour ground = palette(room.wish.dark).ground;
    if (room.wish.clear) ground.alpha = 0;
    return {scale, ground, room.scene.title, ui.session.date};
}

void tell(PictureRoom& room, const std::string& words, bool fault) {
    room.told = words;
    room.fault = fault;
}

Result<std::string> bytes_for(Ui& ui, const std::string& file) {
    const Result<PictureFormat> format = picture_format(file);
    if (!format) return format.problem();
    return picture_of(ui.room.scene, *format, look_of(ui, frame_size(ui.room.wish.shape, ui.room.wish.lines).scale));
}

void save(Ui& ui) {
    PictureRoom& room = ui.room;
    const std::string file = (fs::path(room.folder) / room.file).string();
    std::error_code ignored;
    if (room.warned_of != file && fs::exists(file, ignored)) {
        room.warned_of = file;
        return tell(room, "there is such a file: Save again to replace it", true);
    }
    const Result<std::string> bytes = bytes_for(ui, file);
    const Result<std::string> saved = bytes ? platform::deliver(file, *bytes) : bytes;
    if (!saved) return tell(room, saved.problem().text, true);
    room.warned_of = file;
    std::erase(room.last, file);
    room.last.insert(room.last.begin(), file);
    if (room.last.size() > most_last) room.last.pop_back();
    tell(room, "saved as " + room.file, false);
}

void copy(Ui& ui) {
    const Result<std::string> png = bytes_for(ui, "picture.png");
    if (!png) return tell(ui.room, png.problem().text, true);
    const bool taken = ui.offer_picture && ui.offer_picture(*png);
    tell(ui.room, taken ? "the picture is on the clipboard" : "the clipboard takes no picture from this window",
         !taken);
}

void small_label(Ui& ui, const char* words) {
    ImGui::Spacing();
    small_dim_text(ui, words);
}

void draw_shape(Ui& ui) {
    PictureWish& wish = ui.room.wish;
    small_label(ui, "frame");
    const int shape = choice(ui, "room.shape", {frame_names.begin(), frame_names.end()}, static_cast<int>(wish.shape));
    if (shape >= 0) wish.shape = static_cast<FrameShape>(shape);
    small_label(ui, "pixels of the shorter side");
    const auto at = std::find(line_counts.begin(), line_counts.end(), wish.lines);
    const int lines =
        choice(ui, "room.lines", {"1080", "1440", "2160 (4K)"}, static_cast<int>(at - line_counts.begin()));
    if (lines >= 0) wish.lines = line_counts[static_cast<std::size_t>(lines)];
    small_label(ui, "ground");
    if (const int dark = choice(ui, "room.ground", {"dark", "light"}, wish.dark ? 0 : 1); dark >= 0)
        wish.dark = dark == 0;
    ImGui::SameLine();
    ImGui::Checkbox("clear", &wish.clear);
    ui.probe.item("room.clear", wish.clear ? "on" : "off");
    if (ImGui::IsItemHovered())
        hover_text(ui,
                   "Clear ground\nnothing behind the picture: light letters for a dark film, dark ones for a light");
}

void draw_words(Ui& ui) {
    PictureWish& wish = ui.room.wish;
    small_label(ui, "title");
    ImGui::SetNextItemWidth(-1);
    const std::string own = fitted(ui.room.own_title, ImGui::GetContentRegionAvail().x - 2 * ui.px(theme::near));
    ImGui::InputTextWithHint("##title", own.c_str(), &wish.title);
    ui.probe.item("room.title", wish.title);
    small_label(ui, "credit");
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##credit", "your name or channel", &wish.credit);
    ui.probe.item("room.credit", wish.credit);
}

/// The pinned ones are those of every picture; here one can be left out.
void draw_framed_metals(Ui& ui) {
    small_label(ui, "metals (pinned; Ctrl+Z brings back)");
    const std::vector<std::string> pins = ui.view().pins;
    for (std::size_t i = 0; i < pins.size(); ++i) {
        const Metal* metal = ui.session.catalogue.metal(pins[i]);
        if (!metal) continue;
        pin_mark(ui, mark_of(ui.view(), pins[i]), ImGui::GetTextLineHeight());
        ImGui::SameLine(0, ui.px(theme::tight));
        const float cross = ui.px(30);
        text(fitted(metal->name, ImGui::GetContentRegionAvail().x - cross));
        ImGui::SameLine(ImGui::GetContentRegionMax().x - cross);
        if (ImGui::SmallButton(("×##room." + pins[i]).c_str())) toggle_pin(ui.view(), pins[i]);
        ui.probe.item("room.unpin." + pins[i], "×");
    }
}

/// The folder above, and those in it.
void draw_folder(Ui& ui) {
    PictureRoom& room = ui.room;
    small_label(ui, "folder");
    if (ImGui::BeginCombo("##folder", fs::path(room.folder).filename().c_str())) {
        std::error_code error;
        const fs::path now = room.folder;
        if (now.has_parent_path() && ImGui::Selectable("..")) room.folder = now.parent_path().string();
        std::vector<std::string> inside;
        for (auto at = fs::directory_iterator(now, error); !error && at != fs::directory_iterator();
             at.increment(error))
            if (at->is_directory(error) && !at->path().filename().string().starts_with("."))
                inside.push_back(at->path().string());
        std::sort(inside.begin(), inside.end());
        for (const std::string& folder : inside)
            if (ImGui::Selectable(fs::path(folder).filename().c_str())) room.folder = folder;
        ImGui::EndCombo();
    }
    ui.probe.item("room.folder", room.folder);
    if (ImGui::IsItemHovered()) hover_text(ui, "Folder\n" + room.folder);
    ImGui::SetNextItemWidth(-1);
    ImGui::InputText("##file", &room.file);
    ui.probe.item("room.file", room.file);
}

void draw_buttons(Ui& ui) {
    ImGui::Spacing();
    if (ImGui::Button("Save##room")) save(ui);
    ui.probe.item("room.save", "Save");
    ImGui::SameLine();
    if (ImGui::Button("Copy##room")) copy(ui);
    ui.probe.item("room.copy", "Copy");
    ImGui::SameLine();
    if (ui.open_folder && ImGui::Button("Open folder")) ui.open_folder(ui.room.folder);
    draw_recording(ui);
    if (!ui.room.told.empty()) wrapped_text(ui.room.told, ui.room.fault ? ui.colours().warning : ui.colours().dim);
    ui.probe.say("room.told", ui.room.told);
    if (!ui.room.last.empty()) small_label(ui, "saved last");
    for (const std::string& file : ui.room.last) {
        small_fitted_text(ui, fs::path(file).filename().string());
        if (ImGui::IsItemHovered()) hover_text(ui, file);
    }
}

/// The file's own pixels, as many as there is room for.
void draw_preview(Ui& ui, ImVec2 room_size) {
    PictureRoom& room = ui.room;
    if (room.scene.width <= 0 || !ui.show_pixels) return;
    const double scale = std::min(static_cast<double>(room_size.x) / room.scene.width,
                                  static_cast<double>(room_size.y) / room.scene.height);
    const auto width = static_cast<int>(std::lround(room.scene.width * scale)),
               height = static_cast<int>(std::lround(room.scene.height * scale));
    const std::string key = room.laid_out + "@" + std::to_string(width);
    if (room.shown != key) {
        if (auto pixels = pixels_of(room.scene, look_of(ui, scale)))
            room.texture = ui.show_pixels(Pixels{width, height, std::move(*pixels)});
        room.shown = key;
    }
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 at{low.x + (room_size.x - static_cast<float>(width)) / 2,
                    low.y + (room_size.y - static_cast<float>(height)) / 2};
    const ImVec2 end{at.x + static_cast<float>(width), at.y + static_cast<float>(height)};
    ImGui::GetWindowDrawList()->AddImage(room.texture, at, end);
    ImGui::GetWindowDrawList()->AddRect(at, end, u32(ui.colours().line));
    ui.probe.box("room.picture", {static_cast<double>(at.x), static_cast<double>(at.y), static_cast<double>(width),
                                  static_cast<double>(height), room.scene.title});
}

void draw_controls(Ui& ui) {
    heading(ui, "Picture");
    ImGui::SameLine(ImGui::GetContentRegionMax().x - button_width("close  Esc"));
    const bool escaped = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape)) && !ImGui::GetIO().WantTextInput;
    if (word_button(ui, "room.close", "close  Esc", false) || escaped) {
        ui.room.of.clear();
        ui.room.recording.reset();
    }
    draw_shape(ui);
    draw_words(ui);
    draw_framed_metals(ui);
    draw_folder(ui);
    draw_buttons(ui);
}

} // namespace

void open_room(Ui& ui, const std::string& id) {
    PictureRoom& room = ui.room;
    room.of = id;
    room.laid_out.clear();
    room.file.clear();
    room.told.clear();
    room.wish.title.clear();
    for (auto& [name, race] : ui.races) race.running = false;
    if (room.folder.empty()) room.folder = platform::save_folder("PICTURES");
}

void offer_to_room(Ui& ui, const std::string& id, const std::string& key, const SceneMaker& make) {
    PictureRoom& room = ui.room;
    if (room.of != id) return;
    const std::string full = key + "|" + wish_key(room.wish) + "|" + std::to_string(ui.view().marks.of.size());
    if (room.laid_out == full) return;
    const Result<const Letters*> measure = letters();
    if (!measure) return tell(room, measure.problem().text, true);
    room.scene = framed(
        make, room.wish, **measure, ui.session.date,
        [&](const std::string& source) { return short_source(ui.session.catalogue, source); }, &ui.view().marks.of);
    room.laid_out = full;
    if (room.wish.title.empty()) room.own_title = room.scene.title;
    if (room.file.empty())
        room.file = fs::path(fresh_name(room.folder, file_name_of(room.scene.title), ".png")).filename().string();
}

void draw_picture_room(Ui& ui) {
    if (ui.room.of.empty()) return;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
    ImGui::Begin("picture room", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
    ui.probe.tab.cover();
    const ImVec2 all = ImGui::GetContentRegionAvail();
    const float controls = ui.px(controls_width), gap = ui.px(theme::wide);
    constexpr float upper = 0.4F; // of a narrow window, for the preview
    const bool narrow = ui.narrow();
    ImGui::BeginChild("preview", narrow ? ImVec2{all.x, all.y * upper} : ImVec2{all.x - controls - gap, all.y});
    draw_preview(ui, ImGui::GetContentRegionAvail());
    ImGui::EndChild();
    if (!narrow) ImGui::SameLine(0, gap);
    ImGui::BeginChild("controls", narrow ? ImVec2{0, 0} : ImVec2{controls, all.y});
    draw_controls(ui);
    ImGui::EndChild();
    ImGui::End();
    ui.probe.say("room", ui.room.of);
}

} // namespace pourbook
