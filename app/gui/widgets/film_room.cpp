#include "gui/widgets/film_room.hpp"

#include "answers/picture/film_writer.hpp"
#include "answers/picture/letters.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "gui/state/save_folder.hpp"
#include "gui/widgets/leave_row.hpp"
#include "gui/widgets/text.hpp"
#include "platform/exchange.hpp"

#include <cmath>

namespace pourbook {

/// A film and the race it is of.
struct Recording {
    Recording(const Race& of, const FilmLook& film_look, const Letters& letters, const PictureLook& look,
              const std::string& into)
        : race(of), film(race, film_look, letters), folder(into), writer(film, look, into) {}
    Race race;
    Film film;
    std::string folder;
    FilmWriter writer;
};

namespace {

FilmLook film_look(Ui& ui, double slow) {
    const PictureWish& wish = ui.room.wish;
    const FrameSize size = frame_size(wish.shape, wish.lines);
    FilmLook look;
    look.width = static_cast<int>(std::lround(size.width * size.scale));
    look.height = static_cast<int>(std::lround(size.height * size.scale));
    look.slow = slow;
    look.dark = wish.dark;
    look.date = ui.session.date;
    look.source_name = [&catalogue = ui.session.catalogue](const std::string& key) {
        return short_source(catalogue, key);
    };
    look.marks = ui.view().marks.of;
    return look;
}

void tell_recording(PictureRoom& room, const std::string& words, bool fault) {
    room.told = words;
    room.fault = fault;
}

void begin_recording(Ui& ui, const RacePlay& play) {
    PictureRoom& room = ui.room;
    const Result<const Letters*> measure = letters();
    if (!measure) return tell_recording(room, measure.problem().text, true);
    Race race = play.race;
    if (!room.wish.title.empty()) race.title = room.wish.title;
    PictureLook look;
    look.ground = palette(room.wish.dark).ground;
    if (room.wish.clear) look.ground.alpha = 0;
    const FilmLook wanted = film_look(ui, play.slow);
    look.scale = Film(race, wanted, **measure).scale();
    const std::string folder = fresh_name(room.folder, file_name_of(race.title) + "-frames", "");
    auto recording = std::make_shared<Recording>(race, wanted, **measure, look, folder);
    if (recording->film.frames() > FilmWriter::most_frames)
        return tell_recording(room, "more than " + std::to_string(FilmWriter::most_frames) + " frames", true);
    if (const auto problem = recording->writer.begin()) return tell_recording(room, problem->text, true);
    room.recording = recording;
}

void go_on(Ui& ui) {
    PictureRoom& room = ui.room;
    ui.moving = true;
    const auto problem = room.recording->writer.write_next();
    if (problem)
        tell_recording(room, problem->text, true);
    else if (room.recording->writer.finished())
        tell_recording(
            room, "saved " + std::to_string(room.recording->film.frames()) + " frames in " + room.recording->folder,
            false);
    if (problem || room.recording->writer.finished()) room.recording.reset();
}

} // namespace

void draw_recording(Ui& ui) {
    PictureRoom& room = ui.room;
    const auto at = ui.races.find(room.of);
    if (at == ui.races.end() || !platform::keeps_folders()) return;
    ImGui::Spacing();
    small_dim_text(ui, "film: numbered pictures, 60 a second" +
                           (at->second.slow == 1 ? std::string(", in true time")
                                                 : ", " + trimmed(at->second.slow, 3) + " times slower"));
    if (!room.recording) {
        if (ImGui::Button("Record")) begin_recording(ui, at->second);
        ui.probe.item("room.record", "Record");
        return;
    }
    const std::size_t done = room.recording->writer.written(), all = room.recording->film.frames();
    const std::string words = std::to_string(done) + " of " + std::to_string(all);
    ImGui::ProgressBar(static_cast<float>(done) / static_cast<float>(all),
                       {ImGui::GetContentRegionAvail().x - ui.px(80), ImGui::GetFrameHeight()}, words.c_str());
    ui.probe.item("room.recording", words);
    ImGui::SameLine();
    const bool stopped = ImGui::Button("Stop##recording");
    ui.probe.item("room.record.stop", "Stop");
    if (stopped) {
        room.recording.reset();
        tell_recording(room, "stopped: nothing was saved", false);
    } else
        go_on(ui);
}

} // namespace pourbook
