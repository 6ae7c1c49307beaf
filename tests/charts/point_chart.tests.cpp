// Points between two axes: one property against another, and two goals at once.
#include "charts/scatter_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"
#include "tests/support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;
using testing::approve;
using testing::canvas;
using testing::texts_of;

namespace {

PointMark mark(const std::string& id, double x, double y, bool faded = false) {
    return {id, id, {x, 0.9 * x, 1.1 * x}, {y, 0.95 * y, 1.05 * y}, id + " says", faded, false, false};
}

PointChart crowd(std::size_t count) {
    PointChart chart{"y against x", "crowded", "x, m", "y, kg", {}, {}, {}, {{"one", "two"}, "2026.1", "at 20 °C"}};
    for (std::size_t i = 0; i < count; ++i) {
        const double t = static_cast<double>(i);
        chart.points.push_back(mark("metal-" + std::to_string(i), 5 + std::cos(t * 2.4) * std::sqrt(t) * 0.4,
                                    5 + std::sin(t * 2.4) * std::sqrt(t) * 0.4));
    }
    return chart;
}

TradeoffPoint traded(const Metal& metal, double first, double second, bool front, const std::string& beaten_by = {}) {
    TradeoffPoint p;
    p.metal = &metal;
    for (auto [place, merit] : {std::pair{&p.first, first}, {&p.second, second}}) {
        place->median = merit;
        place->low90 = 0.9 * merit;
        place->high90 = 1.1 * merit;
    }
    p.on_front = front;
    p.beaten_by = beaten_by;
    return p;
}

const Polyline* thickest(const Scene& scene) {
    const Polyline* best = nullptr;
    for (const Primitive& part : scene.parts)
        if (const Polyline* p = std::get_if<Polyline>(&part); p && (!best || p->width > best->width)) best = p;
    return best;
}

} // namespace

TEST_CASE("a scatter chart is drawn as approved") {
    PointChart chart{"y against x",
                     "",
                     "x, m",
                     "y, kg",
                     {},
                     {},
                     {"1 metal lacks one of the two values"},
                     {{"one"}, "2026.1", "at 20 °C"}};
    chart.points = {mark("a", 1, 2), mark("b", 2, 4), mark("c", 3, 3)};
    chart.points[1].pinned = true;
    chart.points[2].remembered = true;
    approve("scatter", dump(layout(chart, canvas(400, 300))));
}

TEST_CASE("names of a crowd never lie on each other, on a mark, or outside, and those without room are counted") {
    const PointChart chart = crowd(120);
    const Scene scene = layout(chart, canvas(900, 600));
    std::vector<std::pair<std::string, Box>> names;
    for (const auto& [text, box] : texts_of(scene))
        if (text.rfind("metal-", 0) == 0) names.emplace_back(text, box);
    CHECK(names.size() > 20);
    CHECK(names.size() < 120);
    for (std::size_t i = 0; i < names.size(); ++i) {
        CHECK(names[i].second.x >= 0);
        CHECK(names[i].second.right() <= 900);
        for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(names[i].second.overlaps(names[j].second));
        for (const Primitive& part : scene.parts)
            if (const Circle* c = std::get_if<Circle>(&part)) CHECK_FALSE(names[i].second.contains(c->centre));
    }
    const std::string counted = std::to_string(120 - names.size()) + " of 120 without room";
    CHECK(dump(scene).find(counted) != std::string::npos);
    CHECK(scene.hits.size() == 120);
}

TEST_CASE("an axis whose figures span more than a factor of 30 is logarithmic, and bars below it are cut") {
    PointChart chart = crowd(3);
    chart.points = {mark("low", 0.01, 1), mark("high", 10, 2)};
    chart.points[0].x.low = -1; // a normal interval may reach below zero
    const Scene scene = layout(chart, canvas(500, 400));
    const std::string drawn = dump(scene);
    CHECK(drawn.find("\"0.1\"") != std::string::npos);
    CHECK(drawn.find("nan") == std::string::npos);
    CHECK(drawn.find("inf") == std::string::npos);
}

TEST_CASE("of very many metals the front, the pinned and an even choice of the others are drawn, and that is said") {
    const Catalogue catalogue = testing::small_catalogue();
    const auto& m = catalogue.metals;
    Metal pinned = m[0];
    pinned.slug = "pinned";
    TradeoffResult r;
    r.first_formula = "conductivity / density";
    r.second_formula = "conductivity / price";
    r.points = {traded(m[0], 10, 1, true), traded(m[1], 5, 4, true)};
    for (int i = 0; i < 5000; ++i) r.points.push_back(traded(m[2], 4 - i * 1e-4, 2 - i * 1e-4, false, m[1].slug));
    r.points.push_back(traded(pinned, 1, 1, false, m[1].slug));
    PointChart chart = tradeoff_chart(catalogue, r, UnitSystem::shown, {pinned.slug});
    CHECK(chart.points.size() < 700);
    CHECK(chart.points.size() > 300);
    const auto drawn = [&](const Metal& metal) {
        return std::count_if(chart.points.begin(), chart.points.end(),
                             [&](const PointMark& p) { return p.id == metal.slug; });
    };
    CHECK((drawn(m[0]) == 1 && drawn(m[1]) == 1 && drawn(pinned) == 1));
    REQUIRE(chart.notes.size() == 1);
    CHECK(chart.notes[0].find(std::to_string(chart.points.size()) + " of 5003") == 0);
    r.points.resize(300);
    chart = tradeoff_chart(catalogue, r, UnitSystem::shown, {});
    CHECK((chart.points.size() == 300 && chart.notes.empty()));
}

TEST_CASE("the line of a trade-off goes in steps around what its front beats") {
    const Catalogue catalogue = testing::small_catalogue();
    const auto& m = catalogue.metals;
    TradeoffResult r;
    r.first_formula = "conductivity / density"; // formulas: merits relative to the best
    r.second_formula = "conductivity / price";
    r.points = {traded(m[0], 10, 1, true), traded(m[1], 5, 4, true), traded(m[2], 4, 2, false, m[1].slug)};
    PointChart chart = tradeoff_chart(catalogue, r, UnitSystem::shown, {});
    REQUIRE(chart.line.size() == 3);
    CHECK(chart.line[0].x == Approx(0.5));
    CHECK(chart.line[0].y == Approx(1.0));
    CHECK(chart.line[1].x == Approx(0.5)); // down first: everything left of it and below is beaten
    CHECK(chart.line[1].y == Approx(0.25));
    CHECK(chart.line[2].x == Approx(1.0));
    CHECK(chart.points[2].faded);
    CHECK(chart.points[2].hover.find("beaten in both by " + m[1].name) != std::string::npos);
    CHECK(chart.x_label.find("more is better") != std::string::npos);
    const Scene scene = layout(chart, canvas(500, 400));
    REQUIRE(thickest(scene));
    CHECK(thickest(scene)->spots.size() == 3);

    r.first_high = false; // less is better along: the step goes sideways first
    r.points = {traded(m[0], 1, 1, true), traded(m[1], 2, 4, true)};
    chart = tradeoff_chart(catalogue, r, UnitSystem::shown, {});
    REQUIRE(chart.line.size() == 3);
    CHECK(chart.line[1].x == Approx(2.0));
    CHECK(chart.line[1].y == Approx(0.25));
    CHECK(chart.x_label.find("less is better") != std::string::npos);
}

TEST_CASE("a scatter of a property told in words is refused, and a missing value is counted") {
    const Catalogue catalogue = testing::small_catalogue();
    const auto words = compare(catalogue, {{}, {"density", "magnetic_behaviour"}, {}});
    if (words) CHECK_FALSE(scatter_chart(catalogue, *words, UnitSystem::shown, {}));
    const auto numbers = compare(catalogue, {{}, {"density", "resistivity"}, {}});
    REQUIRE(numbers);
    const auto chart = scatter_chart(catalogue, *numbers, UnitSystem::shown, {});
    REQUIRE(chart);
    std::size_t both = 0;
    for (const ComparedMetal& row : numbers->rows) both += row.cells[0] && row.cells[1];
    CHECK(chart->points.size() == both);
    CHECK(both > 0);
}

TEST_CASE("a caption names people, bodies and titles in short, each once") {
    Reference person, body, page;
    person.authors = "P. D. Desai, H. M. James, C. Y. Ho";
    person.year = "1984";
    body.authors = "U.S. Geological Survey";
    body.year = "2026";
    page.title = "Properties of alloys: a page";
    CHECK(short_source(person) == "Desai et al. 1984");
    CHECK(short_source(body) == "U.S. Geological Survey 2026");
    CHECK(short_source(page) == "Properties of alloys");
    person.authors = "W. M. Haynes (ed.)";
    CHECK(short_source(person) == "Haynes 1984");
    person.authors = "C. Y. Ho and T. K. Chu";
    CHECK(short_source(person) == "Ho et al. 1984");
    Scene scene;
    scene.title = "title";
    scene.origin = {{"x", "x"}, "7", "at 20 °C"};
    CHECK(caption_line(testing::small_catalogue(), scene, "2026-11-25") ==
          "title, at 20 °C. Sources: x. Pourbook data 7, 2026-11-25.");
}
