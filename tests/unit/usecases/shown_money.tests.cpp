// Money in the workshop's currency: amounts typed and shown go by one cited rate, and none is converted without it.
// The rates are invented; the arithmetic is done by hand beside each check.
#include "questions/say/shown_money.hpp"

#include "answers/parts/text.hpp"
#include "answers/writers/documents.hpp"
#include "answers/writers/writers.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/drop_figures.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/metals/value.hpp"
#include "questions/mix/mix_sheet.hpp"
#include "questions/rank/rank.hpp"
#include "questions/rank/tube_columns.hpp"
#include "questions/say/shown_merit.hpp"
#include "questions/workshop/with_workshop.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace pourbook;
using namespace pourbook::testing;
using Catch::Matchers::Contains;

namespace {

constexpr const char* rate_words = "1.25 USD/EUR, central bank, 2026-11-02";

/// The real reference in a workshop that works in this currency: EUR at 1.25 USD (before: 1.50), JPY at 0.008 USD.
WithWorkshop working_in(const std::string& currency) {
    WorkshopData data;
    data.profile.currency = currency;
    data.rates = {{"EUR", "2026-11-02", "central bank", 1.25},
                  {"EUR", "2026-01-02", "central bank", 1.50},
                  {"JPY", "2026-11-02", "central bank", 0.008}};
    return with_workshop(real_catalogue(), data);
}

const Catalogue& euros() {
    static const Catalogue c = working_in("EUR").catalogue;
    return c;
}

SetupWords tube() {
    SetupWords s;
    s.magnet = "cylinder:12mmx10mm";
    s.grade = "N42";
    s.tube = "13mm:17mm:0.5m";
    return s;
}

RankRequest longest_fall(const std::string& budget) {
    RankRequest r;
    r.goal.goal = "longest-fall";
    r.goal.holding = Holding::budget;
    r.goal.fall = {tube(), "", budget};
    r.from = {"copper", "aluminium-1350"};
    r.samples = 50;
    return r;
}

} // namespace

TEST_CASE("an amount typed in the currency shown is converted by the newest rate, and comes back the same") {
    CHECK(*usd_from(euros(), "20 EUR", "--budget") == Approx(25).epsilon(1e-14)); // 20 x 1.25
    CHECK(*usd_from(euros(), "20€", "--budget") == Approx(25).epsilon(1e-14));
    CHECK(*usd_from(euros(), "20 USD", "--budget") == 20);
    CHECK(shown_money(euros(), 25, 4, UnitSystem::shown) == "20.00 EUR");
    CHECK(shown_money(euros(), 25, 4, UnitSystem::workshop) == "20.00 EUR");
    CHECK(shown_money(euros(), 25, 4, UnitSystem::base) == "25.00 USD"); // programs read dollars
    for (const double amount : {0.01, 3.33, 20.0, 1e5}) {
        const double usd = *usd_from(euros(), trimmed(amount, 12) + "EUR", "an amount");
        CHECK(shown_currency(euros()).shown(usd) == Approx(amount).epsilon(1e-14));
    }
    CHECK(shown_rate(euros()) == rate_words);
    CHECK(at_rate(euros()) == std::string(" (at ") + rate_words + ")");
    CHECK(round_amount(euros(), 25, " ") == "20 EUR");
    CHECK(shown_rate(*euros().property("density")).empty());
}

TEST_CASE("money without a rate is refused, never converted") {
    const Problem none = usd_from(real_catalogue(), "20 EUR", "--budget").problem();
    CHECK(none.kind == Problem::Kind::no_value);
    CHECK_THAT(none.text, Contains("no rate of exchange for EUR") && Contains("pourbook rate add EUR") &&
                              Contains("--currency EUR"));
    CHECK(usd_from(euros(), "20 GBP", "--budget").problem().kind == Problem::Kind::no_value);
    const Problem bare = usd_from(euros(), "20", "--budget").problem(); // euros or dollars?
    CHECK(bare.kind == Problem::Kind::unreadable);
    CHECK_THAT(bare.text, Contains("20EUR or 20USD"));
    CHECK(usd_from(real_catalogue(), "20", "--budget").problem().kind ==
          Problem::Kind::unreadable); // bare, as everywhere
    for (const char* bad : {"", "EUR", "20 EUR/kg", "20 furlongs", "20 euro", "1e999 EUR"})
        CHECK(usd_from(euros(), bad, "--budget").problem().kind == Problem::Kind::unreadable);

    const WithWorkshop pounds = working_in("GBP");
    REQUIRE(pounds.remarks.size() == 1);
    CHECK_THAT(pounds.remarks.front(), Contains("prices are shown in USD, not GBP: no rate of exchange for GBP"));
    CHECK(pounds.remarks.front().find("left out") == std::string::npos);
    CHECK_THAT(newest_rate("GBP", {}).problem().text, Contains("pourbook rate add GBP"));
}

TEST_CASE("a budget in euros buys the tube that its worth in dollars buys") {
    const RankResult r = *rank(euros(), longest_fall("20EUR")), same = *rank(euros(), longest_fall("25USD"));
    REQUIRE(r.ranked.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(r.ranked[i].place.median == same.ranked[i].place.median);
        CHECK(r.ranked[i].tube->cost_usd == Approx(25));
        CHECK(tube_columns(euros(), UnitSystem::shown)[2].number(*r.ranked[i].tube) == Approx(20));
    }
    const std::string told = answer_text(document_of(r, {euros(), UnitSystem::shown, ""}));
    CHECK_THAT(told, Contains("what 20.0 EUR buy") && Contains(rate_words) && !Contains("USD buy"));
    CHECK(rank(real_catalogue(), longest_fall("20EUR")).problem().kind == Problem::Kind::no_value);
    CHECK(rank(euros(), longest_fall("20")).problem().kind == Problem::Kind::unreadable);
    CHECK_THAT(rank(euros(), longest_fall("")).problem().text, Contains("--budget 20EUR")); // 20 USD, to one figure
}

TEST_CASE("the columns about the tube are in the units and the currency chosen") {
    const RankedTube t{0.0254, 0.45359237, 25}; // an inch, a pound of 16 ounces
    const auto shown = tube_columns(euros(), UnitSystem::shown), shop = tube_columns(euros(), UnitSystem::workshop);
    CHECK(shown[0].head == "wall, mm");
    CHECK(shown[0].number(t) == Approx(25.4));
    CHECK(shown[1].head == "tube, g");
    CHECK(shown[1].number(t) == Approx(453.59237));
    CHECK(shop[0].head == "wall, in");
    CHECK(shop[0].number(t) == Approx(1));
    CHECK(shop[1].head == "tube, oz");
    CHECK(shop[1].number(t) == Approx(16));
    CHECK(shop[2].head == "EUR");
    CHECK(shop[2].number(t) == Approx(20));
    CHECK(tube_columns(real_catalogue(), UnitSystem::shown)[2].head == "USD");
}

TEST_CASE("a merit for the money is told for the euro: a dearer unit of money buys more") {
    const ShownMerit per_money(euros(), "conductivity / (density * price)", "kg s USD^-1", UnitSystem::shown);
    CHECK(per_money.unit() == "kg s EUR^-1");
    CHECK(per_money.number(8) == Approx(10)); // 8 for a dollar, so 8 x 1.25 for a euro
    const ShownMerit cost(euros(), "density * price", "m^-3 USD", UnitSystem::shown);
    CHECK(cost.unit() == "m^-3 EUR");
    CHECK(cost.number(10) == Approx(8));
    CHECK(ShownMerit(euros(), "density * price", "m^-3 USD", UnitSystem::base).unit() == "m^-3 USD");
    CHECK(ShownMerit(euros(), "price", "kg^-1 USD", UnitSystem::shown).unit() == "EUR/kg");
    CHECK(ShownMerit(euros(), "price", "kg^-1 USD", UnitSystem::shown).number(10) == Approx(8));
    CHECK(ShownMerit(euros(), "density / density", "1", UnitSystem::shown).unit().empty());
}

TEST_CASE("a sweep over money begins, reads and ends in the currency shown") {
    CHECK(usual_range(real_catalogue(), SweepOver::budget) == "1USD:50USD");
    CHECK(usual_range(euros(), SweepOver::budget) == "0.8EUR:40EUR");  // 1 / 1.25, 50 / 1.25
    CHECK(round_amount(working_in("JPY").catalogue, 20) == "3000JPY"); // 20 / 0.008 = 2500, to one figure
    const SweepRequest asked = *with_range(euros(), {}, "budget", "4EUR:40EUR");
    CHECK(asked.from_si == Approx(5));
    CHECK(asked.to_si == Approx(50));
    for (const SweepOver over : {SweepOver::wall, SweepOver::bore, SweepOver::temperature, SweepOver::budget})
        CHECK(with_range(euros(), {}, name_of(over), usual_range(euros(), over)));
    CHECK(with_range(real_catalogue(), {}, "budget", "4EUR:40EUR").problem().kind == Problem::Kind::no_value);
    CHECK(with_range(euros(), {}, "budget", "4:40").problem().kind == Problem::Kind::unreadable);
}

TEST_CASE("the drop's tube, a price and what was paid for a mix are told in the currency shown") {
    DropRequest request;
    request.setup = tube();
    request.metal = "copper";
    request.samples = 20;
    const DropResult r = *drop(euros(), request);
    const DropFigure cost = drop_figures(euros(), r, UnitSystem::shown).back();
    CHECK(cost.detail == "metal " + significant(r.cost_usd / 1.25, 3) + " EUR");
    CHECK_THAT(cost.meaning, Contains(rate_words));
    CHECK_THAT(drop_figures(real_catalogue(), r, UnitSystem::shown).back().detail, Contains("USD"));

    const std::string price =
        answer_text(document_of(*value(euros(), {"copper", "price", {}}), {euros(), UnitSystem::shown, ""}));
    CHECK_THAT(price, Contains("EUR/kg") && Contains(std::string("shown at ") + rate_words));
    CHECK_THAT(answer_text(document_of(*value(euros(), {"copper", "density", {}}), {euros(), UnitSystem::shown, ""})),
               !Contains(rate_words));

    MixSheetWords mix;
    mix.stocks = {{"1 kg", "copper", "8 EUR"}, {"1 kg", "tin", "10 USD"}};
    CHECK(mix_sheet(euros(), mix).paid_usd == Approx(20));
    const MixSheet without = mix_sheet(real_catalogue(), mix);
    CHECK(std::isnan(without.paid_usd)); // not the 10 USD alone
    CHECK_THAT(without.paid_fault, Contains("no rate of exchange for EUR"));
}
