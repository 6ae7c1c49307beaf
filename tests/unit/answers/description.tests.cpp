// Text for the box below a video.
#include "answers/rank/rank_columns.hpp"
#include "answers/writers/writers.hpp"
#include "questions/rank/rank.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using Catch::Matchers::Contains;

namespace {

std::string described(std::size_t top) {
    const Catalogue& c = testing::real_catalogue();
    RankRequest request;
    request.goal.goal = "strongest-brake";
    request.samples = 100;
    request.top = top;
    const Result<RankResult> r = rank(c, request);
    REQUIRE(r);
    return description_text(document_of(*r, {c, UnitSystem::shown, "2026-11-30"}));
}

} // namespace

TEST_CASE("a description has a line a metal with interval and numbered sources") {
    const std::string text = described(3);
    CHECK_THAT(text, Contains("\n1. ") && Contains("\n3. ") && !Contains("\n4. "));
    CHECK_THAT(text, Contains(" to ") && Contains("MS/m") && Contains("[1]") && Contains("\n[1] "));
    CHECK_THAT(text, !Contains("|") && !Contains("\\"));
    CHECK(std::count(text.begin(), text.end(), '[') >= 4); // named in a row and listed
}

TEST_CASE("a long description is cut by rows, counted, and below what sites take") {
    const std::string text = described(0);
    CHECK(text.size() <= 4900);
    CHECK_THAT(text, Contains("\nand ") && Contains(" more\n") && Contains("Sources"));
}
