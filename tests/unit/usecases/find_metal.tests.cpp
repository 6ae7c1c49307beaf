#include "questions/metals/find_metal.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace pourbook;
using namespace pourbook::testing;

TEST_CASE("a metal is found by slug, name, alias and designation, and a slip is answered with near names") {
    const Catalogue& c = real_catalogue();
    for (const char* word : {"sterling-silver", "Sterling Silver", "sterling_silver", "Ag925", "ag925"}) {
        const auto m = find_metal(c, word);
        INFO(word);
        REQUIRE(m);
        CHECK((*m)->slug == "sterling-silver");
    }
    CHECK((*find_metal(c, "C11000"))->slug == "copper-etp");
    CHECK(find_metal(c, "coper").problem().text.find("copper") != std::string::npos);
    CHECK(find_metal(c, "").problem().kind == Problem::Kind::unknown);
    CHECK(find_metal(c, "unobtainium").problem().kind == Problem::Kind::unknown);
}

TEST_CASE("search needs every word, and a metal named whole comes first") {
    const Catalogue& c = real_catalogue();
    CHECK(search_metals(c, "").size() == c.metals.size());
    CHECK(search_metals(c, "silver sterling").size() >= 1);
    CHECK(search_metals(c, "silver zzz").empty());
    CHECK(search_metals(c, "copper").front()->slug == "copper"); // though constantan is a copper-nickel too
    CHECK(search_metals(c, "Cu").front()->slug == "copper");
}

TEST_CASE("what is typed whole comes first, then what it begins, then what contains it") {
    const Catalogue& c = real_catalogue();
    const auto first = [&](const char* words) { return search_metals(c, words).at(0)->slug; };
    CHECK(first("lead") == "lead");
    CHECK(first("copper") == "copper");
    CHECK(first("Cu") == "copper");
    CHECK(first("zinc") == "zinc");
    CHECK(first("Sterling  Silver") == "sterling-silver");
    CHECK(first("C11000") == "copper-etp");
    CHECK(first("pure iron") == "iron");
    CHECK(first("lea") == "lead");
    const auto found = search_metals(c, "copper");
    const auto place = [&](const char* slug) {
        return std::find_if(found.begin(), found.end(), [&](const Metal* m) { return m->slug == slug; }) -
               found.begin();
    };
    CHECK(place("copper-etp") < place("cupronickel-90-10"));
    CHECK(place("cupronickel-90-10") <
          place("silver-copper-eutectic")); // an alias begins with it; a name only holds it
}
