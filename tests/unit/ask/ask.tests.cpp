// Sixty questions as people put them are read as what they mean.
#include "questions/ask/ask.hpp"

#include "answers/ask/ask_report.hpp"
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
