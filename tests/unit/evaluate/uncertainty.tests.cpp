// How sure an answer is, from both sides: each rule of evaluate.hpp's header on figures worked out by hand.
#include "core/evaluate/evaluate.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

/// Round figures in the dictionary: from a handbook (factor 0.5) density known to 1 %, resistivity to 2 % and 10 %
/// between conditions.
Catalogue round_catalogue() {
    Catalogue c = small_catalogue();
    for (Property& p : c.properties) {
        if (p.id == "density") p.default_uncertainty = 0.02;
        if (p.id == "resistivity") {
            p.default_uncertainty = 0.04;
            p.condition_spread = 0.10;
        }
    }
    return c;
}

Metal& rounded_metal(Catalogue& c, const std::string& slug) {
    return *std::find_if(c.metals.begin(), c.metals.end(), [&](const Metal& m) { return m.slug == slug; });
}

Record& recorded(Metal& m, const std::string& property) {
    return *std::find_if(m.records.begin(), m.records.end(), [&](const Record& r) { return r.property == property; });
}

Record other_source(const std::string& property, double value_si) {
    return series(property, {{293.15, value_si}}, "handbook-2");
}

struct Case {
    const char* rule;
    std::function<void(Metal& aa, Record& density)> change; // of a density of 8000 kg/m3
    double expected_kg_m3;
};

} // namespace

TEST_CASE("standard uncertainty by each rule, worked out by hand") {
    const std::vector<Case> cases = {
        {"nothing stated: half the dictionary's 2 % for a handbook", [](Metal&, Record&) {}, 80},
        {"a remembered figure: 2.5 times the dictionary's",
         [](Metal&, Record& r) { r.citation.how_known = HowKnown::memory; }, 400},
        {"an evaluated review: a quarter", [](Metal&, Record& r) { r.citation.source = "review-1"; }, 40},
        {"stated as a share: 0.5 %", [](Metal&, Record& r) { r.uncertainty_relative = 0.005; }, 40},
        {"stated in the unit", [](Metal&, Record& r) { r.uncertainty_si = 20; }, 20},
        {"stated and remembered: not doubled",
         [](Metal&, Record& r) {
             r.uncertainty_si = 20;
             r.citation.how_known = HowKnown::memory;
         },
         20},
        {"a printed range of 300, all of it as likely: 300 / (2 sqrt 3)",
         [](Metal&, Record& r) {
             r.points.front().low_si = 7850;
             r.points.front().high_si = 8150;
         },
         86.602540},
        {"never below the last printed digit, 173.2 either way: 173.2 / sqrt 3",
         [](Metal&, Record& r) { r.points.front().half_digit_si = 173.2050808; }, 100},
        {"a finer print leaves it as it is", [](Metal&, Record& r) { r.points.front().half_digit_si = 60; }, 80},
        {"another source 800 away: half of it",
         [](Metal& aa, Record&) { aa.records.push_back(other_source("density", 8800)); }, 400},
        {"another source 100 away: within two of its own uncertainties",
         [](Metal& aa, Record&) { aa.records.push_back(other_source("density", 7900)); }, 80},
    };
    for (const Case& one : cases) {
        INFO(one.rule);
        Catalogue c = round_catalogue();
        Metal& aa = rounded_metal(c, "aa");
        one.change(aa, recorded(aa, "density"));
        const auto e = evaluate(c, *c.metal("aa"), "density", {});
        REQUIRE(e);
        CHECK(e->value_si == 8000);
        CHECK(e->standard_uncertainty_si == Approx(one.expected_kg_m3).epsilon(1e-6));
    }
}

TEST_CASE("another condition adds the spread between conditions: root of 2 %^2 + 10 %^2") {
    Catalogue c = round_catalogue();
    recorded(rounded_metal(c, "ab"), "resistivity").condition = "annealed";
    Conditions aged;
    aged.condition = "aged";
    const auto e = evaluate(c, *c.metal("ab"), "resistivity", aged);
    CHECK(e->standard_uncertainty_si == Approx(8e-8 * 0.10198039).epsilon(1e-6));
    CHECK(evaluate(c, *c.metal("ab"), "resistivity", {})->standard_uncertainty_si == Approx(1.6e-9).epsilon(1e-9));
}

TEST_CASE("standard uncertainty of a price, by hand") {
    Catalogue c = small_catalogue(); // 10 and 2 USD/kg, each give or take a tenth; ab is 60 % and 40 % of them
    CHECK(evaluate(c, *c.metal("aa"), "price", {})->standard_uncertainty_si == Approx(1 / std::sqrt(3.0)));
    CHECK(evaluate(c, *c.metal("ab"), "price", {})->standard_uncertainty_si ==
          Approx(std::sqrt((0.6 * 0.6 + 0.08 * 0.08) / 3)));
    c.price_sets.front().prices.front().low_usd_per_kg = no_number;
    CHECK(evaluate(c, *c.metal("aa"), "price", {})->standard_uncertainty_si == Approx(1)); // 10 % without a range
    PriceForm retail;
    retail.form = "retail";
    retail.low = 1;
    retail.high = 4;
    c.price_forms = {retail}; // as likely on a scale of ratios: ln 4 / (2 sqrt 3) = 0.400187
    Conditions in_a_shop;
    in_a_shop.price_form = "retail";
    const auto e = evaluate(c, *c.metal("aa"), "price", in_a_shop);
    CHECK(e->value_si == Approx(20));
    CHECK(e->standard_uncertainty_si == Approx(20 * std::hypot(0.1, 0.400187)).epsilon(1e-5));
}
