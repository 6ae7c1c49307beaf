#include "support/small_catalogue.hpp"

#include "questions/pour/defects.hpp"
#include "questions/pour/part_words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;

namespace {

struct Word {
    const char* said;
    const char* name;
};

// What people say, and the entry they mean; common practice, no source.
constexpr Word words[] = {{"porosity", "gas"},
                          {"bubbles", "gas"},
                          {"blowholes", "gas"},
                          {"spongy", "gas"},
                          {"shrinkage cavity", "shrinkage"},
                          {"jagged holes", "shrinkage"},
                          {"void in the centre", "shrinkage"},
                          {"misrun", "cold run"},
                          {"won't fill", "cold run"},
                          {"short pour", "cold run"},
                          {"didn't fill", "cold run"},
                          {"missing corner", "cold run"},
                          {"metal spitting", "moisture"},
                          {"explosion", "moisture"},
                          {"damp mould", "moisture"},
                          {"rising in the sprue", "oxygen"},
                          {"sunk top", "sink"},
                          {"dent", "sink"},
                          {"surface depression", "sink"},
                          {"sinks", "sink"},
                          {"pipe in the feeder", "open pipe"},
                          {"leak", "dispersed porosity"},
                          {"leaking", "dispersed porosity"},
                          {"pinholes under the skin", "pinholes"},
                          {"pinholes", "pinholes"},
                          {"blisters", "blister"},
                          {"trapped air", "entrapped air"},
                          {"cold shut", "cold shut"},
                          {"seam", "cold shut"},
                          {"lap", "cold shut"},
                          {"beads of shot", "cold shot"},
                          {"ran out of metal", "interrupted pour"},
                          {"leaked out of the mould", "run-out"},
                          {"run out", "run-out"},
                          {"hot tear", "hot tear"},
                          {"torn corner", "hot tear"},
                          {"crack", "cold crack"},
                          {"cracked", "cold crack"},
                          {"cracked when quenched", "quench crack"},
                          {"brittle", "brittle"},
                          {"shell cracked", "shell crack in burn-out"},
                          {"crack during burnout", "shell crack in burn-out"},
                          {"shell broke", "shell crack in burn-out"},
                          {"flash", "flash"},
                          {"fins", "flash"},
                          {"veins", "veining"},
                          {"sand stuck", "metal penetration"},
                          {"rough surface", "rough surface"},
                          {"orange peel surface", "rough surface"},
                          {"layer lines", "rough surface"},
                          {"scabs", "scab"},
                          {"inclusions of sand", "sand inclusion"},
                          {"black spots", "sand inclusion"},
                          {"slag", "slag"},
                          {"dross", "dross"},
                          {"wrinkled skin", "dross"},
                          {"soot", "ash"},
                          {"tin sweat", "tin sweat"},
                          {"white smoke", "dezincification"},
                          {"firescale", "fire stain"},
                          {"bulge", "soft shell"},
                          {"warped", "distortion"},
                          {"bent", "distortion"},
                          {"core shift", "core shift"},
                          {"too small", "too small"},
                          {"bore too small", "too large"},
                          {"magnet stuck", "too large"}};

} // namespace

TEST_CASE("sixty ordinary words find the right defect") {
    CHECK(std::size(words) >= 60);
    for (const Word& w : words) {
        INFO(w.said);
        const auto found = defects(testing::real_catalogue(), w.said);
        REQUIRE(found);
        const auto first = found->begin(), end = found->begin() + std::min<std::ptrdiff_t>(3, std::ssize(*found));
        INFO("first: " << first->name);
        CHECK(std::any_of(first, end, [&](const Defect& d) { return d.name == w.name; }));
    }
    CHECK(!defects(testing::real_catalogue(), "violet kangaroos"));
}

TEST_CASE("every defect says what is seen, why, how to tell it, what to change, and whence") {
    const auto all = defects(testing::real_catalogue(), "");
    REQUIRE(all);
    CHECK(all->size() >= 40);
    CHECK(all->size() <= 60);
    for (const Defect& d : *all) {
        INFO(d.name);
        for (const std::string* part : {&d.kind, &d.seen, &d.cause, &d.tell, &d.change, &d.words})
            CHECK(!part->empty());
        CHECK(testing::real_catalogue().reference(d.entry->citation.source));
    }
}

TEST_CASE("a plan stands beside the defect") {
    PourRequest r;
    r.metal = "aluminium-a356-cast";
    const char* part = "plate:50mmx50mmx50mm";
    const casting::Shape shape = *part_from(part)->shape;
    r.pieces = {{part, shape, *casting::measured(shape)}};
    const auto plan = pour(testing::real_catalogue(), r);
    REQUIRE(plan);
    CHECK(bearing_on("shrinkage", *plan).front().find("cm3 are missing") != std::string::npos);
    CHECK(bearing_on("filling", *plan).front().find("thinnest wall") != std::string::npos);
    CHECK(bearing_on("crack", *plan).front().find("freezes over") != std::string::npos);
    CHECK(!bearing_on("size", *plan).empty());
}
