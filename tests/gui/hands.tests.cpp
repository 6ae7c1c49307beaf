// What hands do in the window: charts that are moved and read, fields that say how they read, evidence that stays.
#include "charts/marker.hpp"
#include "gui/state/typed_quantity.hpp"
#include "tests/gui/desk.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <random>
#include <set>

using namespace pourbook;
using testing::Desk;

namespace {

/// A place inside a chart's plot, by shares of its width and height.
void point_into(Desk& desk, const std::string& chart, double across, double down) {
    const Probe::Item box = desk.ui.probe.items().at(chart);
    const Plot& plot = *desk.ui.scenes.at(chart).scene.plot;
    const double scale = static_cast<double>(desk.ui.scale);
    ImGui::GetIO().MousePos = {static_cast<float>(box.x + scale * (plot.box.x + across * plot.box.width)),
                               static_cast<float>(box.y + scale * (plot.box.y + down * plot.box.height))};
    desk.frames(2);
}

void turn_wheel(Desk& desk, float notches) {
    ImGui::GetIO().MouseWheel = notches;
    desk.frames(1);
    ImGui::GetIO().MouseWheel = 0;
    desk.frames(2);
}

Plot plot_of(Desk& desk, const std::string& chart) {
    return *desk.ui.scenes.at(chart).scene.plot;
}

Desk& open(Desk& desk, const char* view) {
    desk.session.view.view = view;
    desk.settle();
    return desk;
}

} // namespace

TEST_CASE("a metal keeps its mark through fifty random sequences of pinning") {
    const Catalogue& catalogue = testing::real_catalogue();
    std::mt19937 random(50);
    ViewState view = first_view(catalogue);
    std::map<std::string, std::size_t> first = view.marks.of;
    for (int sequence = 0; sequence < 50; ++sequence)
        for (int step = 0; step < 20; ++step) {
            toggle_pin(view, catalogue.metals[random() % catalogue.metals.size()].slug);
            for (const std::string& pin : view.pins) first.try_emplace(pin, mark_of(view, pin));
            for (const auto& [slug, mark] : first) {
                CAPTURE(sequence, slug);
                REQUIRE(mark_of(view, slug) == mark);
            }
        }
    CHECK(first.size() > 50);
}

TEST_CASE("the first eight metals pinned have eight colours, and undo takes no colour away") {
    const Catalogue& catalogue = testing::real_catalogue();
    Desk desk(catalogue);
    desk.session.view.pins.clear();
    desk.session.view.marks.of.clear();
    std::set<std::size_t> colours;
    for (std::size_t i = 0; i < 8; ++i) {
        toggle_pin(desk.session.view, catalogue.metals[i * 7].slug);
        colours.insert(mark_of(desk.session.view, catalogue.metals[i * 7].slug) % 8);
    }
    CHECK(colours.size() == 8);
    desk.frames();
    const auto marks = desk.session.view.marks.of;
    toggle_pin(desk.session.view, catalogue.metals[0].slug);
    desk.frames();
    take_back(desk.session.view, desk.session.history.undo());
    CHECK(desk.session.view.marks.of == marks);
}

TEST_CASE("the wheel goes nearer at the pointer, a drag moves, a double click shows all") {
    Desk desk(testing::real_catalogue());
    open(desk, "curves");
    const Plot home = plot_of(desk, "curve.chart");
    point_into(desk, "curve.chart", 0.25, 0.5);
    const double under = home.x.value(home.box.x + 0.25 * home.box.width);
    for (int i = 0; i < 4; ++i) turn_wheel(desk, 1);
    const Plot near = plot_of(desk, "curve.chart");
    CHECK(near.x.high - near.x.low < 0.7 * (home.x.high - home.x.low));
    CHECK(near.x.value(near.box.x + 0.25 * near.box.width) == Approx(under).epsilon(0.02));
    ImGui::GetIO().MouseDown[0] = true;
    desk.frames(2);
    ImGui::GetIO().MousePos.x -= 100;
    desk.frames(2);
    ImGui::GetIO().MouseDown[0] = false;
    desk.frames(3);
    const Plot moved_on = plot_of(desk, "curve.chart");
    CHECK(moved_on.x.low > near.x.low);
    CHECK(desk.session.view.view == "curves"); // a drag opens nothing
    for (int i = 0; i < 2; ++i) {
        ImGui::GetIO().MouseDown[0] = true;
        desk.frames(1);
        ImGui::GetIO().MouseDown[0] = false;
        desk.frames(1);
    }
    desk.frames(3);
    CHECK(plot_of(desk, "curve.chart").x.low == home.x.low);
    CHECK(plot_of(desk, "curve.chart").x.high == home.x.high);
}

TEST_CASE("the strip reads every pinned metal at the cross-hair as the program evaluates it") {
    Desk desk(testing::real_catalogue());
    open(desk, "curves");
    desk.click("range.cold");
    desk.settle();
    CHECK(plot_of(desk, "curve.chart").x.high == Approx(300));
    point_into(desk, "curve.chart", 0.5, 0.9);
    desk.frames(2);
    const std::string told = desk.text("curve.chart.strip");
    for (const std::string& pin : desk.session.view.pins) {
        CAPTURE(pin, told);
        CHECK(told.find(desk.session.catalogue.metal(pin)->name) != std::string::npos);
    }
    CHECK(told.find("× of") != std::string::npos);
    const double x = *desk.ui.plots.at("curve.chart").at;
    Conditions at;
    at.temperature_K = x;
    const Metal& copper = *desk.session.catalogue.metal("copper");
    const Property& resistivity = *desk.session.catalogue.property("resistivity");
    const auto value = evaluate(desk.session.catalogue, copper, "resistivity", at);
    REQUIRE(value);
    CHECK(told.find(shown_full(resistivity, *value, UnitSystem::shown)) != std::string::npos);
    desk.click("range.all");
    desk.frames();
    CHECK(plot_of(desk, "curve.chart").x.high > 1000);
}

TEST_CASE("a click leaves a mark, and the strip tells the change since") {
    Desk desk(testing::real_catalogue());
    open(desk, "curves");
    point_into(desk, "curve.chart", 0.3, 0.95);
    ImGui::GetIO().MouseDown[0] = true;
    desk.frames(2);
    ImGui::GetIO().MouseDown[0] = false;
    desk.frames(2);
    REQUIRE(desk.ui.plots.at("curve.chart").mark);
    point_into(desk, "curve.chart", 0.5, 0.95);
    desk.frames(2);
    CHECK(desk.text("curve.chart.strip").find("the value at the mark") != std::string::npos);
}

TEST_CASE("a typed range is in the unit of the axis, and may be written in another") {
    Desk desk(testing::real_catalogue());
    open(desk, "curves");
    desk.fill("curve.to", "200");
    CHECK(plot_of(desk, "curve.chart").x.high == Approx(200));
    desk.fill("curve.from", "-196 degC");
    CHECK(plot_of(desk, "curve.chart").x.low == Approx(77.15));
}

TEST_CASE("a quantity is read in the unit shown, sums are worked out, and the echo says how") {
    CHECK(kept_quantity("20", "mm") == "20mm");
    CHECK(kept_quantity("2*4", "mm") == "8mm");
    CHECK(kept_quantity("(3+1)/2 in", "mm") == "2in");
    CHECK(kept_quantity("0.6in", "mm") == "0.6in");
    CHECK(kept_quantity("250ml", "cm3") == "250cm3");
    CHECK(kept_quantity("700", "degC") == "700degC");
    CHECK(kept_quantity("-196 °C", "degC") == "-196 degC");
    CHECK(kept_quantity("liquid nitrogen", "degC") == "liquid nitrogen");
    CHECK(kept_quantity("15+-0.1", "mm") == "15+-0.1mm");
    CHECK(kept_quantity("1/2", "in") == "1/2in");
    CHECK(kept_quantity("", "mm").empty());
    CHECK(echo_of("700degC", "degC") == "= 700 °C");
    CHECK(echo_of("1in", "mm") == "= 25.4 mm"); // an inch is 25.4 mm exactly (international yard and pound, 1959)
    CHECK(echo_of("wide", "mm").empty());
    CHECK(in_unit("1in", "mm") == "25.4mm");
    CHECK(nudged("15", 1, false) == "16");
    CHECK(nudged("1.30", -1, false) == "1.29");
    CHECK(nudged("14,5 mm", 1, true) == "15,5 mm");
    CHECK(nudged("wide", 1, false) == "wide");
    CHECK(split_quantity("25,4 mm").unit == "mm");
    CHECK(split_quantity("500cm3").unit == "cm3");
    CHECK(split_quantity("15+-0.1mm").number == "15+-0.1");
    CHECK(split_quantity("room").unit.empty());
}

TEST_CASE("a bare number in Drop, in Pour and at the top is in the unit beside it") {
    Desk desk(testing::real_catalogue(), 1440, 2400);
    open(desk, "drop");
    CHECK(desk.text("drop.bore.unit") == "mm");
    desk.fill("drop.outside", "30");
    CHECK(desk.session.view.drop_setup.tube == "18mm:30mm:400mm");
    desk.fill("temperature", "25");
    CHECK(desk.session.conditions().temperature_K == Approx(298.15));
    open(desk, "pour");
    desk.fill("pour.mould-temperature", "700");
    CHECK(desk.session.view.pour.text("mould-temperature") == "700degC");
    desk.fill("pour.crucible-volume", "250 ml");
    const Result<PourRequest> read = pour_question().read(desk.session.view.pour, desk.session.catalogue);
    REQUIRE(read);
    CHECK(*read->mould_K == Approx(973.15));
}

TEST_CASE("while a field can't be read its fault has the field's name and the answer says that it is the last one") {
    Desk desk(testing::real_catalogue());
    open(desk, "drop");
    const std::string time = desk.text("drop.time");
    desk.click("drop.bore");
    desk.press('A', true);
    desk.type("wide");
    desk.frames(3);
    CHECK(desk.text("drop.bore.fault").rfind("bore: ", 0) == 0);
    CHECK(desk.text("stale") == "for the last readable input");
    CHECK(desk.text("drop.time") == time);
    desk.press('A', true);
    desk.type("18");
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK_FALSE(desk.shows("stale"));
}

TEST_CASE("a unit is changed at the field's right edge and the quantity stays") {
    Desk desk(testing::real_catalogue());
    open(desk, "drop");
    desk.click("drop.bore.unit");
    desk.click("drop.bore.unit.in");
    desk.settle();
    CHECK(desk.text("drop.bore.unit") == "in");
    CHECK(desk.text("drop.bore") == "0.708661"); // 18 mm over 25.4 mm
}

TEST_CASE("a metal is found by typing part of its name, pinned or not") {
    Desk desk(testing::real_catalogue());
    open(desk, "pour");
    desk.click("pour.metal");
    desk.frames(3);
    REQUIRE(desk.shows("pour.metal.find"));
    desk.type("tin");
    desk.frames(2);
    desk.tap(ImGuiKey_Enter);
    desk.settle();
    CHECK(desk.session.view.pour.text("metal") == "tin");
    CHECK_FALSE(is_pinned(desk.session.view, "tin"));
}

TEST_CASE("a click on a figure docks its evidence, which goes back and stays") {
    Desk desk(testing::real_catalogue());
    open(desk, "metals");
    desk.session.view.selected = "copper";
    desk.settle();
    desk.click("sheet.density");
    desk.frames(2);
    CHECK(desk.text("evidence.of") == "copper.density");
    CHECK(desk.session.view.view == "metals");
    CHECK(desk.shows("evidence.line"));
    CHECK(desk.text("evidence.sure").find(": ") != std::string::npos);
    desk.click("sheet.solidus");
    desk.frames(2);
    CHECK(desk.text("evidence.of") == "copper.solidus");
    desk.click("evidence.back");
    desk.frames(2);
    CHECK(desk.text("evidence.of") == "copper.density");
    open(desk, "rank");
    CHECK(desk.text("evidence.of") == "copper.density");
    desk.click("evidence.close");
    desk.frames(2);
    CHECK_FALSE(desk.shows("evidence.of"));
}

TEST_CASE("words about a figure are three lines, after a moment, beside it") {
    Desk desk(testing::real_catalogue());
    open(desk, "metals");
    desk.point_at("sheet.density");
    CHECK(desk.shows("hover"));
    CHECK_FALSE(desk.shows("hover.shown"));
    desk.frames(40);
    const std::string shown = desk.text("hover.shown");
    CHECK(std::count(shown.begin(), shown.end(), '\n') <= 2);
    CHECK(shown.find("90 %") != std::string::npos);
}

TEST_CASE("Tab leaves every field and comes round, and Return presses what has the focus") {
    Desk desk(testing::real_catalogue());
    open(desk, "rank");
    constexpr int tab = 258;
    std::set<std::string> seen;
    std::string first;
    for (int i = 0; i < 120; ++i) {
        desk.press(tab);
        const std::string& now = desk.ui.probe.tab.focused();
        if (now.empty()) continue;
        if (first.empty()) first = now;
        if (i > 5 && now == first) break;
        seen.insert(now);
    }
    for (const char* id : {"view.rank", "temperature", "units.1", "goal", "where", "candidates.1", "unusual"}) {
        CAPTURE(id);
        CHECK(seen.count(id) == 1);
    }
    CHECK(desk.session.view.view == "rank"); // going through presses nothing
    for (int i = 0; i < 120 && desk.ui.probe.tab.focused() != "units.1"; ++i) desk.press(tab);
    desk.tap(ImGuiKey_Enter);
    desk.frames(3);
    CHECK(desk.session.view.workshop_units);
}

TEST_CASE("Tab goes round the picture room and never behind it") {
    Desk desk(testing::real_catalogue());
    open(desk, "rank");
    desk.click("rank.chart.frame");
    desk.settle();
    constexpr int tab = 258;
    std::set<std::string> seen;
    for (int i = 0; i < 60; ++i) {
        desk.press(tab);
        if (const std::string& now = desk.ui.probe.tab.focused(); !now.empty()) seen.insert(now);
    }
    for (const std::string& id : seen) CHECK(id.starts_with("room."));
    for (const char* id : {"room.close", "room.shape.0", "room.title", "room.file", "room.save"}) {
        CAPTURE(id);
        CHECK(seen.count(id) == 1);
    }
}

TEST_CASE("the edge between two panels is dragged, kept, and put back") {
    Desk desk(testing::real_catalogue());
    open(desk, "metals");
    const double before = static_cast<double>(desk.ui.split_left.at("metals"));
    desk.point_at("edge.metals");
    ImGui::GetIO().MouseDown[0] = true;
    desk.frames(2);
    ImGui::GetIO().MousePos.x += 60;
    desk.frames(2);
    ImGui::GetIO().MouseDown[0] = false;
    desk.frames(2);
    CHECK(static_cast<double>(desk.ui.split_left.at("metals")) == Approx(before + 60).margin(2));
    CHECK(desk.session.view.splits.count("metals") == 1);
}

TEST_CASE("pins fill two rows, then say how many more there are") {
    Desk desk(testing::real_catalogue());
    for (std::size_t i = 0; i < 60; ++i)
        if (!is_pinned(desk.session.view, desk.session.catalogue.metals[i].slug))
            toggle_pin(desk.session.view, desk.session.catalogue.metals[i].slug);
    desk.settle();
    CHECK(desk.text("pins.more").front() == '+');
    desk.click("pins.more");
    desk.frames(3);
    const std::size_t more = std::stoul(desk.text("pins.more").substr(1)), pins = desk.session.view.pins.size();
    CHECK(desk.shows("unpin." + desk.session.view.pins[pins - more])); // the first without room in the strip
}

TEST_CASE("Compare is a table of differences: ratios to the first, rows in order, empty ones folded") {
    Desk desk(testing::real_catalogue());
    open(desk, "compare");
    const auto& pins = desk.session.view.pins;
    REQUIRE(pins.size() > 2);
    const std::string second = pins[1];
    const auto value = [&](const std::string& slug) {
        return evaluate(desk.session.catalogue, *desk.session.catalogue.metal(slug), "conductivity", {})->value_si;
    };
    const double ratio = std::stod(desk.text("compare." + second + ".conductivity.ratio").substr(2)); // behind the sign
    CHECK(ratio == Approx(value(second) / value(pins[0])).epsilon(0.006));
    desk.click("compare.by.conductivity");
    desk.click("compare.by.conductivity");
    desk.settle();
    CHECK(desk.text("compare.by.conductivity").find("lowest first") != std::string::npos);
    desk.click("compare.group.brakes a magnet");
    desk.settle();
    CHECK_FALSE(desk.shows("compare." + second + ".conductivity"));
}

TEST_CASE("a click on the head of a column puts the ranking in its order, and back") {
    Desk desk(testing::real_catalogue());
    open(desk, "rank");
    const auto first_row = [&] {
        double top = 1e9;
        std::string slug;
        for (const auto& [id, item] : desk.ui.probe.items())
            if (id.rfind("rank.row.", 0) == 0 && item.y < top) top = item.y, slug = item.text;
        return slug;
    };
    const std::string best = first_row();
    desk.click("ranked.head.2"); // the metal's name: from a
    desk.settle();
    const std::string by_name = first_row();
    CHECK(by_name != best);
    desk.click("ranked.head.2");
    desk.settle();
    CHECK(desk.session.catalogue.metal(first_row())->name > desk.session.catalogue.metal(by_name)->name);
    desk.click("ranked.head.2");
    desk.settle();
    CHECK(first_row() == best);
}
