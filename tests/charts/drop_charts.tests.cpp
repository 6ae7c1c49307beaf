#include "charts/drop_charts.hpp"
#include "charts/setup_drawing.hpp"
#include "support/small_catalogue.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"

using namespace pourbook;
using testing::canvas;

namespace {

FallRow fall_row(const std::string& id, std::size_t slot, double time) {
    return {id, "metal " + id, slot, time, 0.9 * time, 1.1 * time, "about", "hover " + id, {}, ""};
}

FallChart three_falls() {
    FallChart chart{
        "Time to fall", "a magnet; a tube", {fall_row("a", 0, 8), fall_row("b", 1, 3), fall_row("c", 2, 0)}, 0.3, {}};
    chart.rows[1].measured_s = {2.9, 3.3};
    chart.rows[2] = {"c", "metal c", 2, 0, 0, 0, "", "hover c", {}, "is ferromagnetic"};
    chart.origin = {{"source-1"}, "v1"};
    return chart;
}

DropSetup setup(const std::string& magnet) {
    SetupWords words;
    words.magnet = magnet;
    words.br = "1.3T";
    words.magnet_mass = "10g";
    words.tube = "18mm:24mm:400mm";
    static const Catalogue nothing;
    const Result<DropSetup> made = drop_setup(nothing, words);
    REQUIRE(made);
    return *made;
}

DropRequest request() {
    DropRequest r;
    r.setup.magnet = "cylinder:15mmx15mm";
    r.setup.grade = "N42";
    r.setup.tube = "18mm:24mm:400mm";
    r.samples = 100;
    return r;
}

/// Texts stay inside the picture and apart from each other.
void check_texts(const Scene& scene) {
    const auto texts = testing::texts_of(scene);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        CAPTURE(texts[i].first);
        CHECK(texts[i].second.x >= 0);
        CHECK(texts[i].second.right() <= scene.width);
        CHECK(texts[i].second.y >= 0);
        CHECK(texts[i].second.bottom() <= scene.height);
        for (std::size_t j = i + 1; j < texts.size(); ++j) {
            CAPTURE(texts[j].first);
            CHECK_FALSE(texts[i].second.overlaps(texts[j].second));
        }
    }
}

} // namespace

TEST_CASE("fall times are laid out as approved") {
    const Scene scene = layout(three_falls(), canvas(560, 300));
    check_texts(scene);
    testing::approve("fall", dump(scene));
}

TEST_CASE("a magnet in a tube is drawn to scale, as approved") {
    for (const char* magnet : {"cylinder:15mmx15mm", "sphere:15mm", "ring:16mmx6mmx5mm"}) {
        CAPTURE(magnet);
        const Scene scene = setup_drawing(setup(magnet), UnitSystem::shown, canvas(330, 300));
        check_texts(scene);
        if (magnet[0] == 'c') testing::approve("setup", dump(scene));
    }
}

TEST_CASE("wall, bore and magnet keep their proportions in the drawing") {
    // The two large wall rectangles: width over distance is wall over bore.
    std::vector<Box> walls;
    for (const Primitive& p : setup_drawing(setup("sphere:15mm"), UnitSystem::shown, canvas(330, 300)).parts)
        if (const Rectangle* r = std::get_if<Rectangle>(&p))
            if (r->box.width > 10 && r->box.height > 100) walls.push_back(r->box);
    REQUIRE(walls.size() == 2);
    CHECK(walls[0].width / (walls[1].x - walls[0].right()) == Approx(3.0 / 18.0));
}

TEST_CASE("bars, drag curve and sweep say what the computation says") {
    const Catalogue& catalogue = testing::real_catalogue();
    const auto drops = drop_in_each(catalogue, request(), {"copper", "aluminium-6061", "iron"});
    REQUIRE(drops);
    const FallChart bars = fall_chart(catalogue, *drops, UnitSystem::shown, {{"copper", {12.0}}});
    REQUIRE(bars.rows.size() == 3);
    CHECK(bars.rows[0].time_s == (*drops)[0].result->fall.time_s);
    CHECK(bars.rows[0].measured_s.size() == 1);
    CHECK(bars.rows[2].problem.find("ferromagnetic") != std::string::npos);
    CHECK_FALSE(bars.origin.sources.empty());
    const CurveChart curve = drag_chart(catalogue, *drops, UnitSystem::shown);
    REQUIRE(curve.lines.size() == 2);
    CHECK(curve.notes.size() == 1);
    CHECK(curve.lines[0].printed.size() == 2); // terminal speed and peak
    REQUIRE(curve.levels.size() == 1);
    CHECK(curve.lines[0].printed[0].y == Approx(curve.levels[0].y)); // the drag holds the weight there
    for (const CurveSpot& s : curve.lines[0].stretches[0]) {
        CHECK(s.low <= s.y);
        CHECK(s.high >= s.y);
    }
    check_texts(layout(curve, canvas(600, 420)));
}

TEST_CASE("the names in a low chart of a sweep make room for each other") {
    const Catalogue& catalogue = testing::real_catalogue();
    SweepRequest wanted;
    wanted.setup = request().setup;
    wanted.metals = {"copper", "sterling-silver", "aluminium-6061", "brass-cartridge"};
    wanted.samples = 50;
    const Result<SweepRequest> ranged = with_range(catalogue, wanted, "wall", "0.5mm:15mm");
    REQUIRE(ranged);
    const CurveChart chart = sweep_chart(catalogue, *sweep(catalogue, *ranged), UnitSystem::shown);
    for (double height = 200; height <= 300; height += 4) {
        CAPTURE(height);
        const auto texts = testing::texts_of(layout(chart, canvas(440, height)));
        std::vector<Box> names;
        for (const auto& [text, box] : texts)
            for (const CurveLine& line : chart.lines)
                if (text.starts_with(line.name.substr(0, 6))) names.push_back(box); // the end may be cut
        CHECK(names.size() == 4);
        for (std::size_t a = 0; a < names.size(); ++a)
            for (std::size_t b = a + 1; b < names.size(); ++b) CHECK_FALSE(names[a].overlaps(names[b]));
    }
}

TEST_CASE("a sweep's chart has a line per metal, a gap where nothing can be said, and the present set-up") {
    const Catalogue& catalogue = testing::real_catalogue();
    SweepRequest sweep_request;
    sweep_request.setup = request().setup;
    sweep_request.metals = {"copper", "brass-cartridge"};
    sweep_request.steps = 5;
    sweep_request.samples = 50;
    const Result<SweepRequest> wall = with_range(catalogue, sweep_request, "wall", "1mm:6mm"),
                               bore = with_range(catalogue, sweep_request, "bore", "14mm:26mm");
    REQUIRE(wall);
    REQUIRE(bore);
    const CurveChart chart = sweep_chart(catalogue, *sweep(catalogue, *wall), UnitSystem::shown);
    REQUIRE(chart.lines.size() == 2);
    CHECK(chart.lines[0].stretches[0].size() == 5);
    REQUIRE(chart.upright);
    CHECK(chart.upright->x == Approx(3)); // mm of wall
    check_texts(layout(chart, canvas(600, 420)));
    const CurveChart wider = sweep_chart(catalogue, *sweep(catalogue, *bore), UnitSystem::shown);
    CHECK(wider.lines[0].stretches[0].size() == 4); // the magnet does not fit into 14 mm
    CHECK_FALSE(wider.notes.empty());
    CHECK_FALSE(with_range(catalogue, sweep_request, "colour", "1mm:2mm"));
    CHECK_FALSE(with_range(catalogue, sweep_request, "wall", "thick"));
}
