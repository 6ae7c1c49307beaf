// Tables that leave the program: nothing lost, nothing run as a formula, nothing that breaks the format.
#include "answers/parts/citation.hpp"
#include "answers/writers/documents.hpp"
#include "answers/writers/writers.hpp"
#include "tests/support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <charconv>
#include <limits>

using namespace pourbook;

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// RFC 4180, read independently of the writer.
Rows read_csv(const std::string& text) {
    Rows rows(1);
    std::string field;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"')
            field += text[++i];
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == ',' || c == '\n')) {
            rows.back().push_back(field);
            field.clear();
            if (c == '\n') rows.emplace_back();
        } else if (quoted || c != '\r')
            field += c;
    }
    rows.pop_back();
    return rows;
}

/// What a reader does with the apostrophe that keeps a spreadsheet from running a text.
std::string undefused(const std::string& text) {
    const std::size_t sign = text.find_first_not_of('\'');
    const bool had =
        sign != std::string::npos && sign > 0 && std::string("=+-@\t\r").find(text[sign]) != std::string::npos;
    return had ? text.substr(1) : text;
}

Document of_texts(const std::vector<std::string>& texts) {
    Document d;
    d.title = "a <b> & \"c\"";
    d.data_version = "7";
    d.date = "2026-11-25";
    DataTable t{"Part", {{"a", "a"}}, {}};
    for (const std::string& text : texts) t.rows.push_back({DataCell::words(text)});
    d.parts = {t};
    return d;
}

const std::vector<std::string> awkward = {"=1+1",      "+1",
                                          "-2+3",      "@SUM(A1)",
                                          "\tx",       "\rx",
                                          "'=1",       "''=1",
                                          "'quoted'",  "a,b",
                                          "a \"b\" c", "two\nlines",
                                          " blanks ",  "µΩ·cm <b>&amp;</b>",
                                          "a|b\\c",    "<script>alert(1)</script>",
                                          ""};

} // namespace

TEST_CASE("CSV: awkward texts come back as they were, and none can run as a formula") {
    const Rows rows = read_csv(csv_of(of_texts(awkward)));
    REQUIRE(rows.size() == awkward.size() + 1);
    for (std::size_t i = 0; i < awkward.size(); ++i) {
        const std::string& cell = rows[i + 1][0];
        CHECK(undefused(cell) == awkward[i]);
        CHECK((cell.empty() || std::string("=+-@\t\r").find(cell[0]) == std::string::npos));
    }
}

TEST_CASE("CSV: figures keep all their digits and their sign") {
    Document d = of_texts({});
    d.parts[0].columns = {{"x", "x", "m", true}};
    const std::vector<double> figures = {-1.5, 0, 1e-300, -6.02214076e23, 123456789012, 0.1, 1.0 / 3};
    for (const double x : figures) d.parts[0].rows.push_back({DataCell::figure(x, "about")});
    d.parts[0].rows.push_back({DataCell::figure(std::numeric_limits<double>::quiet_NaN(), "nan")});
    const Rows rows = read_csv(csv_of(d));
    CHECK(rows[0][0] == "x (m)");
    for (std::size_t i = 0; i < figures.size(); ++i) {
        double read = 0;
        const std::string& text = rows[i + 1][0];
        CHECK(std::from_chars(text.data(), text.data() + text.size(), read).ptr == text.data() + text.size());
        CHECK(read == d.parts[0].rows[i][0].number);
        CHECK(read == Approx(figures[i]).epsilon(1e-11));
    }
    CHECK(rows.back()[0].empty()); // no value is never a number
}

TEST_CASE("HTML and Markdown escape what would be read as their own") {
    const Document d = of_texts(awkward);
    const std::string html = *written(d, TableFormat::html), markdown = *written(d, TableFormat::markdown);
    CHECK(html.find("<script>") == std::string::npos);
    CHECK(html.find("&lt;script&gt;") != std::string::npos);
    CHECK(html.find("a &lt;b&gt; &amp; &quot;c&quot;") != std::string::npos);
    CHECK(markdown.find("<script>") == std::string::npos);
    CHECK(markdown.find("a\\|b\\\\c") != std::string::npos);
}

TEST_CASE("every format carries sources, conditions, data version and date, and repeats byte for byte") {
    const Catalogue& c = testing::real_catalogue();
    const auto result = compare(c, {{"copper", "tin"}, {"resistivity", "linear_expansion", "magnetic_behaviour"}, {}});
    REQUIRE(result);
    const Document d = document_of(*result, {c, UnitSystem::shown, "2026-11-25"});
    CHECK(d.sources.size() > 1);
    for (const TableFormat f : {TableFormat::text, TableFormat::csv, TableFormat::markdown, TableFormat::html,
                                TableFormat::json, TableFormat::xlsx}) {
        const auto once = written(d, f), again = written(d, f);
        REQUIRE(once);
        CHECK(*once == *again);
        if (f == TableFormat::xlsx) continue; // packed: read in tests/cli/tables.py
        const bool for_programs = f == TableFormat::csv || f == TableFormat::json;
        for (const std::string& part :
             {std::string(for_programs ? "293.15" : "temperature: 20 °C"), std::string("reference"), c.data_version,
              std::string("2026-11-25"), d.sources[0]->key, how_to_cite(c.data_version)})
            CHECK(once->find(part) != std::string::npos);
    }
}

TEST_CASE("a missing value carries its reason and no number") {
    const Catalogue& c = testing::real_catalogue();
    Conditions hot;
    hot.temperature_K = 5000;
    const auto result = compare(c, {{"copper"}, {"resistivity"}, hot});
    REQUIRE(result);
    const Document d = document_of(*result, {c, UnitSystem::shown, ""});
    const DataCell& cell = d.parts[0].rows[0][2];
    CHECK(cell.number != cell.number);
    CHECK(cell.reason.find("cited range") != std::string::npos);
    CHECK(csv_of(d).find("cited range") != std::string::npos);
    CHECK(written(d, TableFormat::markdown)->find("no value: ") != std::string::npos);
}

TEST_CASE("each answer has columns of different names") {
    const Catalogue& c = testing::real_catalogue();
    RankRequest request;
    request.goal.goal = "braking-per-cost";
    request.samples = 20;
    const auto ranked = rank(c, request);
    REQUIRE(ranked);
    const auto rows = read_csv(csv_of(document_of(*ranked, {c, UnitSystem::shown, ""})));
    std::vector<std::string> names = rows[0];
    std::sort(names.begin(), names.end());
    CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
    for (const auto& row : rows) CHECK(row.size() == rows[0].size());
    CHECK(rows.size() == 1 + ranked->ranked.size() + ranked->excluded.size() + ranked->unrankable.size());
}

TEST_CASE("the ending or the word decides the format, and another is refused in words") {
    CHECK(*table_format("a/b.CSV") == TableFormat::csv);
    CHECK(*table_format("b.xlsx") == TableFormat::xlsx);
    CHECK(*table_format_named("md") == TableFormat::markdown);
    for (const char* name : {"x.pdf", "csv", "x.text", "x"}) CHECK_FALSE(table_format(name));
    CHECK_FALSE(table_format_named("ods"));
}
