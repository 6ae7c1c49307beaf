#include "charts/diagram_chart.hpp"
#include "charts/mix_chart.hpp"
#include "support/small_catalogue.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"

using namespace pourbook;
using testing::canvas;

namespace {

/// An invented eutectic system with straight lines: a melts at 1000 K, b at 900 K, eutectic at 50 % and 700 K.
const Diagram& invented() {
    static const Diagram d = [] {
        const Citation c{"source-1", "figure 1", HowKnown::read, ""};
        Diagram out;
        out.a = "Ag";
        out.b = "Cu";
        out.fields = {{"(Ag)", "liquid", {{700, 10, 50}, {1000, 0, 0}}, c, ""},
                      {"liquid", "(Cu)", {{700, 50, 90}, {900, 100, 100}}, c, ""},
                      {"(Ag)", "(Cu)", {{400, 2, 98}, {700, 10, 90}}, c, ""}};
        out.invariants = {{"eutectic", 700, {{"liquid", 50}}, c}};
        return out;
    }();
    return d;
}

Catalogue with_invented() {
    Catalogue c = testing::small_catalogue();
    c.properties = testing::real_catalogue().properties;
    c.alloys.masses = {{"Ag", 107.87, {}}, {"Cu", 63.55, {}}};
    c.alloys.diagrams = {invented()};
    c.data_version = "v1";
    c.index();
    return c;
}

} // namespace

TEST_CASE("a diagram with a composition and its tie line is laid out as approved") {
    const Catalogue c = with_invented();
    const Result<PhaseDiagram> d = phase_diagram(c, {"Ag", "Cu", 20, 850});
    REQUIRE(d);
    REQUIRE(d->phases.size() ==
            2); // lever rule on straight lines, by hand: 5 % and 25 % at 850 K, so a quarter is solid
    CHECK(d->phases.front().share == Approx(0.25));
    CHECK(d->melting->liquidus_K == Approx(880)); // law: straight line from 1000 K at 0 to 700 K at 50 %
    CHECK(d->melting->solidus_K == Approx(700));
    testing::approve("diagram", dump(layout(diagram_chart(c, *d, "Ag 80 Cu 20", UnitSystem::shown), canvas(600, 420))));
}

TEST_CASE("a diagram leaves away the wide part of which nothing is drawn") {
    Catalogue c = with_invented();
    const Citation from{"source-1", "figure 1", HowKnown::read, ""};
    c.alloys.diagrams.front().fields = {{"(Ag)", "liquid", {{700, 10, 30}, {1000, 0, 0}}, from, ""},
                                        {"liquid", "(Cu)", {{890, 97, 99}, {900, 100, 100}}, from, ""}};
    c.alloys.diagrams.front().invariants.clear();
    const auto shown = [&](double wt) {
        const Result<PhaseDiagram> d = phase_diagram(c, {"Ag", "Cu", wt, {}});
        REQUIRE(d);
        const DiagramChart chart = diagram_chart(c, *d, "", UnitSystem::shown);
        return std::pair(chart.x_low, chart.x_high);
    };
    CHECK(shown(20) == std::pair(0.0, 35.0)); // 30 % and a twentieth of the whole
    CHECK(shown(98) == std::pair(92.0, 100.0));
    const Result<PhaseDiagram> whole = phase_diagram(with_invented(), {"Ag", "Cu", 20, {}});
    CHECK(diagram_chart(with_invented(), *whole, "", UnitSystem::shown).x_high == 100);
}

TEST_CASE("the elements of a diagram may be named in any order") {
    const Catalogue c = with_invented();
    const Result<PhaseDiagram> d = phase_diagram(c, {"Cu", "Ag", 80, {}});
    REQUIRE(d);
    CHECK(*d->wt == Approx(20));
    CHECK_FALSE(phase_diagram(c, {"Cu", "Xx", {}, {}}));
    CHECK(phase_diagram(testing::real_catalogue(), {"Cu", "W", {}, {}}).problem().text.find("no diagram") == 0);
    CHECK_FALSE(phase_diagram(c, {"Cu", "Ag", 101, {}}));
}

TEST_CASE("every stored diagram can be drawn, its texts inside the picture and apart") {
    const Catalogue& c = testing::real_catalogue();
    for (const Diagram& stored : c.alloys.diagrams) {
        CAPTURE(stored.a, stored.b);
        const Result<PhaseDiagram> d = phase_diagram(c, {stored.a, stored.b, {}, {}});
        REQUIRE(d);
        CHECK(d->low_K < d->high_K);
        CHECK(d->lines.size() >= 2 * stored.fields.size());
        const Scene scene = layout(diagram_chart(c, *d, "", UnitSystem::shown), canvas(520, 420));
        const auto texts = testing::texts_of(scene);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            CAPTURE(texts[i].first);
            CHECK(texts[i].second.x >= 0);
            CHECK(texts[i].second.right() <= 520);
            for (std::size_t j = i + 1; j < texts.size(); ++j) {
                CAPTURE(texts[j].first);
                CHECK_FALSE(texts[i].second.overlaps(texts[j].second));
            }
        }
    }
}

TEST_CASE("conductivity against composition is laid out as approved") {
    const Catalogue c = with_invented();
    MixCurve curve{"Ag", "Cu", Treatment::annealed, &c.alloys.diagrams.front(), {}, {}, {"source-1"}};
    for (const double wt : {0.0, 5.0, 10.0, 90.0, 95.0, 100.0}) {
        const double s = 5.8e7 * (1 - 0.1 * wt * (100 - wt) / 900);
        curve.points.push_back({wt, s, 0.9 * s, 1.1 * s});
        if (wt == 10) curve.points.push_back({50, no_number, no_number, no_number});
    }
    curve.measured = {{&c.metals.front(), 7.5, 5e7, 1e6, "annealed"}};
    const CurveChart chart = mix_chart(c, {curve}, {false, CurveUpright{7, "Ag 93 Cu 7"}});
    REQUIRE(chart.lines.size() == 1);
    CHECK(chart.lines.front().stretches.size() == 2); // a gap where no rule reaches
    CHECK(chart.lines.front().stretches.front().front().y ==
          Approx(100).epsilon(1e-3)); // 100 %IACS is 58 MS/m (IEC 60028)
    testing::approve("mix", dump(layout(chart, canvas(600, 400))));
    const CurveChart resistivity = mix_chart(c, {curve}, {true, {}});
    CHECK(resistivity.lines.front().stretches.front().front().y == Approx(100 / 58.0).epsilon(1e-3));
}
