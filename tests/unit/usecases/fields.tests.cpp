#include "answers/askers.hpp"
#include "questions/drop/drop_question.hpp"
#include "questions/metals/conditions.hpp"
#include "questions/mix/mix_question.hpp"
#include "questions/pour/pour_request.hpp"
#include "questions/rank/rank_question.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <stdexcept>

using namespace pourbook;

namespace {

std::vector<const QuestionTable*> all_questions() {
    std::vector<const QuestionTable*> all = {&pour_question(), &ranged_question()};
    for (const Asker& asker : askers()) all.push_back(asker.question);
    return all;
}

} // namespace

TEST_CASE("what is no field of a question can't be stated of it") {
    Stated stated(pour_question());
    CHECK_THROWS_AS(stated.set("quench", "water"), std::logic_error);
    CHECK_THROWS_AS(stated.text("quench"), std::logic_error);
}

TEST_CASE("statements are equal where they say the same, and an empty text says nothing") {
    Stated a(pour_question()), b(pour_question());
    CHECK(a == b);
    a.set("stock", "1mm");
    CHECK_FALSE(a == b);
    b.set("stock", "1mm").set("clear", "");
    CHECK(a == b);
    CHECK_FALSE(a.states("clear"));
    CHECK(a.set("stock", "") == Stated(pour_question()));
}

TEST_CASE("fields are read in their unit, and what can't be read names the option and an example") {
    const Catalogue& c = testing::small_catalogue();
    Stated stated(pour_question());
    stated.set("stock", "1mm").set("superheat", "144degF").set("melt-loss", "3%").set("count", "12");
    const Result<PourRequest> request = pour_question().read(stated, c);
    REQUIRE(request);
    CHECK(request->stock_m == Approx(1e-3));
    CHECK(*request->superheat_K == Approx(80)); // a difference
    CHECK(*request->melt_loss == Approx(0.03));
    CHECK(request->count == 12);
    for (const auto& [field, text] : {std::pair{"stock", "3 apples"},
                                      {"superheat", "hot"},
                                      {"count", "0"},
                                      {"count", "1.5"},
                                      {"process", "knitting"},
                                      {"start", "3kg"}}) {
        CAPTURE(field, text);
        const Result<PourRequest> bad = pour_question().read(Stated(pour_question()).set(field, text), c);
        REQUIRE_FALSE(bad);
        CHECK(bad.problem().kind == Problem::Kind::unreadable);
        CHECK(bad.problem().text.find(std::string("--") + field) == 0);
        CHECK(bad.problem().text.find(text) != std::string::npos);
    }
}

TEST_CASE("every field has a name of its own, a meaning, and an example that it reads") {
    const Catalogue& c = testing::real_catalogue();
    for (const QuestionTable* question : all_questions()) {
        std::set<std::string> names;
        for (const QuestionField& field : question->fields) {
            CAPTURE(question->name, field.name, field.example);
            CHECK(names.insert(field.name).second);
            CHECK_FALSE(help_of(field).empty());
            const bool several = field.example.find(" or ") != std::string::npos || field.commas || field.exactly;
            std::string example = field.example;
            std::erase(example, '"'); // of a shell
            if (!several && !example.empty()) CHECK_FALSE(field.fault(example, c));
            if (field.type == AskType::choice)
                for (const std::string& choice : field.choices) CHECK_FALSE(field.fault(choice, c));
        }
    }
}

TEST_CASE("two fields that exclude each other are refused by the reading too") {
    Stated stated(rank_question());
    stated.set("goal", "strongest-brake").set("formula", "1 / density");
    CHECK_FALSE(rank_question().read(stated, testing::real_catalogue()));
}

TEST_CASE("a question of one temperature takes the lower end of a range stated for all") {
    const Catalogue& c = testing::small_catalogue();
    Stated conditions(ranged_question());
    conditions.set("at", "77K:300K").set("price-form", "retail");
    const Stated one = under(Stated(drop_question()), conditions, c),
                 range = under(Stated(rank_question()), conditions, c);
    CHECK(one.text("at") == "77K");
    CHECK(range.text("at") == "77K:300K");
    CHECK(drop_question().read(one, c)->conditions.price_form == "retail");
    CHECK(*rank_question().read(range, c)->to_K == 300);
    CHECK(rank_question().read(range, c)->conditions.temperature_K == 77);
}

TEST_CASE("a second set-up is the first with what is said to be different") {
    const Catalogue& c = testing::small_catalogue();
    Stated stated(drop_question());
    stated.set("magnet", "sphere:12mm").set("surface-field", "0.4T@1mm").set("magnet-mass", "7g");
    stated.set("tube", "13mm:15mm:1m").set("metal", "copper");
    CHECK_FALSE(states_two(stated));
    stated.set("against-grade", "N52").set("against-magnet", "sphere:10mm").set("against-resistivity", "50%IACS");
    REQUIRE(states_two(stated));
    const Result<AgainstRequest> two = against_request_from(stated, c);
    REQUIRE(two);
    CHECK(two->first.setup.surface_field == "0.4T@1mm");
    CHECK(two->second.setup.surface_field.empty());
    CHECK(two->second.setup.grade == "N52");
    CHECK(two->second.setup.magnet_mass.empty());
    CHECK(two->second.setup.tube == "13mm:15mm:1m");
    CHECK(two->second.metal.empty());
    CHECK(two->second.resistivity == "50%IACS");
}

TEST_CASE("a copy of the catalogue looks up in itself, and outlives the first") {
    auto first = std::make_unique<Catalogue>(testing::small_catalogue());
    const Catalogue copy = *first;
    first.reset();
    for (const PriceSet& set : copy.price_sets)
        for (const Price& price : set.prices) {
            const Price* found = copy.price(price.metal);
            REQUIRE(found);
            bool inside = false;
            for (const PriceSet& own : copy.price_sets)
                inside = inside || (found >= own.prices.data() && found < own.prices.data() + own.prices.size());
            CHECK(inside);
        }
}

TEST_CASE("a price past its period is said in the trail, of a metal and of an alloy by its elements") {
    Catalogue c = testing::real_catalogue();
    const auto says_stale = [&](const char* slug) {
        const Result<Evaluated> price = evaluate(c, *c.metal(slug), "price", {});
        REQUIRE(price);
        const bool said = std::any_of(price->trail.begin(), price->trail.end(),
                                      [](const std::string& line) { return line.find("stale") != std::string::npos; });
        CHECK(said == price->stale);
        return said;
    };
    c.today = "2020-01"; // before any period ends
    CHECK_FALSE(says_stale("copper"));
    CHECK_FALSE(says_stale("brass-cartridge"));
    c.today = "2100-01";
    CHECK(says_stale("copper"));
    CHECK(says_stale("brass-cartridge"));
    c.today.clear(); // not judged
    CHECK_FALSE(says_stale("copper"));
}
