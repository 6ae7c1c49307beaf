#include "charts/curve_chart.hpp"
#include "charts/marker.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace pourbook;
using testing::canvas;

namespace {

CurveSpot spot(double x, double y) {
    return {x, y, y * 0.9, y * 1.1, "at " + std::to_string(static_cast<int>(x))};
}

CurveLine line(const std::string& id, std::size_t slot, double level) {
    CurveLine out{id,
                  "metal " + id,
                  slot,
                  {{spot(20, level * 0.01), spot(300, level), spot(900, 3 * level)},
                   {spot(900, 6 * level), spot(1200, 7 * level)}},
                  {},
                  "melts",
                  {spot(300, level)}};
    out.jumps.emplace_back(out.stretches[0].back(), out.stretches[1].front());
    return out;
}

CurveChart two() {
    return {"resistivity against temperature",
            "temperature, K",
            "resistivity, µΩ·cm",
            true,
            {line("a", 0, 1), line("b", 1, 4)},
            {"no curve: c: no value cited"},
            {{"source-1"}, "v1"}};
}

} // namespace

TEST_CASE("curves are laid out as approved") {
    testing::approve("curve", dump(layout(two(), canvas(600, 400))));
}

TEST_CASE("curves that end together keep their labels apart and inside") {
    CurveChart chart = two();
    chart.lines.clear();
    for (std::size_t i = 0; i < 8; ++i)
        chart.lines.push_back(
            line(std::string(1, static_cast<char>('a' + static_cast<char>(i))), i, 1 + 0.01 * static_cast<double>(i)));
    for (const bool log : {false, true}) {
        chart.log = log;
        const auto texts = testing::texts_of(layout(chart, canvas(700, 420)));
        for (std::size_t i = 0; i < texts.size(); ++i) {
            CAPTURE(texts[i].first);
            CHECK(texts[i].second.x >= 0);
            CHECK(texts[i].second.right() <= 700);
            for (std::size_t j = i + 1; j < texts.size(); ++j) {
                CAPTURE(texts[j].first);
                CHECK_FALSE(texts[i].second.overlaps(texts[j].second));
            }
        }
    }
}

TEST_CASE("a gap stays a gap and a melting jump is a thin upright") {
    CurveChart chart = two();
    chart.lines[0].jumps.clear(); // nothing says that the two stretches belong together
    int solid = 0, thin = 0;
    for (const Primitive& p : layout(chart, canvas(600, 400)).parts)
        if (const Polyline* l = std::get_if<Polyline>(&p)) {
            thin += l->width == 1 && l->colour.alpha == 150 ? 1 : 0;
            solid += !l->dashed && l->width == 2 ? 1 : 0;
        }
    CHECK(solid == 4);
    CHECK(thin == 1);
}

TEST_CASE("a chart without curves says why") {
    CurveChart chart = two();
    chart.lines.clear();
    bool said = false;
    for (const auto& [text, box] : testing::texts_of(layout(chart, canvas(600, 400))))
        said = said || text.find("no value cited") != std::string::npos;
    CHECK(said);
}

TEST_CASE("the first 24 pinned metals differ in colour or shape") {
    std::set<std::string> seen;
    for (std::size_t slot = 0; slot < 24; ++slot) {
        Scene scene;
        add_marker(scene, slot, {0, 0}, 4, palette(true).of_slot(slot));
        seen.insert(dump(scene));
    }
    CHECK(seen.size() == 24);
}

TEST_CASE("a range asked for is what is seen, and its heights follow") {
    Canvas seen = canvas(600, 400);
    const Scene all = layout(two(), seen);
    REQUIRE(all.plot);
    seen.range.x = {{250, 350}};
    const Scene part = layout(two(), seen);
    REQUIRE(part.plot);
    CHECK(part.plot->x.low == 250);
    CHECK(part.plot->x.high == 350);
    CHECK(part.plot->home_x.high == all.plot->x.high);
    CHECK(part.plot->y.high < all.plot->y.high);
    for (const auto& [text, box] : testing::texts_of(part)) {
        CAPTURE(text);
        CHECK(box.x >= 0);
        CHECK(box.right() <= 600);
    }
    seen.range.x = {{350, 250}}; // no range
    CHECK(layout(two(), seen).plot->x.low == all.plot->x.low);
}

TEST_CASE("a line is read between its spots, and says where it has no value") {
    const auto at = [](double x) { return readings_at(two(), x); };
    REQUIRE(at(300).size() == 2);
    CHECK(at(300)[0].value == Approx(1));
    CHECK(at(600)[1].value == Approx(8)); // halfway from 4 at 300 to 12 at 900
    CHECK(at(1000)[0].value == Approx(6 + 1.0 / 3));
    CHECK(std::isnan(at(5)[0].value));
    CHECK(at(5)[0].text == "no value");
}

TEST_CASE("where another source goes on there is a bar across the line, and words") {
    CurveChart chart = two();
    chart.lines[0].joins.push_back({spot(600, 2), spot(610, 2.2), "here one source ends"});
    const Scene scene = layout(chart, canvas(600, 400));
    CHECK(std::any_of(scene.hits.begin(), scene.hits.end(),
                      [](const Hit& h) { return h.id == "a.join" && h.hover == "here one source ends"; }));
}

TEST_CASE("a metal's own mark counts more than its place in the chart") {
    const Marks marks{{"b", 5}};
    Canvas own = canvas(600, 400);
    own.marks = &marks;
    CHECK(own.slot("b", 1) == 5);
    CHECK(own.slot("a", 0) == 0);
    const Colour wanted = own.palette.of_slot(5);
    const Scene scene = layout(two(), own);
    CHECK(std::any_of(scene.parts.begin(), scene.parts.end(), [&](const Primitive& p) {
        const Polyline* line = std::get_if<Polyline>(&p);
        return line && line->width == 2 && line->colour.red == wanted.red && line->colour.green == wanted.green;
    }));
}
