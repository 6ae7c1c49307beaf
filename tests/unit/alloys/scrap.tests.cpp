// Scrap as a distribution, losses by element, and what is not to be added.
#include "answers/mix/mix_report.hpp"
#include "questions/mix/mix.hpp"
#include "questions/mix/mix_scrap.hpp"
#include "questions/mix/mix_words.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

MixResult mixed(const std::string& words, double melt_loss = 0) {
    const Catalogue& c = testing::real_catalogue();
    const auto stocks = stocks_from(c, words);
    INFO((stocks ? "" : stocks.problem().text));
    REQUIRE(stocks);
    MixRequest request;
    request.stocks = *stocks;
    request.melt_loss = melt_loss;
    const auto r = mix(c, request);
    REQUIRE(r);
    return *r;
}

} // namespace

TEST_CASE("scrap brass has an interval of contents, wider estimates and lead as a hazard") {
    const MixResult scrap = mixed("2kg scrap:brass"), known = mixed("2kg brass-cartridge");
    REQUIRE(scrap.scrap_contents.size() >= 4);
    for (const ScrapContent& s : scrap.scrap_contents) {
        INFO(s.element);
        CHECK(s.low_wt < s.high_wt);
        CHECK(s.low_wt < scrap.composition.wt(s.element));
        CHECK(s.high_wt > scrap.composition.wt(s.element));
    }
    const auto width = [](const MixResult& r) { return r.density->high90_si - r.density->low90_si; };
    CHECK(width(scrap) > width(known));
    REQUIRE(scrap.hazards.size() == 1);
    CHECK(scrap.hazards.front().starts_with("Pb up to"));
    CHECK(known.hazards.empty());
    CHECK(mixed("1kg brass scrap + 1kg copper").scrap_contents.size() == scrap.scrap_contents.size());
}

TEST_CASE("an unknown scrap names those there are") {
    const auto stocks = stocks_from(testing::real_catalogue(), "2kg scrap");
    REQUIRE(!stocks);
    CHECK(stocks.problem().text.find("scrap:brass") != std::string::npos);
}

TEST_CASE("a loss that is all zinc leaves less of it and melts higher") {
    // 5 % of a 70/30 brass: (30 - 5) / 95 = 26.3 % zinc.
    const MixResult r = mixed("1kg brass-cartridge", 0.05);
    REQUIRE(r.losses.size() == 1);
    CHECK(r.losses.front().wt_if_all == Approx(100 * 25.0 / 95).margin(0.02));
    CHECK(r.losses.front().liquidus_if_all_K > r.melting->liquidus.value_si + 5);
    CHECK(r.losses.front().low_kg == Approx(0.01 * 0.30).epsilon(0.01)); // 1 to 5 % of its zinc
}

TEST_CASE("nobody is told to add a hundred times the melt") {
    const Catalogue& c = testing::real_catalogue();
    MixRequest request;
    request.stocks = *stocks_from(c, "1.4kg sterling-silver");
    request.target = MixTarget{{"Ag", 99.9, 0}, "Ag", *metal_composition(c, "Ag")};
    const auto r = mix(c, request);
    REQUIRE(r);
    const std::string said = addition_sentence(*r, UnitSystem::shown);
    CHECK(said.find("refined") != std::string::npos);
    CHECK(said.find(" kg") == std::string::npos);
}
