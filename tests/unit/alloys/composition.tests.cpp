#include "core/alloys/composition.hpp"

#include "questions/mix/mix_words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Problem refusal(const std::string& words) {
    const auto c = composition_from(real_catalogue(), words);
    INFO(words);
    REQUIRE_FALSE(c);
    return c.problem();
}

Problem refused_stocks(const std::string& words) {
    const auto s = stocks_from(real_catalogue(), words);
    INFO(words);
    REQUIRE_FALSE(s);
    return s.problem();
}

} // namespace

TEST_CASE("compositions are read in several ways of writing") {
    for (const char* words :
         {"Ag 92.5 Cu 7.5", "Ag92.5Cu7.5", "Ag 92.5 %, Cu 7.5 %", "Cu 7.5, Ag balance", "Ag bal Cu 7.5"}) {
        const auto c = composition_from(real_catalogue(), words);
        INFO(words);
        REQUIRE(c);
        CHECK(c->wt("Ag") == Approx(92.5));
        CHECK(c->wt("Cu") == Approx(7.5));
        // By hand: (7.5/63.546)/(7.5/63.546 + 92.5/107.8682) = 12.10 at%.
        CHECK(c->at("Cu") == Approx(12.10).margin(0.005));
        CHECK(c->host() == "Ag");
    }
    CHECK(composition_from(real_catalogue(), "Cu")->wt("Cu") == Approx(100));
    CHECK(composition_from(real_catalogue(), "Ag 87.9 Cu 12.1", true)->wt("Cu") == Approx(7.5).margin(0.01));
    CHECK(composition_from(real_catalogue(), "Cu 59.95 Zn 40")->wt("Zn") == Approx(40.02).margin(0.001));
}

TEST_CASE("compositions that make no sense are refused with a reason") {
    CHECK(refusal("Ag 92.5 Cu 17.5").text.find("sums to 110") != std::string::npos);
    CHECK(refusal("Ag 92.5").text.find("sums to 92.5") != std::string::npos);
    CHECK(refusal("Ag 92.5 Xx 7.5").kind == Problem::Kind::unknown);
    CHECK(refusal("Ag 107.5 Cu -7.5").text.find("negative") != std::string::npos);
    CHECK(refusal("Ag balance Cu 120").text.find("negative") != std::string::npos);
    CHECK(refusal("").kind == Problem::Kind::unreadable);
    CHECK(refusal("92.5 Ag").column == 1);
    CHECK(refusal("Ag nan Cu 7.5").kind == Problem::Kind::unreadable);
    CHECK(refusal("Ag bal Cu bal").text.find("one balance") != std::string::npos);
}

TEST_CASE("stocks are read with their masses") {
    const auto s = stocks_from(real_catalogue(), "1.2kg sterling-silver + 300 g silver+1ozt (Ag 80 Cu 20) + 2kg Cu");
    REQUIRE(s);
    REQUIRE(s->size() == 4);
    CHECK(s->at(0).mass_kg == Approx(1.2));
    CHECK(s->at(1).mass_kg == Approx(0.3));
    CHECK(s->at(2).mass_kg == Approx(0.0311034768));
    CHECK(s->at(2).composition.wt("Cu") == Approx(20));
    CHECK(s->at(3).mass_kg == Approx(2));
    CHECK(s->at(3).composition.wt("Cu") == Approx(100));
    CHECK(stocks_from(real_catalogue(), "1 lb sterling silver")->front().mass_kg == Approx(0.45359237));
}

TEST_CASE("stocks that make no sense are refused with a reason") {
    CHECK(refused_stocks("-1kg silver").text.find("positive mass") != std::string::npos);
    CHECK(refused_stocks("0kg silver").text.find("positive mass") != std::string::npos);
    CHECK(refused_stocks("silver").text.find("a mass and a metal") != std::string::npos);
    CHECK(refused_stocks("1kg").kind == Problem::Kind::unreadable);
    CHECK(refused_stocks("1kg unobtainium").kind == Problem::Kind::unknown);
    CHECK(refused_stocks("1kg silver + ").text.find("a stock is missing") != std::string::npos);
    CHECK(refused_stocks("1kg silver ++ 1kg copper").kind == Problem::Kind::unreadable);
    CHECK(refused_stocks("1kg (Ag 80 Cu 30)").text.find("sums to 110") != std::string::npos);
    CHECK(refused_stocks("").kind == Problem::Kind::unreadable);
}

TEST_CASE("a hundred stocks") {
    std::string words;
    for (int i = 1; i <= 100; ++i)
        words += (i == 1 ? "" : " + ") + std::to_string(i) + "g " + (i % 2 ? "copper" : "brass-80");
    const auto s = stocks_from(real_catalogue(), words);
    REQUIRE(s);
    const auto b = blend(real_catalogue().alloys, *s);
    REQUIRE(b);
    CHECK(b->nanograms == std::int64_t{5050} * 1000000000);
    // 2550 g of brass with 20 % zinc in 5050 g
    CHECK(b->composition.wt("Zn") == Approx(100 * 2550 * 0.2 / 5050));
}
