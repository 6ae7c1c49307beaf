#include "support/many_metals.hpp"

#include "support/small_catalogue.hpp"

#include <cmath>
#include <cstdio>
#include <random>

namespace pourbook::testing {
namespace {

constexpr double room_K = 293.15;

std::string slug_of(std::size_t number) {
    char text[32];
    std::snprintf(text, sizeof text, "m%06zu", number);
    return text;
}

} // namespace

Catalogue many_metals(std::size_t count, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    const auto between = [&](double low, double ratio) {
        return low * std::pow(ratio, static_cast<double>(random() >> 11) * 0x1.0p-53);
    };
    Catalogue c = small_catalogue();
    c.metals.clear();
    c.price_sets.front().prices.clear();
    for (std::size_t i = 0; i < count; ++i) {
        Metal m;
        m.slug = m.name = slug_of(i);
        m.kind = "element";
        m.family = "copper";
        m.reference_condition = "annealed";
        m.records = {series("resistivity", {{room_K, between(1.5e-8, 100)}}),
                     series("density", {{room_K, between(1e3, 20)}}), single("melting_point", between(500, 5))};
        c.price_sets.front().prices.push_back(price(m.slug, between(1, 1000)));
        c.metals.push_back(std::move(m));
    }
    c.index();
    return c;
}

} // namespace pourbook::testing
