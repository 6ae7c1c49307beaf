// No text of any chart leaves its picture, however narrow.
#include "charts/curve_chart.hpp"
#include "charts/diagram_chart.hpp"
#include "charts/mix_chart.hpp"
#include "charts/rank_chart.hpp"
#include "charts/scatter_chart.hpp"
#include "charts/tradeoff_chart.hpp"
#include "tests/charts/fixed_measure.hpp"
#include "tests/support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::real_catalogue;

namespace {

template <class Chart> void stays_inside(const Chart& chart) {
    for (const double width : {420.0, 700.0, 1600.0}) {
        const double height = 0.75 * width;
        const auto texts = testing::texts_of(layout(chart, testing::canvas(width, height)));
        CHECK(texts.size() > 5);
        for (const auto& [text, box] : texts) {
            CAPTURE(width, text);
            CHECK(box.x >= 0);
            CHECK(box.right() <= width);
            CHECK(box.y >= 0);
            CHECK(box.bottom() <= height);
        }
    }
}

GoalWords goal(const std::string& name) {
    GoalWords words;
    words.goal = name;
    return words;
}

const std::vector<std::string> long_names = {"copper", "silver", "sterling-silver", "aluminium-rotor-cast",
                                             "brass-free-cutting"};

} // namespace

TEST_CASE("rankings stay inside their picture") {
    for (const char* name : {"braking-per-cost", "strongest-brake", "light-conductor"}) {
        RankRequest request;
        request.goal = goal(name);
        request.samples = 200;
        const auto result = rank(real_catalogue(), request);
        REQUIRE(result);
        stays_inside(rank_chart(real_catalogue(), *result, UnitSystem::shown, {"copper"}));
    }
}

TEST_CASE("curves stay inside their picture, and their names") {
    for (const char* property : {"resistivity", "density", "thermal_conductivity"}) {
        const auto result = curve(real_catalogue(), {property, long_names, "reference", 60});
        REQUIRE(result);
        stays_inside(curve_chart(real_catalogue(), *result, {}));
    }
}

TEST_CASE("scatters stay inside their picture") {
    const auto result = compare(real_catalogue(), {{}, {"density", "conductivity"}, {}});
    REQUIRE(result);
    const auto chart = scatter_chart(real_catalogue(), *result, UnitSystem::shown, long_names);
    REQUIRE(chart);
    stays_inside(*chart);
}

TEST_CASE("two goals at once stay inside their picture, names of the front too") {
    for (const auto& [first, second] : {std::pair{"strongest-brake", "light-conductor"},
                                        {"braking-per-cost", "strongest-brake"},
                                        {"light-conductor", "braking-per-cost"}}) {
        TradeoffRequest request;
        request.first = goal(first);
        request.second = goal(second);
        request.samples = 100;
        const auto result = tradeoff(real_catalogue(), request);
        REQUIRE(result);
        stays_inside(tradeoff_chart(real_catalogue(), *result, UnitSystem::shown, {}));
    }
}

TEST_CASE("diagrams and mixes stay inside their picture, with a long name for the composition") {
    const Catalogue& c = real_catalogue();
    for (const Diagram& stored : c.alloys.diagrams)
        for (const double wt : {3.0, 50.0, 97.0}) {
            CAPTURE(stored.a, stored.b, wt);
            const auto d = phase_diagram(c, {stored.a, stored.b, wt, 700});
            REQUIRE(d);
            stays_inside(diagram_chart(c, *d, "Cu 88 Sn 8 Zn 4 by its two main elements", UnitSystem::shown));
            const auto curve = mix_curve(c, {stored.a, stored.b, Treatment::as_cast, 20});
            REQUIRE(curve);
            const CurveChart chart =
                mix_chart(c, {*curve}, {false, CurveUpright{wt, "Cu 88 Sn 8 Zn 4 by its two main elements"}});
            if (!chart.lines.empty()) stays_inside(chart);
        }
}

TEST_CASE("each share of a tie line stands nearer to its own end than to the other, or has a leader") {
    for (const double wt : {6.0, 15.0, 28.0, 60.0, 90.0})
        for (const double width : {420.0, 700.0, 1600.0}) {
            const auto d = phase_diagram(real_catalogue(), {"Ag", "Cu", wt, 1070});
            REQUIRE(d);
            if (d->phases.size() < 2) continue;
            const DiagramChart chart = diagram_chart(real_catalogue(), *d, "a", UnitSystem::shown);
            const Scene scene = layout(chart, testing::canvas(width, 0.75 * width));
            std::vector<Spot> ends;
            std::vector<Spot> leaders;
            for (const Primitive& p : scene.parts)
                if (const auto* line = std::get_if<Polyline>(&p); line && line->spots.size() == 2) {
                    if (line->width == 2.5) ends = line->spots;
                    if (!ends.empty() && line->width == 1) leaders.push_back(line->spots.front());
                }
            REQUIRE(ends.size() == 2);
            for (const auto& [text, box] : testing::texts_of(scene)) {
                if (text.find(" % ") == std::string::npos) continue;
                CAPTURE(wt, width, text);
                const bool right = text == chart.tie->words.back();
                const Spot own = ends[right ? 1 : 0];
                bool led = false;
                for (const Spot& l : leaders) led = led || (l.x == own.x && l.y == own.y);
                CHECK((led || (right ? box.x >= own.x : box.right() <= own.x)));
            }
        }
}
