#include "unit/metals/maker_names.hpp"

#include "support/small_catalogue.hpp"

#include "questions/metals/find_metal.hpp"
#include "questions/metals/find_words.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

TEST_CASE("names of the workshop find their metal") {
    const Catalogue& c = real_catalogue();
    for (const MakerName& name : maker_names) {
        INFO(name.typed);
        const auto found = search_metals(c, name.typed);
        if (name.metal[0] == '\0') {
            CHECK(found.empty());
            CHECK_FALSE(not_kept(c, name.typed).empty());
            continue;
        }
        REQUIRE_FALSE(found.empty());
        CHECK(found.front()->slug == name.metal);
    }
}

TEST_CASE("a short query never matches inside a longer word") {
    const Findable fusible{{"roses-metal", "Bi50Pb25Sn25"}, "fusible"};
    CHECK(nearness(fusible, "PB2") == Nearness::none);
    CHECK(nearness(fusible, "bi50") == Nearness::begins_another_name);
    CHECK(nearness(fusible, "metal") == Nearness::holds_its_words);
    CHECK(nearness(fusible, "met") == Nearness::begins_its_words);
    CHECK(nearness(fusible, "etal") == Nearness::none);
    CHECK(nearness({{"zamak-3"}, ""}, "Zamak3") == Nearness::is_a_name);
}

TEST_CASE("a name that belongs to no record says what is near, and no other grade is proposed for a figure mistyped") {
    const Catalogue& c = real_catalogue();
    const auto near = find_metal(c, "CZ112");
    REQUIRE_FALSE(near);
    CHECK(near.problem().text.find("near brass-naval") != std::string::npos);
    const auto none = find_metal(c, "4140");
    REQUIRE_FALSE(none);
    CHECK(none.problem().text.find("known, not kept") != std::string::npos);
    const std::string both = not_kept(c, "C101");
    CHECK(both.find("near copper-of") != std::string::npos);
    CHECK(both.find("near copper-etp") != std::string::npos);
    const auto unlike = find_metal(c, "LM26");
    REQUIRE_FALSE(unlike);
    CHECK(unlike.problem().text.find("did you mean") == std::string::npos);
    const auto slip = find_metal(c, "brass-cartrige");
    REQUIRE_FALSE(slip);
    CHECK(slip.problem().text.find("did you mean brass-cartridge") != std::string::npos);
}
