// Leave one out: every cited point is predicted by its law from the others; the laws' stated errors must fit.
// The aims are those of the laws' headers; `pourbook help laws` shows the table.
#include "support/left_out.hpp"

#include "core/evaluate/candidate.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <sstream>

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
          Aim{"density_liquid", Phase::liquid, 0.02, 40}}) {
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

TEST_CASE("law: temperature coefficients from the curve keep their intervals, which say something") {
    const std::vector<LeftOutPoint> points = leave_each_out(real_catalogue(), "temperature_coefficient", Phase::solid);
    const LawErrors e = errors_of(points);
    INFO("n " << e.n << ", median " << e.median << ", inside " << e.share_inside);
    CHECK(e.n >= 30);
    CHECK(e.share_inside >= 0.85);
    CHECK(e.share_inside <= 0.97);
    for (const LeftOutPoint& p : points)
        if (p.predicted > 6e-4) CHECK(p.predicted_u < 0.4 * p.predicted); // it was once 0.8 of it, for all
}

TEST_CASE("law: no curve steps where one way of knowing hands over to another") {
    const Catalogue& catalogue = real_catalogue();
    const auto rho = [&](const Metal& m, double kelvin) {
        Conditions c;
        c.temperature_K = kelvin;
        c.story = false;
        return evaluate(catalogue, m, "resistivity", c);
    };
    // Two figures printed for 300 and 700 degC stood out of evaluated tables by 1 %, 10 K to either side.
    for (const char* slug : {"copper", "aluminium", "silver", "gold", "brass-cartridge", "aluminium-6061"})
        for (const double edge : {563.15, 583.15, 963.15, 983.15}) {
            const Metal* m = catalogue.metal(slug);
            if (!m || edge > 900 && m->family == "aluminium") continue; // it melts
            const auto a = rho(*m, edge - 0.5), b = rho(*m, edge + 0.5);
            INFO(slug << " at " << edge << " K");
            REQUIRE((a && b));
            CHECK(b->value_si / a->value_si == Approx(1.002).margin(0.004));
        }
    int ends = 0;
    for (const Metal& m : catalogue.metals) // a cited coefficient ends, Matthiessen's rule goes on
        for (const double end : coefficient_ends_K(m)) {
            const auto a = rho(m, end - 0.1), b = rho(m, end + 0.1);
            if (m.is_element() || !a || !b ||
                (a->law != "temperature coefficient" && b->law != "temperature coefficient"))
                continue;
            INFO(m.slug << " at " << end << " K: " << a->value_si << ", " << b->value_si);
            CHECK(b->value_si / a->value_si == Approx(1).margin(0.006));
            ++ends;
        }
    CHECK(ends > 10);
}

TEST_CASE("law: no resistivity steps at a Curie point") {
    // Common practice, no source: the spins are in disorder at it, so the slope changes there and not the figure.
    const Catalogue& catalogue = real_catalogue();
    int crossed = 0;
    for (const Metal& m : catalogue.metals) {
        Conditions c;
        const auto curie = evaluate(catalogue, m, "curie_temperature", c);
        if (!curie || !ferromagnetic_at(catalogue, m, room_temperature_K)) continue;
        c.temperature_K = curie->value_si - 1;
        const auto below = evaluate(catalogue, m, "resistivity", c);
        c.temperature_K = curie->value_si + 1;
        const auto above = evaluate(catalogue, m, "resistivity", c);
        if (!below || !above) continue;
        INFO(m.slug << ": " << below->value_si << ", " << above->value_si);
        CHECK(above->value_si / below->value_si == Approx(1).margin(0.02));
        ++crossed;
    }
    CHECK(crossed >= 3);
}

TEST_CASE("law: estimates of alloys without a figure of their own keep their intervals") {
    for (const char* property : {"resistivity", "density", "specific_heat", "linear_expansion"}) {
        const LawErrors e = errors_of(kept(leave_each_out(real_catalogue(), property, Phase::solid), Basis::estimated));
        INFO(property << ": n " << e.n << ", median " << e.median << ", inside " << e.share_inside);
        CHECK(e.n > 10);
        CHECK(e.share_inside >= least_inside);
    }
}

TEST_CASE("the table of the help page \"laws\" is what is measured") {
    struct Row {
        const char *title, *property;
        Phase phase;
    };
    std::ifstream file(POURBOOK_DB "/../app/help/laws.md");
    const std::string page((std::istreambuf_iterator<char>(file)), {});
    REQUIRE_FALSE(page.empty());
    for (const Row& row :
         {Row{"resistivity, solid", "resistivity", Phase::solid},
          Row{"thermal conductivity, solid", "thermal_conductivity", Phase::solid},
          Row{"specific heat, solid", "specific_heat", Phase::solid}, Row{"density, solid", "density", Phase::solid},
          Row{"density of the melt", "density_liquid", Phase::liquid},
          Row{"linear expansion, mean", "linear_expansion", Phase::solid},
          Row{"heat of fusion", "latent_heat", Phase::any}}) {
        const LawErrors e = errors_of(leave_each_out(real_catalogue(), row.property, row.phase));
        const std::size_t table = page.find("## How far off");
        const std::size_t at = page.find("| " + std::string(row.title) + " | ", table);
        REQUIRE(at != std::string::npos);
        double n = 0, median = 0, inside = 0;
        std::istringstream figures(page.substr(at + std::string(row.title).size() + 4));
        std::string bar, percent;
        figures >> n >> bar >> median >> percent >> bar >> inside;
        INFO("write | " << row.title << " | " << e.n << " | " << 100 * e.median << " % | " << 100 * e.share_inside
                        << " % |");
        // A few new figures in the reference move the table a little; the page need not be written anew for each.
        CHECK(static_cast<double>(e.n) == Approx(n).epsilon(0.15));
        CHECK(100 * e.median == Approx(median).epsilon(0.3).margin(0.1));
        CHECK(100 * e.share_inside == Approx(inside).margin(4));
    }
}
