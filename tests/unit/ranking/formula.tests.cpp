#include "core/ranking/formula.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

int fault_column(const std::string& text) {
    const auto f = Formula::parse(text, real_catalogue());
    INFO(text);
    REQUIRE_FALSE(f);
    CHECK(f.problem().kind == Problem::Kind::unreadable);
    return f.problem().column;
}

double constant(const std::string& text) {
    const auto f = Formula::parse(text, real_catalogue());
    INFO(text);
    REQUIRE(f);
    return f->value({});
}

} // namespace

TEST_CASE("arithmetic has the usual order") {
    CHECK(constant("2 + 3 * 4") == 14);
    CHECK(constant("(2 + 3) * 4") == 20);
    CHECK(constant("2 ^ 3 ^ 2") == 512);
    CHECK(constant("-2 ^ 2") == -4);
    CHECK(constant("8 / 4 / 2") == 1);
    CHECK(constant("sqrt(16) + min(3, 2) + max(1, 5) + abs(-4)") == 15);
    CHECK(constant("log(exp(2))") == Approx(2));
    CHECK(constant("2 ** 3") == 8);
}

TEST_CASE("names, units and dimensions") {
    const auto f = Formula::parse("conductivity / (density * price)", real_catalogue());
    REQUIRE(f);
    CHECK(f->names() == std::vector<std::string>{"conductivity", "density", "price"});
    CHECK(f->value({6e7, 9000, 10}) == Approx(6e7 / 9e4));
    CHECK(f->dimension().text() == "kg^-1 s^3 A^2 USD^-1");
    CHECK(Formula::parse("density - 8.9 g/cm3", real_catalogue())->value({9000}) == Approx(100));
    CHECK(Formula::parse("sqrt(density / (1 kg/m3))", real_catalogue())->value({100}) == Approx(10));
}

TEST_CASE("wrong formulas are refused at the column of the fault") {
    CHECK(fault_column("density + conductivity") == 9);
    CHECK(fault_column("densitty * 2") == 1);
    CHECK(fault_column("(density") == 9);
    CHECK(fault_column("density)") == 8);
    CHECK(fault_column("") == 1);
    CHECK(fault_column("density / 0") == 9);
    CHECK(fault_column("density / (2 - 2)") == 9);
    CHECK(fault_column("fall_time + density") == 11);
    CHECK(fault_column("density * / 2") == 11);
    CHECK(fault_column("2 ^ density") == 3);
    CHECK(fault_column("log(density)") == 1);
    CHECK(fault_column("min(density)") == 12);
    CHECK(fault_column("density < 3") == 9);
    CHECK(fault_column("magnetic_behaviour") == 1);
    CHECK(fault_column("liquidus - 20 degC") == 12);
    CHECK(fault_column(std::string(10000, '1')) == 2001);
    CHECK(fault_column(std::string(1500, '(')) > 90);
    CHECK(fault_column("density $ 2") == 9);
    CHECK(fault_column("3 density") == 3);
}

TEST_CASE("many samples at once are each what one would be") {
    const auto f = Formula::parse("max(abs(-density) ^ 2 / 3, 4 - 1) * price + 0", small_catalogue());
    CHECK_FALSE(f); // 4 - 1 has no unit
    const auto g = Formula::parse("sqrt(density * density) / (3 - 1) / min(price, -price) ^ 2", real_catalogue());
    REQUIRE(g);
    const Columns columns = {{1, 2, 9, 0.5}, {4, 5, 0, 7}};
    const std::vector<double> together = g->values(columns, 4);
    for (std::size_t s = 0; s < 4; ++s) {
        const double alone = g->value({columns[0][s], columns[1][s]});
        CHECK((together[s] == alone || (std::isnan(together[s]) && std::isnan(alone))));
    }
}

TEST_CASE("a value without a finite answer is NaN, for the ranking to name") {
    const auto f = Formula::parse("1 / (density - 8000 kg/m3)", real_catalogue());
    REQUIRE(f);
    CHECK(std::isnan(f->value({8000})));
    CHECK(std::isnan(Formula::parse("sqrt(-1)", real_catalogue())->value({})));
}

TEST_CASE("conditions compare numbers with units and words") {
    const Catalogue c = small_catalogue();
    const auto holds = [&](const std::string& text, const std::vector<double>& values, const char* slug) {
        const auto condition = Condition::parse(text, c);
        INFO(text);
        REQUIRE(condition);
        return condition->holds(values, *c.metal(slug));
    };
    CHECK(holds("liquidus < 1100 degC", {1373}, "aa"));
    CHECK_FALSE(holds("liquidus < 1100 degC", {1374}, "aa"));
    CHECK(holds("density >= 8 g/cm3 and liquidus > 900 K", {8000, 901}, "aa"));
    CHECK(holds("not (density > 9 g/cm3)", {8000}, "aa"));
    CHECK(holds("family == copper", {}, "aa"));
    CHECK(holds("kind != alloy or slug = 'ab'", {}, "ab"));
    CHECK(holds("liquidus - solidus < 50 K", {750, 720}, "ab"));
    for (const char* wrong : {"density", "density < 3", "liquidus - solidus < 50 degC", "family < copper", "density < ",
                              "(density < 1 kg/m3", "1 and 2"})
        CHECK_FALSE(Condition::parse(wrong, c));
}
