// One document, many renderings: what one of them says, all say.
#include "answers/rank/rank_columns.hpp"
#include "answers/writers/writers.hpp"
#include "questions/say/share.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using namespace pourbook::testing;
using Catch::Matchers::Contains;

namespace {

/// aa's price was good until 2020, bb's still is.
Catalogue with_a_stale_price() {
    Catalogue c = small_catalogue();
    c.price_sets.front().prices[0].fresh_until = "2020-12";
    c.price_sets.front().prices[1].fresh_until = "2999-12";
    c.today = "2026-11";
    c.index();
    return c;
}

RankResult ranked_by_cost(const Catalogue& c, std::vector<std::string> from) {
    RankRequest request;
    request.goal.formula = "density * price";
    request.goal.best_high = false;
    request.from = std::move(from);
    request.samples = 100;
    const Result<RankResult> r = rank(c, request);
    REQUIRE(r);
    return *r;
}

std::vector<std::string> renderings(const Document& d) {
    return {answer_text(d),       answer_json(d),        csv_of(d),
            json_of(d),           page_text(page_of(d)), page_markdown(page_of(d)),
            page_html(page_of(d))};
}

} // namespace

TEST_CASE("a stale price is said in every rendering of a ranking, and a fresh one in none") {
    const Catalogue c = with_a_stale_price();
    for (const std::string& told : renderings(document_of(ranked_by_cost(c, {"aa", "bb"}), {c, UnitSystem::shown, ""})))
        CHECK_THAT(told, Contains("stale price"));
    for (const std::string& told : renderings(document_of(ranked_by_cost(c, {"bb"}), {c, UnitSystem::shown, ""})))
        CHECK_THAT(told, !Contains("stale"));
    const RankResult both = ranked_by_cost(c, {"ab", "bb"}); // ab is priced by its content of Aa
    for (const RankedMetal& m : both.ranked) CHECK(m.stale_price == (m.metal->slug == "ab"));
}

TEST_CASE(
    "a ranking says where its prices are of several years, which and of what, and nothing where they are of one") {
    Catalogue c = small_catalogue();
    const DocumentSetting setting{c, UnitSystem::shown, ""};
    for (const std::string& told : renderings(document_of(ranked_by_cost(c, {"aa", "bb"}), setting)))
        CHECK_THAT(told, !Contains("several years"));
    c.price_sets.front().prices[1].as_of = "2023-01-18"; // of bb
    c.index();
    const RankResult mixed = ranked_by_cost(c, {"aa", "bb", "ab"}); // ab is priced by its content of both
    CHECK_THAT(mixed.price_years, Contains("several years") && Contains("2023") && Contains("2024"));
    const Document d = document_of(mixed, setting); // the table of CSV holds figures, no sentence
    for (const std::string& told : {answer_text(d), answer_json(d), json_of(d), page_text(page_of(d))})
        CHECK_THAT(told, Contains(mixed.price_years));
    CHECK(ranked_by_cost(c, {"bb"}).price_years.empty());
}

TEST_CASE("a stale price is said where metals are compared") {
    const Catalogue c = with_a_stale_price();
    CompareRequest request{{"aa", "bb"}, {"price"}, {}};
    const Document d = document_of(*compare(c, request), {c, UnitSystem::shown, ""});
    for (const std::string& told : {csv_of(d), json_of(d), page_text(page_of(d))})
        CHECK_THAT(told, Contains("stale price"));
}

TEST_CASE("a chance reads the same on the terminal, in files and in the window") {
    CHECK(share_text(0.035) == "3.5 %");
    CHECK(share_text(0) == "0 %");
    CHECK(share_text(1) == "100 %");
    CHECK(share_text(no_number).empty());
    const Catalogue c = small_catalogue();
    const RankResult r = ranked_by_cost(c, {"aa", "bb"});
    for (const RankColumn& column : rank_columns(r, {c, UnitSystem::shown, ""}))
        if (column.column.id == "p_first" && column.column.shown_in & in::text)
            for (const RankedMetal& m : r.ranked) CHECK(column.cell(m).text == share_text(m.place.p_first));
}

TEST_CASE("the columns of the window, the terminal and the files come from one list") {
    const Catalogue c = small_catalogue();
    const RankResult r = ranked_by_cost(c, {"aa", "bb"});
    const auto columns = rank_columns(r, {c, UnitSystem::shown, ""});
    for (const unsigned place : {in::text, in::program, in::file, in::window})
        CHECK(std::count_if(columns.begin(), columns.end(),
                            [place](const RankColumn& x) { return x.column.shown_in & place; }) >= 7);
    const DataTable table = document_of(r, {c, UnitSystem::shown, ""}).parts.front();
    REQUIRE(table.columns.size() == columns.size());
}
