#include "importers/compile/compile.hpp"

#include "db/store/reference_file.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <unistd.h>

using namespace pourbook;
namespace fs = std::filesystem;

namespace {

std::string content(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// A copy of db/ with one piece of one file replaced.
class Altered {
public:
    Altered(const std::string& file, const std::string& piece, const std::string& by)
        : folder_(fs::temp_directory_path() /
                  ("pourbook-compile-" + std::to_string(getpid()) + "-" + std::to_string(++count_))) {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        for (const char* part : {"elements", "alloys", "prices", "goals"})
            fs::copy(fs::path(POURBOOK_DB) / part, folder_ / part);
        for (const char* part :
             {"properties.json", "references.json", "cautions.json", "price_forms.json", "withdrawn_ids.json"})
            fs::copy(fs::path(POURBOOK_DB) / part, folder_ / part);
        std::string text = content(folder_ / file);
        const std::size_t at = text.find(piece);
        INFO(file << ": " << piece);
        REQUIRE(at != std::string::npos);
        text.replace(at, piece.size(), by);
        std::ofstream(folder_ / file, std::ios::binary) << text;
    }
    ~Altered() { fs::remove_all(folder_); }
    Compiled compiled() const { return compile_folder(folder_.string()); }
    std::string first_fault() const {
        const Compiled c = compiled();
        REQUIRE_FALSE(c.faults.empty());
        return c.faults.front();
    }

private:
    static inline int count_ = 0;
    fs::path folder_;
};

const char* const copper = "elements/copper.json";

} // namespace

TEST_CASE("the shipped data is sound, and the same data gives the same bytes") {
    const Compiled c = compile_folder(POURBOOK_DB);
    for (const std::string& fault : c.faults) UNSCOPED_INFO(fault);
    REQUIRE(c.faults.empty());
    const fs::path a = fs::temp_directory_path() / "pourbook-a.sqlite",
                   b = fs::temp_directory_path() / "pourbook-b.sqlite";
    write_reference(c.catalogue, a.string());
    write_reference(compile_folder(POURBOOK_DB).catalogue, b.string());
    CHECK(content(a) == content(b));
    fs::remove(a);
    fs::remove(b);
}

TEST_CASE("a deleted citation stops the build and names file, line and field") {
    const std::string text = content(fs::path(POURBOOK_DB) / copper);
    const std::size_t at = text.find("\"source\": \"");
    const std::string piece = text.substr(at, text.find(',', at) + 1 - at);
    const std::string fault = Altered(copper, piece, "").first_fault();
    CHECK(fault.find("copper.json:") != std::string::npos);
    CHECK(fault.find("records/0/source: is missing") != std::string::npos);
}

TEST_CASE("faults of the data are found and said in one line") {
    const auto fault = [](const std::string& piece, const std::string& by) {
        return Altered(copper, piece, by).first_fault();
    };
    CHECK(fault("\"unit\": \"uohm.cm\"", "\"unit\": \"g/cm3\"").find("is no unit of resistivity") != std::string::npos);
    CHECK(fault("\"unit\": \"uohm.cm\"", "\"unit\": \"ohm.m\"").find("plausible") != std::string::npos);
    CHECK(fault("\"how_known\": \"read\"", "\"how_known\": \"heard\"").find("how_known") != std::string::npos);
    CHECK(fault("\"records\": [", "\"records\": [,").find("not valid JSON") != std::string::npos);
    CHECK(fault("\"kind\":", "\"colour\": \"red\", \"kind\":").find("colour: unknown key") != std::string::npos);
    CHECK(fault("\"kind\":", "\"kind\": \"element\", \"kind\":").find("stands twice") != std::string::npos);
    CHECK(fault("\"property\": \"resistivity\"", "\"property\": \"resistance\"").find("unknown property") !=
          std::string::npos);
    CHECK(fault("\"id\": \"copper.melting_point.1\"", "\"id\": \"copper.melting_point.2\"").find("has this id") !=
          std::string::npos);
    CHECK(fault("\"id\": \"copper.melting_point.1\"", "\"id\": \"copper.density.9\"").find("the id is not") !=
          std::string::npos);
    CHECK(fault("\"property\": \"specific_heat\"", "\"property\": \"specific_heat\", \"from\": \"20\"")
              .find("only an expansion is kept as a mean over a range") != std::string::npos);
    CHECK(fault("\"slug\": \"copper\"", "\"slug\": \"kupfer\"").find("not the name of the file") != std::string::npos);
}

TEST_CASE("an id taken back is never given again") {
    const std::string taken = "[{\"id\": \"copper.melting_point.1\", \"why\": \"entered twice\"},";
    CHECK(Altered("withdrawn_ids.json", "[", taken).first_fault().find("withdrawn and yet in use") !=
          std::string::npos);
    const std::string lost = "[{\"id\": \"copper.x.1\", \"why\": \"entered twice\", \"replaced_by\": \"copper.x.2\"},";
    CHECK(Altered("withdrawn_ids.json", "[", lost).first_fault().find("copper.x.2 is unknown") != std::string::npos);
}

TEST_CASE("a price deleted: the metal and the alloys made of it are named as unpriced") {
    const Compiled whole = compile_folder(POURBOOK_DB);
    REQUIRE(whole.catalogue.price("copper"));
    std::size_t sets = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(POURBOOK_DB) / "prices"))
        sets += entry.path().extension() == ".json" ? 1 : 0;
    CHECK(whole.catalogue.price_sets.size() == sets);
    CHECK(Altered("prices/usgs-annual.json", "\"metal\": \"copper\"", "\"metal\": \"kupfer\"")
              .first_fault()
              .find("no metal file 'kupfer'") != std::string::npos);
}
