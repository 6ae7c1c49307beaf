#include "charts/metal_colour.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace pourbook {
namespace {

constexpr Colour copper{251, 216, 184}, brass{244, 228, 173}, grey{206, 206, 206};
constexpr std::array<std::pair<const char*, Colour>, 14> colours = {{{"Ag", {250, 249, 245}},
                                                                     {"Al", {244, 245, 245}},
                                                                     {"Pt", {214, 209, 200}},
                                                                     {"Fe", {192, 189, 186}},
                                                                     {"Ti", {206, 200, 194}},
                                                                     {"Cu", copper},
                                                                     {"Au", {255, 220, 157}},
                                                                     {"Cr", {196, 197, 196}},
                                                                     {"Ni", {218, 209, 197}},
                                                                     {"Zn", {241, 240, 238}},
                                                                     {"Mg", {242, 241, 243}},
                                                                     {"Pd", {223, 218, 212}},
                                                                     {"Hg", {229, 228, 228}},
                                                                     {"Pb", {150, 152, 158}}}}; // chosen

Colour of_element(const std::string& symbol) {
    for (const auto& [element, colour] : colours)
        if (symbol == element) return colour;
    return grey;
}

std::uint8_t mixed(std::uint8_t a, std::uint8_t b, double share) {
    return static_cast<std::uint8_t>(std::lround(a + (b - a) * share));
}

Colour between(Colour a, Colour b, double share) {
    const double s = std::clamp(share, 0.0, 1.0);
    return {mixed(a.red, b.red, s), mixed(a.green, b.green, s), mixed(a.blue, b.blue, s)};
}

/// Per cent of an addition at which an alloy of copper has lost copper's own colour.
constexpr double brass_zinc = 30, white_nickel = 25, white_tin = 30, white_silver = 70;

Colour of_copper_alloy(const Metal& metal) {
    Colour colour =
        between(copper, brass, (metal.content_percent("Zn") + metal.content_percent("Al") * 3) / brass_zinc);
    colour = between(colour, of_element("Ni"), metal.content_percent("Ni") / white_nickel);
    colour = between(colour, grey, metal.content_percent("Sn") / white_tin);
    return between(colour, of_element("Ag"), metal.content_percent("Ag") / white_silver);
}

} // namespace

Colour metal_colour(const Metal& metal) {
    const auto most =
        std::max_element(metal.composition.begin(), metal.composition.end(), [&](const Portion& a, const Portion& b) {
            return metal.content_percent(a.element) < metal.content_percent(b.element);
        });
    if (most == metal.composition.end()) return grey;
    return most->element == "Cu" ? of_copper_alloy(metal) : of_element(most->element);
}

} // namespace pourbook
