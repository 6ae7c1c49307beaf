#include "charts/film.hpp"
#include "tests/charts/fixed_measure.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace pourbook;

namespace {

/// A magnet that falls evenly, 0.1 m/s for two seconds; made up.
Race even_fall() {
    Race race;
    race.title = "a fall";
    RaceLane lane;
    lane.id = lane.name = "copper";
    lane.magnet = {eddy::Shape::cylinder, 6e-3, 0, 10e-3};
    lane.bore = {7e-3, 9e-3};
    lane.tube_length_m = 0.2;
    lane.walls = {{{lane.bore, lane.bore, 0, 0.2}, lane.id, std::nullopt}};
    lane.path = {{0, 0, 0.1, 0.08}, {2, 0.2, 0.1, 0.08}};
    race.lanes = {lane};
    return race;
}

bool says(const Scene& scene, const std::string& words) {
    for (const auto& [text, box] : testing::texts_of(scene))
        if (text.find(words) != std::string::npos) return true;
    return false;
}

} // namespace

TEST_CASE("a film's frames follow each other by the video's rate, slowed as asked, and end with the sources") {
    const Race race = even_fall();
    const testing::FixedMeasure measure;
    for (const double slow : {0.5, 1.0, 4.0}) {
        CAPTURE(slow);
        const Film film(race, {1920, 1080, 60, slow}, measure);
        CHECK(film.time_s(1) - film.time_s(0) == Approx(1 / 60.0 / slow));
        CHECK(film.time_s(30) == Approx(0).margin(1e-12)); // half a second before the release
        CHECK(film.frames() >= static_cast<std::size_t>(60 * (0.5 + 2 * slow + 1)));
        CHECK(film.time_s(film.frames() - 2) > 2); // the fall is shown to its end
        const Scene last = film.scene(film.frames() - 1);
        CHECK(says(last, "Sources: "));
        CHECK(says(last, "2.000 s"));
        const auto middle = static_cast<std::size_t>(60 * (0.5 + slow)); // a second after the release
        const Scene half = film.scene(middle);
        CHECK(says(half, "1.000 s"));
        CHECK(says(half, "100 mm/s"));
        CHECK(half.width * film.scale() == Approx(1920));
        CHECK(half.height * film.scale() == Approx(1080));
        for (const Hit& h : half.hits)
            if (h.id == "magnet-0") CHECK(h.hover.find("100 mm below the mouth") != std::string::npos);
    }
}
