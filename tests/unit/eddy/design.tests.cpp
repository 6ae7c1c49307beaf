// From a wish to tubes, over the real reference.
#include "questions/drop/design.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/drop/tube_charge.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;

namespace {

DesignRequest wish() {
    DesignRequest r;
    r.setup.magnet = "cylinder:15mmx15mm";
    r.setup.grade = "N42";
    r.longest_m = 0.4;
    r.longest_stated = true;
    r.metals = {"copper", "aluminium-a356-cast", "brass-cartridge", "bronze-silicon-cast"};
    r.samples = 50;
    return r;
}

Result<DesignResult> designed(const DesignRequest& request) {
    return design(testing::real_catalogue(), request);
}

} // namespace

TEST_CASE("every tube for a wanted time falls so long, and is told as its own command tells it", "[eddy]") {
    DesignRequest request = wish();
    request.time_s = 3;
    const auto r = designed(request);
    REQUIRE(r);
    REQUIRE_FALSE(r->tubes.empty());
    double cheapest = 0;
    for (const DesignedTube& d : r->tubes) {
        CAPTURE(d.tube);
        CHECK(d.drop.fall.time_s >= 3 * (1 - 1e-3));
        CHECK(d.drop.fall.time_s <= 3.4); // a drawing's tenths and millimetres, no more
        CHECK(d.drop.fall_time_low90_s <= d.drop.fall.time_s);
        CHECK(d.length_m <= 0.4 + 1e-9);
        CHECK(d.wall_m >= r->least_wall_m - 1e-9);
        CHECK(d.drop.cost_usd >= cheapest * 0.98); // drawn sizes may change places by a hair
        cheapest = d.drop.cost_usd;
        DropRequest again;
        again.setup = request.setup;
        again.setup.tube = d.tube;
        again.metal = d.metal->slug;
        again.samples = 10;
        const auto dropped = drop(testing::real_catalogue(), again);
        REQUIRE(dropped);
        CHECK(dropped->fall.time_s == Approx(d.drop.fall.time_s).epsilon(1e-12));
        CHECK(d.drop_command == "pourbook drop --magnet cylinder:15mmx15mm --grade N42 --tube " + d.tube + " --metal " +
                                    d.metal->slug + " --as handbook"); // the request's own conditions
        CHECK(d.pour_command.find("pourbook pour " + d.metal->slug + " --part tube:" + d.tube) == 0);
    }
}

TEST_CASE("metal in hand, crucible and lift limit the charge", "[eddy]") {
    DesignRequest request = wish();
    request.mass_kg = 1;
    const auto by_mass = designed(request);
    REQUIRE(by_mass);
    for (const DesignedTube& d : by_mass->tubes) {
        CAPTURE(d.tube);
        CHECK(d.charge_kg <= 1);
        CHECK(d.charge_kg > d.drop.tube_mass_kg);
    }
    request.crucible_m3 = 40e-6;
    const auto by_crucible = designed(request);
    REQUIRE(by_crucible);
    for (const DesignedTube& d : by_crucible->tubes) CHECK(d.melt_m3 <= 40e-6);
    CHECK(by_crucible->tubes.front().drop.fall.time_s < by_mass->tubes.front().drop.fall.time_s);
    request.mass_kg = 1e-3;
    CHECK_FALSE(designed(request)); // a gram makes no tube
}

TEST_CASE("more money falls longer along the front", "[eddy]") {
    DesignRequest request = wish();
    request.budget_usd = 5;
    const auto r = designed(request);
    REQUIRE(r);
    for (const DesignedTube& d : r->tubes) CHECK(d.drop.cost_usd <= 5);
    REQUIRE(r->front.size() >= 2);
    for (std::size_t i = 1; i < r->front.size(); ++i) {
        CHECK(r->front[i].drop.cost_usd > r->front[i - 1].drop.cost_usd);
        CHECK(r->front[i].drop.fall.time_s > r->front[i - 1].drop.fall.time_s);
    }
}

TEST_CASE("a wish that can't be says what comes nearest and no wish is asked back", "[eddy]") {
    DesignRequest request = wish();
    CHECK_FALSE(designed(request));
    request.time_s = 1e4;
    const auto r = designed(request);
    REQUIRE_FALSE(r);
    CHECK(r.problem().text.find("falls at most") != std::string::npos);
    request.metals = {"iron"};
    const auto iron = designed(request);
    REQUIRE_FALSE(iron);
    CHECK(iron.problem().text.find("ferromagnetic") != std::string::npos);
}

TEST_CASE("a workshop's crucible and lift hold where none is stated", "[eddy]") {
    WorkshopData own;
    own.profile.lift_maximum_kg = 4;
    own.crucibles = {{"small", "graphite", 1e-4}, {"large", "graphite", 5e-4}};
    DesignRequest request = within_workshop(wish(), own);
    CHECK(request.lift_kg == 4);
    CHECK(request.crucible_m3 == 5e-4);
    request.crucible_m3 = 2e-4;
    CHECK(within_workshop(request, own).crucible_m3 == 2e-4);
}

TEST_CASE("the same metal in a longer tube leaves a thinner wall", "[eddy]") {
    SweepRequest request;
    request.setup = wish().setup;
    request.setup.tube = "18mm:24mm:300mm";
    request.metals = {"copper", "aluminium-a356-cast"};
    request.hold = SweepHold::mass;
    request.steps = 4;
    request.samples = 20;
    const auto ranged = with_range(testing::real_catalogue(), request, "length", "150mm:600mm");
    REQUIRE(ranged);
    const auto r = sweep(testing::real_catalogue(), *ranged);
    REQUIRE(r);
    for (const SweepLine& line : r->lines) {
        REQUIRE(line.points.size() == 4);             // 150, 300, 450, 600 mm
        CHECK(line.points[1].wall_m == Approx(3e-3)); // the tube as stated
        for (std::size_t i = 1; i < 4; ++i) {
            CHECK(line.points[i].tube_mass_kg == Approx(line.points[0].tube_mass_kg));
            CHECK(line.points[i].wall_m < line.points[i - 1].wall_m);
            CHECK(line.points[i].time_s > line.points[i - 1].time_s); // a thin wall is the best use of metal
        }
    }
    request.over = SweepOver::wall;
    request.from_si = 1e-3;
    request.to_si = 2e-3;
    CHECK_FALSE(sweep(testing::real_catalogue(), request)); // a held mass leaves no wall to sweep
}
