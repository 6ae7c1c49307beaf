#include "charts/place_text.hpp"
#include "tests/charts/fixed_measure.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using testing::FixedMeasure;

TEST_CASE("lines break between words and never lose one") {
    const FixedMeasure measure;
    const auto lines = wrapped("one two three four", 7 * 9, TextStyle::label, measure);
    CHECK(lines == std::vector<std::string>{"one two", "three", "four"});
    CHECK(wrapped("unbreakable", 10, TextStyle::label, measure) == std::vector<std::string>{"unbreakable"});
    CHECK(wrapped("", 10, TextStyle::label, measure).empty());
}

TEST_CASE("a line does not break between a figure and its unit") {
    const FixedMeasure measure;
    CHECK(wrapped("outside 24 mm", 7 * 11, TextStyle::label, measure) == std::vector<std::string>{"outside", "24 mm"});
    CHECK(wrapped("16.4 ± 0.8 MS/m", 7 * 20, TextStyle::label, measure) == std::vector<std::string>{"16.4 ± 0.8 MS/m"});
    CHECK(wrapped("24 mm", 7 * 3, TextStyle::label, measure) == std::vector<std::string>{"24", "mm"}); // no room at all
}

TEST_CASE("a shortened text fits and is cut between signs") {
    const FixedMeasure measure;
    CHECK(shortened("brass", 100, TextStyle::label, measure) == "brass");
    CHECK(shortened("µΩ·cm and more", 7 * 5, TextStyle::label, measure) == "µΩ·c…");
}

TEST_CASE("a label takes the first free place inside the room") {
    const FixedMeasure measure;
    FreePlaces places({0, 0, 100, 100});
    places.take({0, 0, 100, 40});
    const Text high{{5, 20}, "abc", {}}, low{{5, 60}, "abc", {}}, outside{{95, 80}, "abc", {}};
    const auto found = places.first_free({high, outside, low}, measure);
    REQUIRE(found);
    CHECK(found->at.y == 60);
    CHECK_FALSE(places.first_free({low}, measure)); // taken by now
}
