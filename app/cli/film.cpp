#include "charts/film.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/picture/film_writer.hpp"
#include "answers/picture/letters.hpp"
#include "charts/words.hpp"
#include "cli/options.hpp"
#include "questions/drop/film_question.hpp"

namespace pourbook {
namespace {

std::optional<Problem> write_film(const Film& film, const PictureLook& look, const std::string& folder) {
    FilmWriter writer(film, look, folder);
    auto problem = writer.begin();
    while (!problem && !writer.finished()) problem = writer.write_next();
    return problem;
}

std::string said(const Film& film, const FilmAsked& asked, const Race& race, const std::string& folder) {
    std::string out = "Wrote " + std::to_string(film.frames()) + " frames of " + std::to_string(asked.width) + "x" +
                      std::to_string(asked.height) + " to " + folder + " (" + FilmWriter::file_name(0) + " to " +
                      FilmWriter::file_name(film.frames() - 1) + ", the last with the sources).\n";
    for (const std::string& caution : race.cautions) out += "Caution: " + caution + "\n";
    return out;
}

std::string json_said(const Film& film, const Race& race, const std::string& folder) {
    Json lanes = Json::array();
    for (const RaceLane& lane : race.lanes)
        lanes.push_back({{"metal", lane.id},
                         {"fall_time_s", lane.path.empty() ? Json(nullptr) : Json(lane.path.back().time_s)},
                         {"fall_time_low90_s", lane.path.empty() ? Json(nullptr) : Json(lane.low_s)},
                         {"fall_time_high90_s", lane.path.empty() ? Json(nullptr) : Json(lane.high_s)},
                         {"reason", lane.problem.empty() ? Json(nullptr) : Json(lane.problem)}});
    return json_text({{"folder", folder},
                      {"frames", film.frames()},
                      {"release_frame_s", -film.time_s(0)},
                      {"falls", lanes},
                      {"cautions", race.cautions},
                      {"sources", race.origin.sources},
                      {"data_version", race.origin.data_version}});
}

int make_film(const Context& context, const Catalogue& catalogue, const Stated& stated, const std::string& folder) {
    const Result<FilmAsked> asked = film_question().read(stated, catalogue);
    if (!asked) return context.failed(asked.problem());
    const Result<UnitSystem> units = units_from(context.units);
    if (!units) return context.failed(units.problem());
    const auto falls = film_falls(stated, catalogue);
    if (!falls) return context.failed(falls.problem());
    const Result<const Letters*> measure = letters();
    if (!measure) return context.failed(measure.problem());
    const bool dark = asked->ground != "light";
    const Race race = race_of(catalogue, *falls, *units);
    const auto source_name = [&](const std::string& key) { return short_source(catalogue, key); };
    const Film film(race, {asked->width, asked->height, asked->rate_1_s, asked->slow, dark, context.date, source_name},
                    **measure);
    if (film.frames() > FilmWriter::most_frames)
        return context.failed(refused("a film of " + std::to_string(film.frames()) + " frames is more than " +
                                      std::to_string(FilmWriter::most_frames) +
                                      ": --slow below 1 makes it faster than life, --rate takes fewer a second"));
    PictureLook look;
    look.scale = film.scale();
    look.ground = palette(dark).ground;
    if (asked->ground == "clear") look.ground.alpha = 0;
    if (const auto problem = write_film(film, look, folder)) return context.failed(*problem);
    return context.printed(context.json ? json_said(film, race, folder) : said(film, *asked, race, folder));
}

} // namespace

void declare_film(Context& context) {
    const auto stated = std::make_shared<Stated>(film_question());
    const auto folder = std::make_shared<std::string>();
    CLI::App* c = command_of(context, *stated);
    c->add_option("--to", *folder, "a new folder for the pictures")->required();
    c->callback([&context, stated, folder] {
        context.answer = [&context, stated, folder](const Catalogue& catalogue) {
            return make_film(context, catalogue, *stated, *folder);
        };
    });
}

} // namespace pourbook
