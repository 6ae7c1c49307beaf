// What is made for very many metals gives what the ordinary way gives.
#include "core/laws/draw_parts.hpp"
#include "core/laws/plain_figures.hpp"
#include "core/uncertainty/draws.hpp"
#include "core/uncertainty/spread.hpp"
#include "questions/rank/rank.hpp"

#include "support/many_metals.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

/// Metals whose figures are plain; each is compared with what evaluate() says.
std::size_t compared_plain(const Catalogue& c, const std::vector<std::string>& properties, const Conditions& asked) {
    const PlainFigures plain(c, properties, asked);
    std::vector<PlainFigure> figures;
    std::size_t read = 0;
    for (const Metal& m : c.metals) {
        if (!plain.read(m, figures)) continue;
        ++read;
        for (std::size_t i = 0; i < properties.size(); ++i) {
            Result<Evaluated> e = evaluate(c, m, properties[i], asked);
            INFO(m.slug << " " << properties[i] << " at " << asked.temperature_K << " K");
            REQUIRE(e);
            add_draw_parts(*e, c, m, properties[i], asked);
            CHECK(figures[i].value_si == e->value_si);
            CHECK(std::abs(figures[i].value_si * figures[i].relative) == Approx(e->standard_uncertainty_si));
            CHECK(figures[i].how_known == e->how_known);
            CHECK(figures[i].stale == e->stale);
            CHECK(e->terms.empty());
            const Evaluated with = plain.with_cause(m, i, figures[i]);
            REQUIRE(e->causes.size() == 1);
            CHECK(with.causes.front().key == e->causes.front().key);
            CHECK(with.causes.front().relative == Approx(e->causes.front().relative));
        }
    }
    return read;
}

} // namespace

TEST_CASE("plain figures are what evaluate says of every metal of the reference that has them") {
    Conditions asked;
    asked.story = false;
    std::size_t read = 0;
    for (const double kelvin : {77.0, 250.0, 293.15, 298.15, 373.15, 700.0})
        for (const char* condition : {"reference", "as-cast"}) {
            asked.temperature_K = kelvin;
            asked.condition = condition;
            read += compared_plain(real_catalogue(), {"conductivity", "price"}, asked);
            read += compared_plain(real_catalogue(), {"density", "solidus"}, asked);
            read += compared_plain(real_catalogue(), {"thermal_conductivity"}, asked);
        }
    CHECK(read > 100);
}

TEST_CASE("figures laid flat are what evaluate says, near their temperature and in the reference condition alone") {
    Catalogue crowd = real_catalogue();
    const Catalogue many = many_metals(300);
    crowd.metals.insert(crowd.metals.end(), many.metals.begin(), many.metals.end());
    crowd.price_sets.insert(crowd.price_sets.end(), many.price_sets.begin(), many.price_sets.end());
    crowd.index();
    const Metal& zinc = *crowd.metal("zinc");
    REQUIRE(crowd.flat(zinc, *crowd.property("price")));
    CHECK_FALSE(real_catalogue().flat(*real_catalogue().metal("zinc"), *crowd.property("price"))); // few: not laid flat
    CHECK_FALSE(crowd.flat(*real_catalogue().metal("zinc"), *crowd.property("price"))); // of another catalogue
    Conditions asked;
    asked.story = false;
    std::size_t invented = 0;
    for (const double kelvin : {77.0, 293.15, 293.5, 298.15, 373.15})
        for (const char* condition : {"reference", "as-cast"}) {
            asked.temperature_K = kelvin;
            asked.condition = condition;
            invented += compared_plain(crowd, {"conductivity", "density", "price"}, asked) >= 300 ? 1 : 0;
            compared_plain(crowd, {"thermal_conductivity", "liquidus"}, asked);
            compared_plain(crowd, {"specific_heat", "young_modulus"}, asked);
        }
    CHECK(invented == 4); // at 20 degC and 0.35 K from it
}

TEST_CASE("every invented metal is plain, and none as a casting but the person's own") {
    Catalogue many = many_metals(50);
    Conditions asked;
    CHECK(compared_plain(many, {"conductivity", "density", "price"}, asked) == 50);
    asked.casting.emplace();
    CHECK(compared_plain(many, {"conductivity", "density", "price"}, asked) == 0);
    many.metals[7].own = true;
    CHECK(compared_plain(many, {"conductivity", "density", "price"}, asked) == 1);
}

TEST_CASE("a ranking of many metals tells of the later ones what it tells of the first") {
    const Catalogue many = many_metals(400); // the first 300 are told at once
    RankRequest request;
    request.goal.formula = "conductivity / (density * price)";
    request.samples = 100;
    const auto all = rank(many, request);
    REQUIRE(all);
    REQUIRE(all->ranked.size() == 400);
    CHECK(!all->ranked[299].inputs.empty());
    CHECK(all->ranked[300].inputs.empty());
    for (const std::size_t row : {std::size_t{0}, std::size_t{299}, std::size_t{300}, std::size_t{399}}) {
        const RankedMetal& m = all->ranked[row];
        for (const char* property : {"conductivity", "density", "price"}) {
            const auto input = all->input(m, property);
            REQUIRE(input);
            CHECK(input->value_si == evaluate(many, *m.metal, property, {})->value_si);
            CHECK(!input->sources.empty());
        }
        CHECK_FALSE(all->input(m, "solidus"));
        request.from = {m.metal->slug};
        const auto alone = rank(many, request);
        REQUIRE(alone);
        CHECK(alone->ranked.front().place.median == m.place.median);
        CHECK(alone->ranked.front().place.low90 == m.place.low90);
    }
}

TEST_CASE("the spread of samples is their quantiles, however they lie") {
    std::mt19937_64 random(7);
    std::normal_distribution<double> normal;
    for (const std::size_t count : {std::size_t{1}, std::size_t{2}, std::size_t{3}, std::size_t{21}, std::size_t{1000}})
        for (const double skew : {0.0, 0.01, 1.0, 8.0}) {
            std::vector<double> x;
            for (std::size_t i = 0; i < count; ++i) x.push_back(-3 + std::exp(skew * normal(random)));
            const Spread s = spread_of(x);
            CHECK(s.lowest == *std::min_element(x.begin(), x.end()));
            CHECK(s.highest == *std::max_element(x.begin(), x.end()));
            std::vector<double> y = x;
            CHECK(s.low90 == quantile(y, 0.05));
            CHECK(s.median == quantile(y, 0.5));
            CHECK(s.high90 == quantile(y, 0.95));
        }
}

TEST_CASE("a cause's draws are the strata in its own order, each once") {
    Draws draws(500, 3);
    const std::vector<double> of = draws.of("a.cause");
    const std::vector<std::uint32_t>& order = draws.order_of("a.cause");
    std::vector<int> met(500);
    for (std::size_t s = 0; s < 500; ++s) {
        CHECK(of[s] == draws.strata()[order[s]]);
        ++met[order[s]];
    }
    CHECK(std::all_of(met.begin(), met.end(), [](int n) { return n == 1; }));
    draws.forget_beyond(0);
    CHECK(draws.of("a.cause") == of);
}
