// Sixty questions as people put them are read as what they mean.
#include "questions/ask/ask.hpp"

#include "answers/ask/ask_report.hpp"
#include "core/quantity/format.hpp"
#include "db/store/reference_file.hpp"
#include "tests/support/asked_questions.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using Catch::Matchers::Contains;
using testing::asked_questions;

namespace {

const Catalogue& reference() {
    static const Catalogue catalogue = read_reference(POURBOOK_REFERENCE);
    return catalogue;
}

} // namespace

TEST_CASE("sixty questions are read as the command that answers them") {
    CHECK(std::size(asked_questions) >= 60);
    for (const auto& [words, command] : asked_questions) {
        INFO(words);
        CHECK(command_line(read_question(reference(), words)) == std::string("pourbook ") + command);
    }
}

TEST_CASE("an answer in words: what was understood, with units, and the sentence of the question itself") {
    const Result<AskResult> value = ask(reference(), {"resistivity of copper in liquid nitrogen", {}});
    REQUIRE(value);
    CHECK_THAT(text_of(*value, UnitSystem::shown),
               Contains("77.355 K") && Contains("pourbook value copper resistivity"));
    const Result<AskResult> versus_asked = ask(reference(), {"is fine silver a better brake than copper", {}});
    REQUIRE(versus_asked);
    REQUIRE(versus_asked->versus);
    CHECK_THAT(text_of(*versus_asked, UnitSystem::shown), Contains(versus_asked->versus->sentence.substr(0, 40)));
    const Result<AskResult> brass = ask(reference(), {"density of brass", {}});
    REQUIRE(brass);
    CHECK_THAT(text_of(*brass, UnitSystem::shown),
               Contains("'brass' is taken as brass-cartridge") && Contains("Caution"));
    const Result<AskResult> unsized = ask(reference(), {"how long will a magnet fall in copper", {}});
    REQUIRE(unsized);
    CHECK_THAT(unsized->fault, Contains("the magnet's size") && Contains("grade") && Contains("bore"));
    const Result<AskResult> unknown = ask(reference(), {"the weather tomorrow", {}});
    REQUIRE_FALSE(unknown);
    CHECK(unknown.problem().kind == Problem::Kind::unreadable);
}

TEST_CASE("a number that nobody can place is asked back and what is not used is said") {
    const Result<AskResult> cold = ask(reference(), {"copper at -196", {}});
    REQUIRE(cold);
    CHECK_THAT(cold->fault, Contains("what '-196' is") && Contains("-196degC"));
    CHECK(cold->values.empty());
    const Result<AskResult> mass = ask(reference(), {"density of 3 kg of copper", {}});
    REQUIRE(mass);
    CHECK_THAT(text_of(*mass, UnitSystem::shown), Contains("not used: 3 kg"));
    const Result<AskResult> cost = ask(reference(), {"what does 3 kg of copper cost", {}});
    REQUIRE(cost);
    REQUIRE(cost->values.size() == 1);
    CHECK_THAT(text_of(*cost, UnitSystem::shown),
               Contains("3 kg of it: " + significant(3 * cost->values[0].value.value_si, 3) + " USD"));
}

TEST_CASE("the least of a property is the other end of its order") {
    const Result<AskResult> least = ask(reference(), {"which metal has the lowest resistivity", {}});
    REQUIRE(least);
    REQUIRE(least->rank);
    CHECK(least->rank->ranked.front().metal->slug == "silver"); // the best conductor there is: common knowledge
    const Result<AskResult> light = ask(reference(), {"lightest metal i can cast", {}});
    REQUIRE(light);
    REQUIRE(light->rank);
    CHECK(light->rank->ranked.front().metal->family == "aluminium");
}
