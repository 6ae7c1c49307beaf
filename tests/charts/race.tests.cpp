#include "charts/race.hpp"
#include "support/small_catalogue.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"

#include <cmath>

using namespace pourbook;
using testing::canvas;

namespace {

DropRequest race_request() {
    DropRequest r;
    r.setup.magnet = "cylinder:12mmx10mm";
    r.setup.grade = "N42";
    r.setup.tube = "13mm:15mm:400mm";
    r.samples = 50;
    return r;
}

Race four_metals() {
    const Catalogue& catalogue = testing::real_catalogue();
    const auto drops = drop_in_each(catalogue, race_request(), {"copper", "aluminium-6061", "brass-cartridge", "iron"});
    REQUIRE(drops);
    return race_of(catalogue, *drops, UnitSystem::shown);
}

const Hit& hit(const Scene& scene, const std::string& id) {
    for (const Hit& h : scene.hits)
        if (h.id == id) return h;
    FAIL("no hit " << id);
    return scene.hits.front();
}

/// The magnet's depth as a person would measure it on the picture.
double depth_read(const Scene& scene, const RaceLane& lane, int i) {
    const Box tube = hit(scene, "tube-" + std::to_string(i)).box,
              magnet = hit(scene, "magnet-" + std::to_string(i)).box;
    return (magnet.y + magnet.height / 2 - tube.y) / tube.height * lane.tube_length_m;
}

/// The clock at the top: the first text that ends in seconds.
double clock_read(const Scene& scene) {
    for (const Primitive& p : scene.parts)
        if (const Text* t = std::get_if<Text>(&p); t && t->text.ends_with(" s")) return std::stod(t->text);
    return NAN;
}

/// The same fall by small explicit steps (Runge and Kutta's classical rule), independent of the fall's own integrator.
double depth_by_small_steps(const eddy::FallSetup& s, double until_s) {
    const double h = 2e-5;
    double z = s.from_depth_m, v = 0;
    const auto pull = [&](double at, double speed) {
        return s.gravity_m_s2 - s.drag_N(std::max(speed, 0.0)) * s.share(at) / s.mass_kg;
    };
    for (double t = 0; t < until_s - h / 2; t += h) {
        const double a1 = pull(z, v), a2 = pull(z + h / 2 * v, v + h / 2 * a1),
                     a3 = pull(z + h / 2 * (v + h / 2 * a1), v + h / 2 * a2),
                     a4 = pull(z + h * (v + h / 2 * a2), v + h * a3);
        z += h * v + h * h / 6 * (a1 + a2 + a3);
        v += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
    }
    return z;
}

} // namespace

TEST_CASE("the clock of every frame and the magnets' places in it belong together") {
    const Race race = four_metals();
    REQUIRE(race.lanes.size() == 4);
    const double frames_1_s = 60, slow = 4;
    int frames = 0;
    for (double t = 0; t < race.end_s() + 0.2; t += 1 / frames_1_s / slow, ++frames) {
        const Scene scene = race_scene(race, t, slow, canvas(640, 360));
        REQUIRE(clock_read(scene) == Approx(std::min(t, race.end_s())).margin(0.0005001)); // stops with the last
        for (int i = 0; i < 3; ++i) {
            const RaceLane& lane = race.lanes[static_cast<std::size_t>(i)];
            REQUIRE(depth_read(scene, lane, i) == Approx(place_at(lane, t).depth_m).margin(1e-9));
        }
    }
    CHECK(frames > 300);
}

TEST_CASE("places between the instants of a fall are those of an independent integration") {
    const Catalogue& catalogue = testing::real_catalogue();
    const auto drops = drop_in_each(catalogue, race_request(), {"copper", "brass-cartridge"});
    REQUIRE(drops);
    const Race race = race_of(catalogue, *drops, UnitSystem::shown);
    for (std::size_t i = 0; i < 2; ++i) {
        const DropResult& r = *(*drops)[i].result;
        const eddy::FallSetup s = r.model->setup(r.tube.conductivity_S_m());
        const double end = r.fall.time_s;
        double before = -1;
        for (int k = 0; k <= 200; ++k) {
            const RacePlace p = place_at(race.lanes[i], end * k / 200);
            CHECK(p.depth_m > before);
            before = p.depth_m;
        }
        for (const double t : {0.004, 0.011, 0.03, 0.1 * end, 0.5 * end, 0.97 * end}) {
            CAPTURE(i, t);
            CHECK(place_at(race.lanes[i], t).depth_m == Approx(depth_by_small_steps(s, t)).margin(2e-5));
        }
    }
}

TEST_CASE("a magnet stands before its release and where its timing ended") {
    const Race race = four_metals();
    const RaceLane& copper = race.lanes[0];
    CHECK(place_at(copper, -1).depth_m == 0);
    CHECK(place_at(copper, -1).speed_m_s == 0);
    const RacePlace last = place_at(copper, 1e6);
    CHECK(last.out);
    CHECK(last.depth_m == Approx(0.4));
    CHECK(last.time_s == Approx(copper.path.back().time_s));
    // Half way it falls evenly, and the hand holds its weight (Newton).
    const RacePlace half = place_at(copper, copper.path.back().time_s / 2);
    const double weight_N = 7500 * 3.14159265 * 0.006 * 0.006 * 0.010 * 9.80665;
    CHECK(half.load_N == Approx(weight_N).epsilon(0.03)); // density of the magnet: 7.3 to 7.65
    CHECK(race.end_s() == Approx(last.time_s));
}

TEST_CASE("a race fits pictures of every shape, and says what cannot fall") {
    Race race = four_metals();
    CHECK(race.lanes[3].path.empty());
    CHECK(race.lanes[3].problem.find("ferromagnetic") != std::string::npos);
    for (const auto& [width, height] : {std::pair{640.0, 360.0}, {360.0, 640.0}, {360.0, 360.0}, {300.0, 200.0}}) {
        for (const double t : {-1.0, 0.0, 0.3, 100.0}) {
            CAPTURE(width, height, t);
            const Scene scene = race_scene(race, t, 10, canvas(width, height));
            const auto texts = testing::texts_of(scene);
            for (std::size_t a = 0; a < texts.size(); ++a) {
                CAPTURE(texts[a].first);
                CHECK(texts[a].second.x >= 0);
                CHECK(texts[a].second.right() <= width);
                CHECK(texts[a].second.y >= 0);
                CHECK(texts[a].second.bottom() <= height);
                for (std::size_t b = a + 1; b < texts.size(); ++b) {
                    CAPTURE(texts[b].first);
                    CHECK_FALSE(texts[a].second.overlaps(texts[b].second));
                }
            }
        }
    }
    testing::approve("race", dump(race_scene(race, 0.25, 4, canvas(640, 360))));
}

TEST_CASE("a tube of several parts is drawn in its proportions, each part in its metal's colour") {
    const Catalogue& catalogue = testing::real_catalogue();
    DropRequest r = race_request();
    r.setup.tube = "14mm:18mm:200mm";
    r.wall.lower_end = "16mm:20mm";
    r.wall.liner = "0.5mm";
    r.wall.liner_metal = "aluminium";
    r.wall.below = "15mm:19mm:100mm";
    const auto drops = drop_in_each(catalogue, r, {"copper", "brass-cartridge"});
    REQUIRE(drops);
    for (const DropOfMetal& d : *drops) REQUIRE(d.result);
    const Race race = race_of(catalogue, *drops, UnitSystem::shown);
    const RaceLane& lane = race.lanes[0];
    REQUIRE(lane.walls.size() == 3);
    CHECK(lane.walls[0].outline.lower.inner_radius_m == Approx(8e-3));
    CHECK(lane.walls[1].outline.lower.inner_radius_m == Approx(7.5e-3));
    CHECK(lane.walls[1].slot == std::optional<std::size_t>(2)); // behind the two lanes
    CHECK(lane.walls[2].slot == std::nullopt);                  // the tube's own metal
    CHECK(race.subtitle.find("liner of aluminium") != std::string::npos);
    const Scene scene = race_scene(race, 0.1, 1, canvas(640, 360));
    std::vector<const Polygon*> cones;
    const Rectangle* below = nullptr;
    for (const Primitive& p : scene.parts) {
        if (const Polygon* c = std::get_if<Polygon>(&p);
            c && c->fill.alpha == 255 && c->spots.size() == 4 && c->spots[2].y - c->spots[1].y > 20)
            cones.push_back(c);
        if (const Rectangle* b = std::get_if<Rectangle>(&p); b && !below && b->fill.alpha == 255) below = b;
    }
    REQUIRE(cones.size() == 8); // two lanes, tube and liner, both sides
    REQUIRE(below);
    const double wall = cones[0]->spots[1].x - cones[0]->spots[0].x,
                 liner = cones[2]->spots[1].x - cones[2]->spots[0].x,
                 tall = cones[0]->spots[2].y - cones[0]->spots[1].y;
    CHECK(wall / liner == Approx(2 / 0.5));
    CHECK((cones[1]->spots[3].x - cones[0]->spots[2].x) / (cones[1]->spots[0].x - cones[0]->spots[1].x) ==
          Approx(16.0 / 14));
    CHECK(tall / below->box.height == Approx(2));
    CHECK(below->box.y == Approx(cones[0]->spots[2].y));
    CHECK(depth_read(scene, lane, 0) == Approx(place_at(lane, 0.1).depth_m).margin(1e-9));
}

TEST_CASE("a cold race carries the cautions of cold, every race those of magnets") {
    const Catalogue& catalogue = testing::real_catalogue();
    DropRequest cold = race_request();
    cold.conditions.temperature_K = 77.3;
    const auto drops = drop_in_each(catalogue, cold, {"copper"});
    REQUIRE(drops);
    const Race race = race_of(catalogue, *drops, UnitSystem::shown), warm = four_metals();
    CHECK(race.cautions.front().find("nitrogen") != std::string::npos);
    CHECK(race.cautions.size() == warm.cautions.size() + 2);
    const Scene last = race_sources(warm, canvas(640, 360));
    std::string all;
    for (const auto& [text, box] : testing::texts_of(last)) all += text + "\n";
    CHECK(all.find("Sources: ") != std::string::npos);
    CHECK(all.find("90 %") != std::string::npos);
    CHECK(all.find("fingers") != std::string::npos);
}
