// The user's own metals, values, prices, goals and lots enter every answer and are named as the user's.
#include "questions/workshop/with_workshop.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/workshop/check_entry.hpp"
#include "questions/rank/rank.hpp"
#include "questions/workshop/keep.hpp"
#include "questions/workshop/own_metal.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;

namespace {

OwnPrice price(const std::string& metal, const std::string& written, const std::string& date) {
    OwnPrice p;
    p.metal = metal;
    p.written = written;
    p.date = date;
    p.per_kg = money_from(written)->per_kg;
    p.currency = money_from(written)->currency;
    return p;
}

Evaluated value(const Catalogue& c, const std::string& metal, const std::string& property) {
    REQUIRE(c.metal(metal));
    const auto e = evaluate(c, *c.metal(metal), property, {});
    REQUIRE(e);
    return *e;
}

Entry entry(const char* kind, std::initializer_list<std::pair<const char*, const char*>> fields) {
    Entry e = new_entry(known_kind(kind));
    for (const auto& [field, text] : fields) text_of(known_kind(kind), e, field) = text;
    return e;
}

} // namespace

TEST_CASE("prices are read with their currency and mass") {
    CHECK(money_from("8.50 EUR/kg")->per_kg == Approx(8.5));
    CHECK(money_from("8.50 EUR/kg")->currency == "EUR");
    CHECK(money_from("440 USc/lb")->per_kg == Approx(4.4 / 0.45359237)); // the pound is exact by definition
    CHECK(money_from("€8/kg")->currency == "EUR");
    CHECK(money_from("8 €/kg")->currency == "EUR");
    CHECK(money_from("$5/kg")->currency == "USD");
    for (const char* bad : {"", "8.50", "8 EUR", "-3 EUR/kg", "8 EUR/m", "EUR/kg", "8 euro/kg"})
        CHECK_FALSE(money_from(bad));
}

TEST_CASE("own prices come first, dated and converted, and are left out without a rate") {
    WorkshopData data;
    data.prices = {price("copper", "10 EUR/kg", "2026-11-01"), price("tin", "30 USD/kg", "2026-10-01")};
    SECTION("with a rate") {
        data.rates = {{"EUR", "2026-01-01", "a bank", 1.0}, {"EUR", "2026-10-30", "a bank", 1.25}};
        const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
        CHECK(with.remarks.empty());
        const Evaluated copper = value(with.catalogue, "copper", "price");
        CHECK(copper.value_si == Approx(12.5));
        CHECK(copper.how_known == HowKnown::own);
        CHECK(copper.sources.front().key == "own-prices");
        CHECK(copper.trail.front().find("2026-11-01") != std::string::npos);
        CHECK(with.catalogue.reference("own-prices") != nullptr);
    }
    SECTION("without one") {
        const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
        REQUIRE(with.remarks.size() == 1);
        CHECK(with.remarks[0].find("no rate of exchange for EUR") != std::string::npos);
        CHECK(value(with.catalogue, "tin", "price").value_si == Approx(30));
    }
    SECTION("what was paid for a lot without one is told, once for each currency") {
        StockLot lot;
        lot.lot = "stock-1";
        lot.metal = "copper";
        lot.mass_kg = 2;
        lot.price = data.prices.front();
        data.prices.clear();
        data.stock = {lot, lot};
        const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
        REQUIRE(with.remarks.size() == 1);
        CHECK(with.remarks[0].find("what was paid for stock-1: no rate of exchange for EUR") != std::string::npos);
    }
}

TEST_CASE("an own metal starts from one of the reference, and its own values replace those") {
    WorkshopData data;
    data.metals = {{"my-copper", "copper", "", "", "from old pipes"}};
    OwnValue v;
    v.metal = "my-copper";
    v.property = "conductivity";
    v.written = "50 MS/m";
    v.uncertainty = "1 %";
    data.values = {v};
    const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
    REQUIRE(with.remarks.empty());
    const Evaluated own = value(with.catalogue, "my-copper", "resistivity");
    CHECK(own.value_si == Approx(1 / 50e6));
    CHECK(own.standard_uncertainty_si == Approx(0.01 / 50e6));
    CHECK(own.how_known == HowKnown::own);
    CHECK(value(with.catalogue, "my-copper", "density").value_si ==
          value(with.catalogue, "copper", "density").value_si);
    CHECK(value(with.catalogue, "copper", "resistivity").how_known == HowKnown::read);
    CHECK(with.catalogue.metal("my-copper")->own);
}

TEST_CASE("a saved goal ranks, and the shelf is ranked with the prices paid") {
    WorkshopData data;
    data.goals = {{"mine", "density * price", "", false, {}}};
    StockLot a{1, "a", "copper", "", "", 1.0, price("copper", "10 USD/kg", "2026-01-01")};
    StockLot b{2, "b", "copper", "", "", 3.0, price("copper", "14 USD/kg", "2026-02-01")};
    StockLot c{3, "c", "tin", "", "", 1.0, {}};
    data.stock = {a, b, c};
    const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
    const Catalogue shelf = with_lot_prices(with.catalogue, data);
    const Evaluated copper = value(shelf, "copper", "price");
    CHECK(copper.value_si == Approx(13));
    CHECK(copper.sources.front().key == "own-stock");
    CHECK(value(shelf, "tin", "price").sources.front().key != "own-stock");
    RankRequest request;
    request.goal.goal = "mine";
    request.from = metals_on_the_shelf(data);
    const auto ranked = rank(shelf, request);
    REQUIRE(ranked);
    CHECK(ranked->ranked.size() == 2);
}

TEST_CASE("what can't be kept is refused by field") {
    const Catalogue c = with_workshop(testing::real_catalogue(), {}).catalogue;
    const auto fault = [&](const char* kind, std::initializer_list<std::pair<const char*, const char*>> fields) {
        const auto fit = sound(c, known_kind(kind), entry(kind, fields));
        return fit ? std::string() : fit.problem().text;
    };
    using Catch::Matchers::Contains;
    CHECK(fault("stock", {{"metal", "Cu"}, {"mass", "2kg"}}).empty());
    CHECK_THAT(fault("stock", {{"metal", "coper"}, {"mass", "2kg"}}), Contains("did you mean copper"));
    CHECK_THAT(fault("stock", {{"metal", "copper"}}), Contains("mass"));
    CHECK_THAT(fault("stock", {{"metal", "copper"}, {"mass", "2 m"}}), Contains("2 kg"));
    CHECK_THAT(fault("stock", {{"metal", "copper"}, {"mass", "2kg"}, {"bought", "2025-02-29"}}), Contains("date"));
    CHECK_THAT(fault("stock", {{"metal", "copper"}, {"mass", "2kg"}, {"note", "\xff"}}), Contains("UTF-8"));
    CHECK_THAT(fault("price", {{"metal", "copper"}, {"price", "8"}, {"date", "2026-01-01"}}), Contains("EUR/kg"));
    CHECK_THAT(fault("goal", {{"name", "x"}, {"formula", "densitty"}}), Contains("densitty"));
    CHECK_THAT(fault("trial", {{"type", "drop"}, {"tube", "12mm:16mm:1m"}}), Contains("magnet"));
    CHECK_THAT(fault("trial", {{"type", "weighing"}, {"mass", "2kg"}, {"part", "blob"}}), Contains("blob"));
    CHECK_THAT(fault("value", {{"metal", "copper"}, {"property", "density"}, {"value", "9"}}),
               Contains("own-metal add"));
    CHECK_THAT(fault("metal", {{"name", "copper"}}), Contains("choose another"));
}

TEST_CASE("own metals like one another come in any order, a ring and a stranger are left out and told") {
    WorkshopData data;
    data.metals = {{"third", "second", "", "", ""}, {"second", "first", "", "", ""}, {"first", "copper", "", "", ""},
                   {"a", "b", "", "", ""},          {"b", "a", "", "", ""},          {"lost", "nowhere", "", "", ""}};
    const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
    CHECK(with.remarks.size() == 3);
    REQUIRE(with.catalogue.metal("third"));
    CHECK(value(with.catalogue, "third", "density").value_si == value(with.catalogue, "copper", "density").value_si);
    CHECK(std::is_sorted(with.catalogue.metals.begin(), with.catalogue.metals.end(),
                         [](const Metal& a, const Metal& b) { return a.slug < b.slug; }));
}

TEST_CASE("20,000 own metals, one like the next, with a value each, are taken in without a look through all for each") {
    WorkshopData data;
    for (int i = 0; i < 20000; ++i) {
        const std::string name = "own-" + std::to_string(i);
        data.metals.push_back({name, i % 2 ? "copper" : "own-" + std::to_string(i + 1), "", "", ""});
        OwnValue v;
        v.metal = name;
        v.property = "density";
        v.written = "8000 kg/m3";
        if (i % 10 == 0) data.values.push_back(v);
    }
    const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
    CHECK(with.remarks.empty());
    CHECK(with.catalogue.metals.size() == testing::real_catalogue().metals.size() + 20000);
    CHECK(value(with.catalogue, "own-10", "density").value_si == 8000);
    CHECK(value(with.catalogue, "own-11", "density").value_si != 8000);
}

TEST_CASE("a damaged kind is left out and told, the rest is used") {
    struct Damaged final : Workshop {
        std::string path() const override { return "w"; }
        bool exists() const override { return true; }
        Result<std::vector<Entry>> entries(const Kind& kind) override {
            if (kind.name == "pin") return Problem{Problem::Kind::file, "'w' is damaged (pin 1)", 0};
            if (kind.name == "goal")
                return std::vector<Entry>{entry("goal", {{"name", "mine"}, {"formula", "density"}, {"best", "low"}})};
            return std::vector<Entry>{};
        }
        Result<std::vector<Entry>> newest_prices() override { return std::vector<Entry>{}; }
        Result<Entry> entry(const Kind&, const std::string&) override { return Problem{}; }
        Result<Entry> numbered(const Kind&, std::int64_t) override { return Problem{}; }
        Result<std::unique_ptr<Batch>> begin(const std::string&) override { return Problem{}; }
        Result<std::vector<Change>> changes() override { return Problem{}; }
        Result<Change> undo() override { return Problem{}; }
        Result<Change> redo() override { return Problem{}; }
        Result<bool> back_up(const std::string&) override { return Problem{}; }
        Result<std::int64_t> serial() override { return std::int64_t{0}; }
        std::string stamp() const override { return ""; }
        static Entry entry(const char* kind, std::initializer_list<std::pair<const char*, const char*>> fields) {
            Entry e = new_entry(known_kind(kind));
            for (const auto& [field, text] : fields) text_of(known_kind(kind), e, field) = text;
            return e;
        }
    } file;
    const WorkshopData data = read_workshop(file);
    REQUIRE(data.fault);
    CHECK(data.left_out == std::vector<std::string>{"pin"});
    const WithWorkshop with = with_workshop(testing::real_catalogue(), data);
    CHECK(with.catalogue.goal("mine"));
    REQUIRE(with.remarks.size() == 1);
    CHECK(with.remarks[0] == "'w' is damaged (pin 1); this answer does without your own pin");
}

TEST_CASE("signs that steer a terminal or turn a line are not kept") {
    const Kind& kind = known_kind("stock");
    for (const char* bad : {"a\u009Bb", "a\u0085", "\u202Eabc", "x\u2066y", "\u200F", "\u061C", "\x1B[2J"}) {
        const auto fit =
            checked(kind, entry("stock", {{"lot", "a"}, {"metal", "tin"}, {"mass", "1 kg"}, {"note", bad}}),
                    testing::real_catalogue());
        REQUIRE_FALSE(fit);
        CHECK(fit.problem().text.find("remove it") != std::string::npos);
    }
    for (const char* good : {"é \u00A0 µ", "\u2013 \u2026 \u20AC", "\u4E2D"})
        CHECK(checked(kind, entry("stock", {{"lot", "a"}, {"metal", "tin"}, {"mass", "1 kg"}, {"note", good}}),
                      testing::real_catalogue()));
}
