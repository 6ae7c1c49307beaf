#include "core/alloys/blend.hpp"

#include "support/small_catalogue.hpp"

#include <catch2/catch.hpp>

using namespace pourbook;
using namespace pourbook::testing;

namespace {

Composition of(std::vector<Share> shares) {
    const auto c = composition_of(real_catalogue().alloys, std::move(shares));
    REQUIRE(c);
    return *c;
}

} // namespace

TEST_CASE("sterling and fine silver melted together") {
    const auto b = blend(real_catalogue().alloys, {{"sterling", 1.2, of({{"Ag", 92.5, 0}, {"Cu", 7.5, 0}})},
                                                   {"silver", 0.3, of({{"Ag", 100, 0}})}});
    REQUIRE(b);
    // By hand: 1.2 kg * 92.5 % + 0.3 kg = 1.41 kg of 1.5 kg.
    CHECK(b->composition.wt("Ag") == Approx(94));
    CHECK(b->elements.front().nanograms == std::int64_t{1410} * 1000000000);
    CHECK(b->nanograms == std::int64_t{1500} * 1000000000);
}

TEST_CASE("how much fine silver brings 1.2 kg of 925 to 958") {
    // By hand: 1.2 (95.8 - 92.5)/(100 - 95.8) = 0.942857 kg.
    const auto add = mass_to_add_kg(1.2, 92.5, 95.8, 100);
    REQUIRE(add);
    CHECK(*add == Approx(0.942857).epsilon(1e-6));
    CHECK(*mass_to_add_kg(1, 92.5, 92.5, 100) == 0);
}

TEST_CASE("targets out of reach are refused") {
    for (const auto& [start, target, added] : {std::tuple{92.5, 99.0, 95.0},
                                               {92.5, 90.0, 100.0},
                                               {92.5, 100.0, 100.0},
                                               {50.0, 60.0, 50.0},
                                               {50.0, 60.0, 40.0}}) {
        const auto add = mass_to_add_kg(1, start, target, added);
        INFO(start << " " << target << " " << added);
        REQUIRE_FALSE(add);
        CHECK(add.problem().kind == Problem::Kind::refused);
    }
}

TEST_CASE("masses and losses that make no sense") {
    const Composition cu = of({{"Cu", 100, 0}});
    for (double kg : {0.0, -1.0, 1e7, 1e-14}) CHECK_FALSE(blend(real_catalogue().alloys, {{"x", kg, cu}}));
    CHECK_FALSE(blend(real_catalogue().alloys, {}));
    CHECK(*mass_after_loss_kg(2, 0.03) == Approx(1.94));
    CHECK_FALSE(mass_after_loss_kg(2, 1));
    CHECK_FALSE(mass_after_loss_kg(2, -0.1));
}
