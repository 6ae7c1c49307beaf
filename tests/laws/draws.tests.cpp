// Samples keep to physics: no alloy below its host's resistivity, no liquidus below its solidus, and a pure metal's
// residual part decides where it is cold.
#include "core/evaluate/sampled.hpp"
#include "core/laws/draw_parts.hpp"
#include "core/laws/host.hpp"
#include "questions/rank/rank.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Evaluated with_parts(const Metal& m, const Conditions& conditions) {
    Result<Evaluated> e = evaluate(real_catalogue(), m, "resistivity", conditions);
    REQUIRE(e);
    add_draw_parts(*e, real_catalogue(), m, "resistivity", conditions);
    return *e;
}

} // namespace

TEST_CASE("law: no sample of an alloy conducts better than its host in the same sample") {
    const Catalogue& c = real_catalogue();
    Draws draws(500, 7);
    std::size_t compared = 0;
    for (const double kelvin : {77.0, 293.15, 400.0})
        for (const Metal& m : c.metals) {
            Conditions conditions;
            conditions.temperature_K = kelvin;
            if (m.is_element() || phase_at(c, m, kelvin) != Phase::solid) continue;
            const Result<Evaluated> own = evaluate(c, m, "resistivity", conditions);
            if (!own) continue;
            const Metal* host = electric_host(c, m, own->value_si);
            if (!host || phase_at(c, *host, kelvin) != Phase::solid) continue;
            const Evaluated alloy = with_parts(m, conditions);
            if (alloy.terms.empty()) continue; // a mixture whose best conductor has no part of its own
            const Result<Evaluated> pure = evaluate(c, *host, "resistivity", conditions);
            const std::vector<double> of_alloy = sampled(alloy, draws), of_host = sampled(*pure, draws);
            INFO(m.slug << " and " << host->slug << " at " << kelvin << " K");
            for (std::size_t s = 0; s < of_alloy.size(); ++s) REQUIRE(of_alloy[s] >= of_host[s]);
            ++compared;
        }
    CHECK(compared > 280);
}

TEST_CASE("law: no liquidus below the solidus in any sample") {
    const Catalogue& c = real_catalogue();
    Draws draws(500, 7);
    for (const Metal& m : c.metals) {
        std::vector<RankInput> inputs;
        for (const char* end : {"solidus", "liquidus"}) inputs.push_back({end, *evaluate(c, m, end, {})});
        const Columns columns = drawn(inputs, draws);
        INFO(m.slug);
        for (std::size_t s = 0; s < columns[0].size(); ++s) REQUIRE(columns[1][s] >= columns[0][s]);
    }
}

TEST_CASE("cold, the purity decides: no pure metal is first in every sample at 20 K") {
    RankRequest request;
    request.goal.goal = "strongest-brake";
    request.conditions.temperature_K = 20;
    request.samples = 1000;
    const RankResult r = *rank(real_catalogue(), request);
    REQUIRE(r.ranked.size() > 50);
    CHECK(r.ranked.front().place.p_first < 0.9);
    Conditions given = request.conditions;
    given.rrr = 100;
    const Evaluated stated = with_parts(*real_catalogue().metal("copper"), given);
    CHECK(stated.terms.empty()); // a ratio that is given is not drawn
}
