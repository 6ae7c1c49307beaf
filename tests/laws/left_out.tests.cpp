// Leave one out: every cited point is predicted by its law from the others; the laws' stated errors must fit.
// The aims are those of the laws' headers; `pourbook help laws` shows the table.
#include "support/left_out.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

struct Aim {
    const char* property;
    Phase phase;
    double median; // of |error|, at most
    std::size_t least_points;
};

constexpr double least_inside = 0.85, too_wide_inside = 0.97;

std::vector<LeftOutPoint> kept(std::vector<LeftOutPoint> all, Basis basis) {
    std::erase_if(all, [&](const LeftOutPoint& p) { return p.basis != basis || p.element; });
    return all;
}

} // namespace

TEST_CASE("law: left-out points lie within each law's aim, nine in ten inside its interval") {
    for (const Aim& aim :
         {Aim{"resistivity", Phase::solid, 0.05, 400}, Aim{"thermal_conductivity", Phase::solid, 0.08, 300},
          Aim{"specific_heat", Phase::solid, 0.04, 400}, Aim{"density", Phase::solid, 0.005, 150},
          Aim{"linear_expansion", Phase::solid, 0.06, 150}, Aim{"latent_heat", Phase::any, 0.12, 25},
          Aim{"density_liquid", Phase::liquid, 0.02, 50}}) {
        const LawErrors e = errors_of(leave_each_out(real_catalogue(), aim.property, aim.phase));
        INFO(aim.property << ": n " << e.n << ", median " << e.median << ", inside " << e.share_inside);
        CHECK(e.n >= aim.least_points);
        CHECK(e.median <= aim.median);
        CHECK(e.share_inside >= least_inside);
        CHECK(e.share_inside <= too_wide_inside);
    }
}

TEST_CASE("law: resistivity carried between 77 and 700 K is within 5 % in the median") {
    std::vector<LeftOutPoint> points = leave_each_out(real_catalogue(), "resistivity", Phase::solid);
    std::erase_if(points, [](const LeftOutPoint& p) {
        return p.temperature_K < 77 || p.temperature_K > 700 || p.basis != Basis::carried;
    });
    const LawErrors e = errors_of(points);
    INFO("n " << e.n << ", median " << e.median << ", inside " << e.share_inside);
    CHECK(e.n > 200);
    CHECK(e.median <= 0.05);
}

TEST_CASE("law: estimates of alloys without a figure of their own keep their intervals") {
    for (const char* property : {"resistivity", "density", "specific_heat", "linear_expansion"}) {
        const LawErrors e = errors_of(kept(leave_each_out(real_catalogue(), property, Phase::solid), Basis::estimated));
        INFO(property << ": n " << e.n << ", median " << e.median << ", inside " << e.share_inside);
        CHECK(e.n > 10);
        CHECK(e.share_inside >= least_inside);
    }
}
