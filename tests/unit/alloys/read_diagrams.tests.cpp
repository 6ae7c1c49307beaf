#include "importers/compile/read_diagrams.hpp"

#include "importers/common/located_json.hpp"
#include "importers/compile/compile.hpp"
#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

#include <unistd.h>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

std::string written(const std::string& text) {
    const auto path =
        std::filesystem::temp_directory_path() / ("pourbook-read-diagrams-" + std::to_string(getpid()) + ".json");
    std::ofstream(path) << text;
    return path.string();
}

Catalogue with_masses() {
    Catalogue c = real_catalogue();
    c.alloys = {};
    c.alloys.masses = real_catalogue().alloys.masses;
    return c;
}

std::string diagram_text(const std::string& rows, const std::string& a = "Ag") {
    return R"x({"a": ")x" + a + R"x(", "b": "Cu", "composition": "wt% of b", "temperature_unit": "degC", "fields": [
        {"left": "(Ag)", "right": "liquid", "rows": )x" +
           rows + R"x(, "source": "nist-solder", "locator": "x", "how_known": "read"}], "invariants": []})x";
}

} // namespace

TEST_CASE("a diagram is read, its rows sorted, in kelvin") {
    Catalogue c = with_masses();
    std::vector<std::string> faults;
    read_diagram(written(diagram_text(R"([["961.78", "0", "0"], ["779.1", "8.8", "28.1"]])")), c, faults);
    CHECK(faults.empty());
    REQUIRE(c.alloys.diagrams.size() == 1);
    const DiagramField& f = c.alloys.diagrams[0].fields.at(0);
    CHECK(f.lowest_K() == Approx(1052.25));
    CHECK(f.rows.back().right_wt == 0);
}

TEST_CASE("faulty diagrams are named with file and line") {
    for (const char* rows :
         {R"([["900", "8", "2"], ["800", "1", "2"]])", R"([["900", "1", "2"]])",
          R"([["900", "1", "2"], ["900", "1", "3"]])", R"([["900", "1"], ["800", "1", "2"]])",
          R"([["900", "1", "120"], ["800", "1", "2"]])", R"([["hot", "1", "2"], ["800", "1", "2"]])"}) {
        Catalogue c = with_masses();
        std::vector<std::string> faults;
        read_diagram(written(diagram_text(rows)), c, faults);
        INFO(rows);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].find("rows") != std::string::npos);
    }
    Catalogue c = with_masses();
    std::vector<std::string> faults;
    CHECK_THROWS_AS(read_diagram(written(diagram_text(R"([["900", "1", "2"], ["800", "1", "2"]])", "Xx")), c, faults),
                    InputError);
}

TEST_CASE("increments without a source or with a wrong word are refused") {
    for (
        const char* entry :
        {R"({"host": "Cu", "solute": "P", "state": "dissolved", "value": "6.7", "per": "at%", "locator": "x", "how_known": "memory"})",
         R"({"host": "Cu", "solute": "P", "state": "melted", "value": "6.7", "per": "at%", "source": "mem-linde", "locator": "x", "how_known": "memory"})",
         R"({"host": "Cu", "solute": "P", "state": "dissolved", "value": "6.7", "per": "mol%", "source": "mem-linde", "locator": "x", "how_known": "memory"})"}) {
        Catalogue c = with_masses();
        std::vector<std::string> faults;
        read_increments(written(std::string(R"({"resistivity": [)") + entry + "]}"), c, faults);
        INFO(entry);
        CHECK(faults.size() == 1);
        CHECK(c.alloys.effects.empty());
    }
}

TEST_CASE("the compiled file gives back what the folder says") {
    const Compiled folder = compile_folder(POURBOOK_DB);
    REQUIRE(folder.faults.empty());
    const AlloyData &a = folder.catalogue.alloys, &b = real_catalogue().alloys;
    REQUIRE(a.diagrams.size() == b.diagrams.size());
    for (std::size_t i = 0; i < a.diagrams.size(); ++i) {
        CHECK(a.diagrams[i].fields.size() == b.diagrams[i].fields.size());
        CHECK(a.diagrams[i].invariants.size() == b.diagrams[i].invariants.size());
        CHECK(a.diagrams[i].fields[0].rows.back().temperature_K == b.diagrams[i].fields[0].rows.back().temperature_K);
    }
    CHECK(a.effects.size() == b.effects.size());
    CHECK(a.volumes.size() == b.volumes.size());
    CHECK(a.tables.size() == b.tables.size());
    CHECK(a.frozen.size() == b.frozen.size());
    CHECK(a.masses.size() == b.masses.size());
    CHECK(a.effect("Cu", "P", true)->ohm_m_per_percent == b.effect("Cu", "P", true)->ohm_m_per_percent);
}
