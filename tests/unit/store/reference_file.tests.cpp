#include "db/store/reference_file.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

using namespace pourbook;
using namespace pourbook::testing;
namespace fs = std::filesystem;

namespace {

fs::path temporary(const char* name) {
    const fs::path path = fs::temp_directory_path() / (std::to_string(getpid()) + "-" + name);
    fs::remove_all(path);
    return path;
}

std::string failure(const fs::path& path) {
    try {
        read_reference(path.string());
    } catch (const StoreError& e) {
        return e.what();
    }
    return "no failure";
}

bool same(double a, double b) {
    return a == b || (std::isnan(a) && std::isnan(b));
}

} // namespace

TEST_CASE("what is written is what is read") {
    const Catalogue& whole = real_catalogue();
    const fs::path path = temporary("pourbook-round.sqlite");
    write_reference(whole, path.string());
    const Catalogue again = read_reference(path.string());
    fs::remove(path);
    REQUIRE(again.metals.size() == whole.metals.size());
    CHECK(again.data_version == whole.data_version);
    for (std::size_t i = 0; i < whole.metals.size(); ++i) {
        const Metal &a = whole.metals[i], &b = again.metals[i];
        REQUIRE(a.records.size() == b.records.size());
        CHECK(a.slug == b.slug);
        for (std::size_t j = 0; j < a.records.size(); ++j) {
            const Record &r = a.records[j], &s = b.records[j];
            REQUIRE(r.points.size() == s.points.size());
            CHECK(
                (r.id == s.id && r.citation.locator == s.citation.locator && same(r.uncertainty_si, s.uncertainty_si)));
            for (std::size_t k = 0; k < r.points.size(); ++k)
                CHECK((same(r.points[k].value_si, s.points[k].value_si) && r.points[k].printed == s.points[k].printed));
            REQUIRE(r.equation.has_value() == s.equation.has_value());
            if (r.equation) CHECK(r.equation->at(r.equation->low_K) == s.equation->at(s.equation->low_K));
        }
    }
}

TEST_CASE("a missing, damaged, foreign or newer file is one clear line") {
    CHECK(failure("/nowhere/at/all.sqlite").find("no reference database at") == 0);
    CHECK(failure(fs::temp_directory_path()).find("no reference database at") == 0);
    const fs::path path = temporary("pourbook-damaged.sqlite");
    std::ofstream(path) << "this is no database, only a long enough text to be looked at as one by the library";
    CHECK(failure(path).find("is damaged") != std::string::npos);
    std::ofstream(path, std::ios::trunc).close();
    CHECK(failure(path).find("is no reference of this program") != std::string::npos);
    fs::copy_file(POURBOOK_REFERENCE, path, fs::copy_options::overwrite_existing);
    {
        std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
        file.seekp(60); // user_version stands at byte 60 of an SQLite file (SQLite file format, section 1.3)
        const char newer[4] = {0, 0, 0, 99};
        file.write(newer, 4);
    }
    CHECK(failure(path).find("newer version") != std::string::npos);
    fs::remove(path);
}

TEST_CASE("a truncated file is refused") {
    const fs::path path = temporary("pourbook-short.sqlite");
    fs::copy_file(POURBOOK_REFERENCE, path, fs::copy_options::overwrite_existing);
    fs::resize_file(path, fs::file_size(path) / 2);
    CHECK(failure(path).find("damaged") != std::string::npos);
    fs::remove(path);
}

TEST_CASE("writing where nothing can be written leaves nothing behind") {
    CHECK_THROWS_AS(write_reference(real_catalogue(), "/nowhere/at/all.sqlite"), StoreError);
    CHECK_FALSE(fs::exists("/nowhere"));
}
