#include "core/evaluate/evaluate.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Metal& metal(Catalogue& c, const std::string& slug) {
    return *std::find_if(c.metals.begin(), c.metals.end(), [&](const Metal& m) { return m.slug == slug; });
}

Conditions at(double kelvin) {
    Conditions c;
    c.temperature_K = kelvin;
    return c;
}

bool mentions(const std::vector<std::string>& trail, const std::string& words) {
    return std::any_of(trail.begin(), trail.end(),
                       [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("inside a series it interpolates, outside it refuses with the cited range") {
    const Catalogue c = small_catalogue();
    CHECK(evaluate(c, *c.metal("aa"), "resistivity", at(250))->value_si == Approx(2.5e-8));
    const auto beyond = evaluate(c, *c.metal("aa"), "resistivity", at(600));
    REQUIRE_FALSE(beyond);
    CHECK(beyond.problem().kind == Problem::Kind::out_of_range);
    CHECK(beyond.problem().text.find("100 K to 126.9 °C") != std::string::npos);
}

TEST_CASE("conductivity is the reciprocal, with the same relative uncertainty") {
    const Catalogue c = small_catalogue();
    const auto rho = evaluate(c, *c.metal("aa"), "resistivity", at(300)),
               sigma = evaluate(c, *c.metal("aa"), "conductivity", at(300));
    CHECK(sigma->value_si * rho->value_si == Approx(1));
    CHECK(sigma->standard_uncertainty_si / sigma->value_si == Approx(rho->standard_uncertainty_si / rho->value_si));
    CHECK(sigma->causes.front().relative == Approx(-rho->causes.front().relative));
}

TEST_CASE("a read source goes before a remembered one and a review before a handbook") {
    Catalogue c = small_catalogue();
    Record remembered = series("density", {{293.15, 8400}}, "memory-1");
    remembered.citation.how_known = HowKnown::memory;
    metal(c, "aa").records.insert(metal(c, "aa").records.begin(), remembered);
    CHECK(evaluate(c, *c.metal("aa"), "density", {})->value_si == 8000);
    metal(c, "aa").records.push_back(series("density", {{293.15, 8050}}, "review-1"));
    const auto e = evaluate(c, *c.metal("aa"), "density", {});
    CHECK(e->value_si == 8050);
    CHECK(e->sources.size() == 3);
    CHECK(e->sources.front().chosen);
}

TEST_CASE("the uncertainty covers the spread among sources, disputed ones apart") {
    Catalogue c = small_catalogue();
    metal(c, "aa").records.push_back(series("density", {{293.15, 8800}}, "handbook-2"));
    auto e = evaluate(c, *c.metal("aa"), "density", {});
    CHECK(std::abs(e->spread_high_si - e->value_si) <= 2 * e->standard_uncertainty_si + 1e-9);
    CHECK(e->spread_high_si == 8800);
    metal(c, "aa").records.back().use = Use::disputed;
    e = evaluate(c, *c.metal("aa"), "density", {});
    CHECK(e->spread_high_si == 8000);
}

TEST_CASE("the condition asked decides, and another condition is used with a wider uncertainty and says so") {
    Catalogue c = small_catalogue();
    metal(c, "ab").records[0].condition = "annealed";
    Record cast = series("resistivity", {{293.15, 9e-8}}, "handbook-2");
    cast.condition = "as-cast";
    metal(c, "ab").records.push_back(cast);
    Conditions as_cast;
    as_cast.condition = "as-cast";
    CHECK(evaluate(c, *c.metal("ab"), "resistivity", as_cast)->value_si == 9e-8);
    CHECK(evaluate(c, *c.metal("ab"), "resistivity", {})->value_si == 8e-8);
    Conditions aged;
    aged.condition = "aged";
    const auto e = evaluate(c, *c.metal("ab"), "resistivity", aged);
    CHECK_FALSE(e->condition_matches);
    CHECK(e->standard_uncertainty_si > 0.09 * e->value_si);
    CHECK(mentions(e->trail, "only another condition"));
}

TEST_CASE("a bound is shown, never evaluated") {
    Catalogue c = small_catalogue();
    Record bound = series("thermal_conductivity", {{293.15, no_number}});
    bound.points.front().low_si = 100;
    metal(c, "aa").records.push_back(bound);
    Conditions cited;
    cited.cited_only = true;
    CHECK(evaluate(c, *c.metal("aa"), "thermal_conductivity", cited).problem().kind == Problem::Kind::no_value);
}

TEST_CASE("a temperature coefficient carries a single point inside its range only") {
    Catalogue c = small_catalogue();
    metal(c, "bb").records.push_back(series("temperature_coefficient", {{293.15, 0.004}}));
    CHECK(evaluate(c, *c.metal("bb"), "resistivity", at(343.15))->value_si == Approx(6e-8 * (1 + 0.004 * 50)));
    CHECK_FALSE(evaluate(c, *c.metal("bb"), "resistivity", at(500)));
    // Referred to 0 degC the same slope has another coefficient: alpha20 = alpha0 / (1 + 20 alpha0).
    Catalogue d = small_catalogue();
    metal(d, "bb").records.push_back(series("temperature_coefficient", {{273.15, 0.004}}));
    CHECK(evaluate(d, *d.metal("bb"), "resistivity", at(343.15))->value_si == Approx(6e-8 * (1 + 0.004 / 1.08 * 50)));
}

TEST_CASE("phases: solid below the solidus, liquid above the liquidus, nothing in between") {
    Catalogue c = small_catalogue();
    CHECK(phase_at(c, *c.metal("ab"), 600) == Phase::solid);
    CHECK(phase_at(c, *c.metal("ab"), 720) == Phase::any);
    CHECK(phase_at(c, *c.metal("ab"), 800) == Phase::liquid);
    CHECK(evaluate(c, *c.metal("ab"), "resistivity", at(720)).problem().text.find("between solidus and liquidus") !=
          std::string::npos);
    CHECK_FALSE(evaluate(c, *c.metal("ab"), "resistivity", at(800))); // the solid figure is not used for the melt
}

TEST_CASE("a pure metal has solidus and liquidus at its melting point") {
    const Catalogue c = small_catalogue();
    CHECK(evaluate(c, *c.metal("aa"), "solidus", {})->value_si == 1000);
    CHECK(evaluate(c, *c.metal("aa"), "liquidus", {})->value_si == 1000);
}

TEST_CASE("metal value is content times price, shares its causes, and names what has no price") {
    Catalogue c = small_catalogue();
    const auto e = evaluate(c, *c.metal("ab"), "price", {});
    CHECK(e->value_si == Approx(0.6 * 10 + 0.4 * 2));
    CHECK(e->how_known == HowKnown::computed);
    CHECK(e->causes[0].key == "price.aa");
    c.price_sets.front().prices.pop_back();
    c.index();
    CHECK(evaluate(c, *c.metal("ab"), "price", {}).problem().text.find("price of bb") != std::string::npos);
}

TEST_CASE("a residual resistivity ratio replaces the residual part of the curve (Matthiessen)") {
    Catalogue c = small_catalogue();
    metal(c, "aa").records[0] = series("resistivity", {{4, 1e-11}, {273.15, 1.5e-8}, {300, 1.7e-8}});
    Conditions impure = at(4);
    impure.rrr = 50;
    CHECK(evaluate(c, *c.metal("aa"), "resistivity", impure)->value_si == Approx(1.5e-8 / 50));
    impure.temperature_K = 300;
    CHECK(evaluate(c, *c.metal("aa"), "resistivity", impure)->value_si == Approx(1.7e-8 + 1.5e-8 / 50 - 1e-11));
    CHECK(evaluate(c, *c.metal("ab"), "resistivity", impure).problem().kind == Problem::Kind::refused);
}

TEST_CASE("a stated uncertainty in the unit of a conductivity is carried to the resistivity") {
    Catalogue c = small_catalogue();
    Record sigma = series("conductivity", {{293.15, 50e6}});
    sigma.uncertainty_si = 1e6; // 2 %
    metal(c, "bb").records[0] = sigma;
    const auto e = evaluate(c, *c.metal("bb"), "resistivity", {});
    CHECK(e->value_si == Approx(2e-8));
    CHECK(e->standard_uncertainty_si == Approx(0.02 * 2e-8));
}

TEST_CASE("ferromagnetic only below the Curie temperature") {
    Catalogue c = small_catalogue();
    Record behaviour = single("magnetic_behaviour", no_number);
    behaviour.points.clear();
    behaviour.text = "ferromagnetic";
    metal(c, "aa").records.push_back(behaviour);
    metal(c, "aa").records.push_back(single("curie_temperature", 500));
    CHECK(ferromagnetic_at(c, *c.metal("aa"), 300));
    CHECK_FALSE(ferromagnetic_at(c, *c.metal("aa"), 600));
}
