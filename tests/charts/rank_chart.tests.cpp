#include "charts/rank_chart.hpp"
#include "tests/charts/approve.hpp"
#include "tests/charts/fixed_measure.hpp"
#include "tests/support/small_catalogue.hpp"

#include <algorithm>

using namespace pourbook;
using testing::canvas;

namespace {

RankRow rank_row(const std::string& id, double median, double half) {
    RankRow row;
    row.id = id;
    row.name = "metal " + id;
    row.median = median;
    row.low = median - half;
    row.high = median + half;
    row.value = std::to_string(median).substr(0, 4);
    row.hover = id + " hover";
    row.sources = {"source-" + id};
    return row;
}

RankChart three_rows() {
    RankChart chart{"braking for the money",
                    "conductivity / price, relative to metal a",
                    {rank_row("a", 1, 0.1), rank_row("b", 0.95, 0.1), rank_row("c", 0.4, 0.02)},
                    {{}, "v1"}};
    for (std::size_t i = 0; i < chart.rows.size(); ++i) chart.rows[i].rank = i + 1;
    chart.rows[1].tied_with_best = true;
    chart.rows[2].remembered = true;
    return chart;
}

bool has_text(const Scene& scene, const std::string& part) {
    const auto texts = testing::texts_of(scene);
    return std::any_of(texts.begin(), texts.end(),
                       [&](const auto& t) { return t.first.find(part) != std::string::npos; });
}

} // namespace

TEST_CASE("a ranking is laid out as approved") {
    testing::approve("rank", dump(layout(three_rows(), canvas(600, 400))));
}

TEST_CASE("a ranking says what it can't tell apart, what is only remembered, and where it comes from") {
    const Scene scene = layout(three_rows(), canvas(600, 400));
    CHECK(has_text(scene, "≈ best"));
    CHECK(has_text(scene, "rests on a remembered value"));
    CHECK(has_text(scene, "source-a, source-b, source-c · data v1"));
    CHECK(std::count_if(scene.parts.begin(), scene.parts.end(), [](const Primitive& p) {
              const Circle* c = std::get_if<Circle>(&p);
              return c && c->width > 0;
          }) == 2); // the row's own and that of the legend
}

TEST_CASE("a ranking keeps its texts inside and answers the pointer with the row") {
    for (const double width : {320.0, 600.0, 1200.0})
        for (const auto& [text, box] : testing::texts_of(layout(three_rows(), canvas(width, 400)))) {
            CAPTURE(width, text);
            CHECK(box.x >= 0);
            CHECK(box.right() <= width + 1);
        }
    const Scene scene = layout(three_rows(), canvas(600, 400));
    REQUIRE(scene.hits.size() == 3);
    const Box& second = scene.hits[1].box;
    REQUIRE(scene.hit_at({300, second.y + second.height / 2}));
    CHECK(scene.hit_at({300, second.y + second.height / 2})->id == "b");
}

TEST_CASE("a ranking shows the rows it has room for and counts the others") {
    RankChart chart{"t", "x", {}, {{}, "v"}};
    for (int i = 0; i < 60; ++i) chart.rows.push_back(rank_row(std::to_string(i), 60 - i, 0.2));
    const Scene scene = layout(chart, canvas(500, 400));
    CHECK(scene.hits.size() < 20);
    CHECK(has_text(scene, "and " + std::to_string(60 - scene.hits.size()) + " more in the table"));
    CHECK(has_text(layout(RankChart{"t", "", {}, {{}, "v"}}, canvas(500, 400)), "nothing to rank"));
}

TEST_CASE("of very many ranked metals only what a picture can hold is prepared, and the others are counted") {
    const Catalogue catalogue = testing::small_catalogue();
    RankResult result;
    result.formula = "conductivity / density";
    for (std::size_t i = 0; i < 3000; ++i) {
        RankedMetal& r = result.ranked.emplace_back();
        r.metal = &catalogue.metals.front();
        r.place.rank = i + 1;
        r.place.median = r.place.low90 = r.place.high90 = 1 / static_cast<double>(i + 1);
    }
    const RankChart chart = rank_chart(catalogue, result, UnitSystem::shown, {});
    CHECK(chart.rows.size() + chart.beyond == 3000);
    CHECK(chart.rows.size() <= 500);
    const Scene scene = layout(chart, canvas(500, 400));
    CHECK(has_text(scene, "and " + std::to_string(3000 - scene.hits.size()) + " more in the table"));
}

TEST_CASE("a ranking turns logarithmic beyond a factor of 30") {
    RankChart chart{"t", "x", {rank_row("a", 1000, 10), rank_row("b", 10, 1)}, {{}, "v"}};
    CHECK(has_text(layout(chart, canvas(600, 400)), "100"));
    const Scene scene = layout(chart, canvas(600, 400));
    CHECK(std::none_of(scene.parts.begin(), scene.parts.end(),
                       [](const Primitive& p) { return std::holds_alternative<Rectangle>(p); }));
}

TEST_CASE("a pinned metal below the top is in the picture, with its rank") {
    RankChart chart = three_rows();
    chart.rows.clear();
    for (int i = 0; i < 100; ++i) {
        chart.rows.push_back(rank_row("r" + std::to_string(i), 1 - 0.001 * i, 0.0004));
        chart.rows.back().rank = static_cast<std::size_t>(i + 1);
    }
    chart.rows[76].pinned = true;
    const Scene scene = layout(chart, canvas(600, 400));
    CHECK(has_text(scene, "77.  metal r76"));
    CHECK(has_text(scene, "metal r0"));
    CHECK_FALSE(has_text(scene, "metal r60"));
    CHECK(has_text(scene, "1.00  best"));
    chart.rows[76].median = chart.rows[76].low = chart.rows[76].high = 0.001; // it does not squeeze the top
    CHECK(has_text(layout(chart, canvas(600, 400)), "0.2"));
}
