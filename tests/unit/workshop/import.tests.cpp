// Lists in: any separator, decimal comma, units; all or nothing; what is exported comes back the same.
#include "questions/workshop/import.hpp"
#include "answers/workshop/entries_report.hpp"
#include "answers/workshop/import_report.hpp"
#include "db/store/workshop_file.hpp"
#include "importers/common/csv.hpp"
#include "importers/shop/read_rows.hpp"
#include "questions/workshop/with_workshop.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <sstream>

using namespace pourbook;
using Catch::Matchers::Contains;

namespace {

std::vector<std::vector<std::string>> cells_of(const std::string& text, char* separator = nullptr) {
    std::istringstream in(text);
    CsvReader reader(in, "list.csv");
    if (separator) *separator = reader.separator();
    std::vector<std::vector<std::string>> out;
    for (CsvRow row; reader.next(row);) out.push_back(row.cells);
    return out;
}

struct Imported {
    ImportResult result;
    std::vector<Rejection> rejected;
    std::vector<Entry> entries;
    std::string problem;
};

const Catalogue& catalogue() {
    static const Catalogue c = with_workshop(testing::real_catalogue(), {}).catalogue;
    return c;
}

Imported import_into(Workshop& w, const std::string& kind_name, const std::string& text, bool dry = false,
                     const ColumnWords& words = {}) {
    Imported out;
    const Kind& kind = known_kind(kind_name);
    auto rows = read_rows(std::make_unique<std::istringstream>(text), text.size(), "list", kind, words);
    if (!rows) {
        out.problem = rows.problem().text;
        return out;
    }
    ImportWatch watch;
    watch.rejected = [&](const Rejection& r) { out.rejected.push_back(r); };
    const auto result = import_rows(catalogue(), w, kind, **rows, dry, "import", watch);
    if (!result) {
        out.problem = result.problem().text;
        return out;
    }
    out.result = *result;
    out.entries = *w.entries(kind);
    return out;
}

Imported import_text(const std::string& kind, const std::string& text, bool dry = false,
                     const ColumnWords& words = {}) {
    const auto w = open_workshop(":memory:");
    REQUIRE(w);
    return import_into(**w, kind, text, dry, words);
}

std::string field(const Imported& i, std::size_t row, const char* kind, const char* name) {
    REQUIRE(i.problem == "");
    for (const Rejection& r : i.rejected) FAIL_CHECK(r.line << " " << r.column << " " << r.reason);
    REQUIRE(i.entries.size() > row);
    return text_of(known_kind(kind), i.entries[row], name);
}

} // namespace

TEST_CASE("CSV: separators, quotes, marks and line ends (RFC 4180 and what spreadsheets make of it)") {
    char separator = 0;
    using Rows = std::vector<std::vector<std::string>>;
    CHECK(cells_of("a,b\r\n\"x, y\",\"say \"\"hi\"\"\"\r\n") == Rows{{"a", "b"}, {"x, y", "say \"hi\""}});
    CHECK(cells_of("\xEF\xBB\xBF"
                   "a;b\n1,5;2\n",
                   &separator) == Rows{{"a", "b"}, {"1,5", "2"}});
    CHECK(separator == ';');
    CHECK(cells_of("a\tb\rc\td") == Rows{{"a", "b"}, {"c", "d"}});
    CHECK(cells_of("sep=|\na|b,c\n") == Rows{{"a", "b,c"}});
    CHECK(cells_of("a,\"b\nc\"\n\n\nd,\n") == Rows{{"a", "b\nc"}, {"d", ""}});
    CHECK(cells_of("") == Rows{});
    CHECK_THROWS_WITH(cells_of("a,b\n1,\"open\n2,3\n"), Contains("list.csv:2:") && Contains("never closed"));
    CHECK_THROWS_WITH(cells_of(std::string("a\0b", 3)), Contains("zero byte"));
    CHECK_THROWS_WITH(cells_of("\xFF\xFE"
                               "a"),
                      Contains("UTF-16"));
}

TEST_CASE("columns are known by their names, units stand in the header, a column or the cell") {
    CHECK(field(import_text("price", "Metal;Price [EUR/kg];As of\nCu;8,50;2026-11-01\n"), 0, "price", "price") ==
          "8.50 EUR/kg");
    CHECK(field(import_text("price", "material,cost (USD/lb),date\ncopper,4.4,2026-11-01\n"), 0, "price", "price") ==
          "4.4 USD/lb");
    CHECK(field(import_text("price", "metal,price,unit,date\ncopper,4.4,USD/lb,2026-11-01\n"), 0, "price", "price") ==
          "4.4 USD/lb");
    CHECK(field(import_text("price", "metal,price,date\ncopper,4.4 USD/lb,2026-11-01\n"), 0, "price", "price") ==
          "4.4 USD/lb");
    CHECK(field(import_text("price", "Werkstoff;Preis;date\ncopper;1.234,5;2026-11-01\n", false,
                            {{"Werkstoff=metal", "Preis=price"}, {"price=EUR/kg"}, {}}),
                0, "price", "price") == "1234.5 EUR/kg");
    CHECK(field(import_text("stock", "{\"stock\": [{\"metal\": \"tin\", \"mass [g]\": 250}]}"), 0, "stock", "mass") ==
          "250 g");
}

TEST_CASE("rejected rows are named by line, column, reason and remedy, and then nothing is written") {
    const Imported i = import_text("price", "metal,price,date\n"
                                            "copper,8 EUR/kg,2026-11-01\n"
                                            "coper,8 EUR/kg,2026-11-01\n"
                                            "copper,8,2026-11-01\n"
                                            "copper,\"1,234 EUR/kg\",2026-11-01\n"
                                            "copper,8 EUR/kg,1.11.2026\n"
                                            "copper,8 EUR/kg,2026-11-01,too,many\n"
                                            "copper,9 EUR/kg,2026-11-01\n");
    REQUIRE(i.rejected.size() == 6);
    CHECK(i.rejected[0].line == 3);
    CHECK(i.rejected[0].column == "metal");
    CHECK_THAT(i.rejected[0].reason, Contains("did you mean copper"));
    CHECK_THAT(i.rejected[1].reason, Contains("no unit") && Contains("price [EUR/kg]"));
    CHECK_THAT(i.rejected[2].reason, Contains("thousands"));
    CHECK(i.rejected[3].column == "date");
    CHECK_THAT(i.rejected[3].reason, Contains("2026-11-25"));
    CHECK_THAT(i.rejected[4].reason, Contains("5 cells"));
    CHECK_THAT(i.rejected[5].reason, Contains("twice"));
    CHECK(i.entries.empty());
    CHECK_FALSE(i.result.written);
    CHECK_THAT(import_text("price", "a,b\n1,2\n").problem, Contains("no column is known"));
    CHECK_THAT(import_text("price", "").problem, Contains("no row"));
    CHECK_THAT(import_text("price", "metal,material\n1,2\n").problem, Contains("both"));
}

TEST_CASE("a dry run says what would change and changes nothing") {
    const auto w = open_workshop(":memory:");
    const std::string list = "lot,metal,mass\na,copper,1 kg\nb,tin,2 kg\n";
    CHECK(import_into(**w, "stock", list, true).result.added == 2);
    CHECK((*w)->entries(known_kind("stock"))->empty());
    CHECK(import_into(**w, "stock", list).result.written);
    const Imported again = import_into(**w, "stock", "lot,metal,mass\na,copper,1 kg\nb,tin,3 kg\n", true);
    CHECK(again.result.unchanged == 1);
    CHECK(again.result.changed == 1);
    CHECK(again.result.first == std::vector<std::string>{"change stock b"});
    CHECK(text_of(known_kind("stock"), again.entries[1], "mass") == "2 kg");
}

TEST_CASE("what is exported as JSON or CSV is imported again without loss, whatever the texts") {
    std::mt19937 random(5);
    const std::vector<std::string> pieces = {"=1+1", "-",     "+",    "@x",  "'", "''=", "\"", "\n", ",",    ";", "\t",
                                             "|",    "µΩ·cm", "12,5", " a ", "é", "\\",  "{",  "[",  "null", "#", "0"};
    const auto from = open_workshop(":memory:"), by_csv = open_workshop(":memory:"),
               by_json = open_workshop(":memory:");
    const Kind& kind = known_kind("stock");
    {
        auto batch = (*from)->begin("fill");
        for (int i = 0; i < 200; ++i) {
            Entry e = new_entry(kind);
            text_of(kind, e, "metal") = "copper";
            text_of(kind, e, "mass") = std::to_string(i + 1) + " g";
            for (const char* name : {"note", "seller", "condition"})
                for (std::size_t k = random() % 5; k-- > 0;) text_of(kind, e, name) += pieces[random() % pieces.size()];
            for (std::string& v : e.values) { // as `checked` keeps them
                const std::size_t first = v.find_first_not_of(" \t\r\n");
                v = first == std::string::npos ? "" : v.substr(first, v.find_last_not_of(" \t\r\n") - first + 1);
            }
            REQUIRE((*batch)->put(kind, e));
        }
        REQUIRE((*batch)->commit());
    }
    const auto entries = *(*from)->entries(kind);
    const auto same = [&](const Imported& i) {
        CHECK(i.problem == "");
        CHECK(i.rejected.empty());
        REQUIRE(i.entries.size() == entries.size());
        for (std::size_t k = 0; k < entries.size(); ++k) REQUIRE(i.entries[k].values == entries[k].values);
    };
    same(import_into(**by_csv, "stock", csv_of_entries(kind, entries)));
    same(import_into(**by_json, "stock", json_of_entries(kind, entries)));
    CHECK(import_into(**from, "stock", csv_of_entries(kind, entries)).result.unchanged == 200);
}

TEST_CASE("a column says which mark is the decimal one, and where it doesn't, nothing is guessed") {
    // common practice, no source: a German price list writes 1.234,50 for one thousand two hundred thirty-four and a
    // half
    const Imported german = import_text("stock", "lot;metal;mass [kg]\na;copper;1.000,5\nb;tin;1.000\nc;zinc;0,5\n");
    CHECK(field(german, 0, "stock", "mass") == "1000.5 kg");
    CHECK(field(german, 1, "stock", "mass") == "1000 kg");
    CHECK(field(german, 2, "stock", "mass") == "0.5 kg");
    const Imported english = import_text("stock", "lot;metal;mass [kg]\na;copper;1.25\nb;tin;1.125\n");
    CHECK(field(english, 1, "stock", "mass") == "1.125 kg");
    const Imported units =
        import_text("price", "metal;price;date\ncopper;1.234 EUR/kg;2026-11-01\ntin;8,50 EUR/kg;2026-11-01\n");
    CHECK(field(units, 0, "price", "price") == "1234 EUR/kg");
    for (const char* list :
         {"lot;metal;mass [kg]\na;tin;1.234\n", "lot;metal;mass [kg]\na;tin;1.234\nb;tin;0,5\nc;tin;0.5\n",
          "lot,metal,mass [kg]\na,tin,\"1,234\"\n", "lot;metal;mass\na;tin;1.234 kg\n"}) {
        CAPTURE(list);
        const Imported doubtful = import_text("stock", list);
        REQUIRE_FALSE(doubtful.rejected.empty());
        CHECK_THAT(doubtful.rejected[0].reason, Contains("thousands or decimals"));
        CHECK(doubtful.entries.empty());
    }
}

TEST_CASE("an import that changes nothing does not speak of undo") {
    const auto w = open_workshop(":memory:");
    const std::string list = "lot,metal,mass [g]\na,copper,5\n";
    CHECK_THAT(text_of_import(import_into(**w, "stock", list).result), Contains("takes it back"));
    const Imported again = import_into(**w, "stock", list), none = import_into(**w, "stock", "lot,metal,mass [g]\n");
    for (const ImportResult& r : {again.result, none.result}) {
        CHECK_FALSE(r.written);
        CHECK_THAT(text_of_import(r), Contains("Nothing was changed") && !Contains("undo"));
    }
    CHECK(import_text("stock", "{\"x\": [{\"metal\": \"tin\"}], \"y\": [{\"metal\": \"zinc\"}]}")
              .problem.find("several lists") != std::string::npos);
}
