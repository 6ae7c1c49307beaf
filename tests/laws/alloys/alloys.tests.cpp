// Laws that every mix keeps: conservation of mass, bounds, order of temperatures.
#include "core/alloys/blend.hpp"
#include "core/alloys/density.hpp"
#include "core/alloys/diagram.hpp"
#include "core/alloys/melting.hpp"
#include "core/alloys/resistivity.hpp"
#include "core/alloys/two_phase.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>
#include <random>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

const AlloyData& data() {
    return real_catalogue().alloys;
}

Composition random_composition(std::mt19937& dice) {
    const std::vector<std::string> symbols = {"Ag", "Al", "Au", "Cu", "Ni", "Pb", "Sn", "Zn"};
    std::vector<Share> shares;
    double sum = 0;
    for (const std::string& s : symbols) {
        const double w = std::uniform_real_distribution<>(0, 1)(dice);
        if (w < 0.5) continue;
        shares.push_back({s, w, 0});
        sum += w;
    }
    if (shares.empty()) shares.push_back({"Cu", sum = 1, 0});
    for (Share& s : shares) s.wt_percent *= 100 / sum;
    const auto c = composition_of(data(), shares);
    REQUIRE(c);
    return *c;
}

} // namespace

TEST_CASE("mass is conserved to the nanogram") {
    std::mt19937 dice(20261125);
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<Stock> stocks;
        std::int64_t put_in = 0;
        const int count = trial == 0 ? 100 : 1 + trial % 7;
        for (int i = 0; i < count; ++i) {
            const double kg = std::pow(10, std::uniform_real_distribution<>(-9, trial % 5 == 0 ? 3 : 1)(dice));
            stocks.push_back({"stock", kg, random_composition(dice)});
            put_in += std::llround(kg * 1e12);
        }
        const auto b = blend(data(), stocks);
        REQUIRE(b);
        CHECK(b->nanograms == put_in);
        const std::int64_t elements =
            std::accumulate(b->elements.begin(), b->elements.end(), std::int64_t{0},
                            [](std::int64_t sum, const ElementMass& e) { return sum + e.nanograms; });
        CHECK(elements == put_in);
    }
}

TEST_CASE("wt% and at% each sum to 100 and turn into each other") {
    std::mt19937 dice(7);
    for (int trial = 0; trial < 100; ++trial) {
        const Composition c = random_composition(dice);
        double wt = 0, at = 0;
        std::vector<Share> atoms;
        for (const Share& s : c.shares()) {
            wt += s.wt_percent;
            at += s.at_percent;
            atoms.push_back({s.element, s.at_percent, 0});
        }
        CHECK(wt == Approx(100));
        CHECK(at == Approx(100));
        const auto back = composition_of(data(), atoms, true);
        REQUIRE(back);
        for (const Share& s : c.shares()) CHECK(back->wt(s.element) == Approx(s.wt_percent));
    }
}

TEST_CASE("adding the mass asked for reaches the target") {
    for (double start : {10.0, 62.5, 92.5})
        for (double target : {95.0, 99.0}) {
            const auto add = mass_to_add_kg(2, start, target, 100);
            REQUIRE(add);
            CHECK((2 * start + *add * 100) / (2 + *add) == Approx(target));
        }
}

TEST_CASE("liquidus above solidus, lever shares between 0 and 1, everywhere on every diagram") {
    int drawn = 0;
    for (const Diagram& d : data().diagrams)
        for (double wt = 0; wt <= 100; wt += 0.5) {
            const auto range = melting_range(d, wt);
            if (!range) continue;
            INFO(d.a << "-" << d.b << " " << wt);
            CHECK(range->liquidus_K >= range->solidus_K - 1e-6);
            ++drawn;
            for (double t = 400; t < 1800; t += 50) {
                const auto phases = phases_at(d, wt, t);
                if (!phases) continue;
                double sum = 0, content = 0;
                for (const PhaseShare& p : *phases) {
                    CHECK(p.share >= -1e-12);
                    sum += p.share;
                    content += p.share * p.wt;
                }
                CHECK(sum == Approx(1));
                CHECK(content == Approx(wt).margin(1e-9)); // mass of b
                if (t > range->liquidus_K + 1e-6) CHECK(phases->front().phase == "liquid");
            }
        }
    CHECK(drawn > 1500);
}

TEST_CASE("freezing without diffusion conserves the solute and leaves more liquid than equilibrium") {
    for (const auto& [a, b, wt] :
         {std::tuple{"Ag", "Cu", 7.5}, {"Al", "Cu", 4.4}, {"Al", "Si", 7.0}, {"Cu", "Sn", 8.0}, {"Pb", "Sn", 10.0}}) {
        const Diagram& d = *data().diagram(a, b);
        const auto s = scheil(d, wt);
        REQUIRE(s);
        INFO(a << "-" << b);
        const double all = s->primary_share * s->primary_mean_wt + s->last_liquid_share * s->steps.back().liquid_wt;
        CHECK(all == Approx(wt).epsilon(1e-6));
        CHECK(s->last_liquid_share > 0);
        const auto phases = phases_at(d, wt, s->last_K + 0.01);
        REQUIRE(phases);
        for (const PhaseShare& p : *phases)
            if (p.phase == "liquid") CHECK(s->last_liquid_share >= p.share - 1e-6);
    }
}

TEST_CASE("Scheil's closed form for straight lines") {
    // Scheil 1942: with constant k the liquid left is (c_E / c_0)^(1/(k-1)). A diagram with straight lines has constant
    // k.
    Diagram d;
    d.a = "A";
    d.b = "B";
    d.fields.push_back({"(A)", "liquid", {{800, 5, 25}, {1000, 0, 0}}, {}, ""});
    const auto s = scheil(d, 4);
    REQUIRE(s);
    CHECK(s->last_liquid_share == Approx(std::pow(25.0 / 4, 1 / (0.2 - 1))).epsilon(1e-4));
}

TEST_CASE("Maxwell's mixture lies between series and parallel, and keeps the pure ends") {
    for (double f = 0; f <= 1; f += 0.05)
        for (double ratio : {0.001, 0.1, 0.9, 1.0, 3.0, 50.0}) {
            const std::vector<PhasePart> parts = {{f, ratio * 1e7}, {1 - f, 1e7}};
            CHECK(maxwell_conductivity(parts) >= series_conductivity(parts) * (1 - 1e-12));
            CHECK(maxwell_conductivity(parts) <= parallel_conductivity(parts) * (1 + 1e-12));
        }
    CHECK(maxwell_conductivity({{0, 1}, {1, 5}}) == Approx(5));
    // Limit: insulating pores, s/s_m = (1 - f)/(1 + f/2): 2 % pores cost 3 % (Maxwell).
    CHECK(maxwell_conductivity({{0.02, 1e-12}, {0.98, 1}}) == Approx(0.98 / 1.01));
}

TEST_CASE("estimates near the pure metal approach its own value") {
    for (const auto& [host, solute] : {std::pair{"Cu", "Zn"}, {"Ag", "Cu"}, {"Al", "Mg"}, {"Cu", "Ni"}, {"Au", "Ag"}}) {
        const auto c = composition_of(data(), {{host, 99.999, 0}, {solute, 0.001, 0}});
        REQUIRE(c);
        const auto r = estimate_resistivity({real_catalogue(), *c, Treatment::annealed});
        REQUIRE(r);
        INFO(host << " " << solute);
        CHECK(r->estimate.value_si == Approx(r->host_si).epsilon(0.002));
        CHECK(r->estimate.value_si >= r->host_si);
    }
}

TEST_CASE("density of a blend lies near the range of its metals") {
    std::mt19937 dice(3);
    for (int trial = 0; trial < 50; ++trial) {
        const Composition c = random_composition(dice);
        const auto rho = estimate_density({real_catalogue(), c, Treatment::annealed});
        REQUIRE(rho);
        double low = 1e9, high = 0;
        for (const Share& s : c.shares()) {
            const auto own = composition_of(data(), {{s.element, 100, 0}});
            const auto pure = estimate_density({real_catalogue(), *own, Treatment::annealed});
            low = std::min(low, pure->value_si);
            high = std::max(high, pure->value_si);
        }
        CHECK(rho->value_si >= low * 0.97);
        CHECK(rho->value_si <= high * 1.03);
    }
}
