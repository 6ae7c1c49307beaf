#include "charts/palette.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace pourbook;

namespace {

/// Relative luminance and contrast ratio as defined by the Web Content Accessibility Guidelines 2.1 (W3C, 2018).
double part(std::uint8_t value) {
    const double c = value / 255.0;
    return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
double luminance(Colour c) {
    return 0.2126 * part(c.red) + 0.7152 * part(c.green) + 0.0722 * part(c.blue);
}
double contrast(Colour a, Colour b) {
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

} // namespace

TEST_CASE("the measure of contrast gives the ends of the guidelines") {
    CHECK(contrast({0, 0, 0}, {255, 255, 255}) == Approx(21));                      // WCAG 2.1: from 1 to 21
    CHECK(contrast({119, 119, 119}, {255, 255, 255}) == Approx(4.48).margin(0.01)); // #777 on white, from memory
}

TEST_CASE("every colour stands out from every ground it is drawn on") {
    for (const bool dark : {true, false}) {
        const Palette& p = palette(dark);
        for (const Colour ground : {p.ground, p.raised, p.pressed}) {
            for (const Colour words : {p.ink, p.dim, p.accent, p.warning}) CHECK(contrast(words, ground) >= 4.5);
            for (const Colour drawn : p.series) CHECK(contrast(drawn, ground) >= 3);
            CHECK(contrast(p.other, ground) >= 3);
            CHECK(contrast(p.edge, ground) >= 3);
        }
    }
}

TEST_CASE("no two colours of the series look alike") {
    for (const bool dark : {true, false}) {
        const auto& s = palette(dark).series;
        for (std::size_t i = 0; i < s.size(); ++i)
            for (std::size_t j = i + 1; j < s.size(); ++j) {
                const double apart = std::hypot(s[i].red - s[j].red, s[i].green - s[j].green, s[i].blue - s[j].blue);
                CAPTURE(dark, i, j);
                CHECK(apart > 60);
            }
    }
}
