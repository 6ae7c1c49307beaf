#include "charts/magnet_drawing.hpp"

#include <cmath>
#include <numbers>
#include <utility>

namespace pourbook {
namespace {

constexpr Colour north_pole{0xD5, 0x5E, 0x00}, south_pole{0x00, 0x72, 0xB2}; // of the series (palette.hpp)
constexpr Colour on_north{0, 0, 0}, on_south{0xFF, 0xFF, 0xFF};              // letters that stand out 4.5:1

struct Poles {
    Colour upper, lower;
    const char *upper_name, *lower_name;
    Colour upper_letter, lower_letter;
};

void add_half_disc(Scene& scene, Spot centre, double radius, double side, Colour colour) {
    constexpr int steps = 24;
    std::vector<Spot> spots;
    for (int i = 0; i <= steps; ++i) {
        const double angle = std::numbers::pi * i / steps;
        spots.push_back({centre.x + radius * std::cos(angle), centre.y + side * radius * std::sin(angle)});
    }
    scene.parts.push_back(Polygon{spots, colour});
}

void add_piece(Scene& scene, const eddy::Magnet& m, Spot at, double scale, const Poles& poles) {
    const double r = m.outer_radius_m * scale, half = m.length_m / 2 * scale;
    const double hole = m.shape == eddy::Shape::ring ? m.inner_radius_m * scale : 0;
    if (m.shape == eddy::Shape::sphere) {
        add_half_disc(scene, at, r, -1, poles.upper);
        add_half_disc(scene, at, r, 1, poles.lower);
    } else {
        for (const double side : {-1.0, 1.0}) {
            const double x = side < 0 ? at.x - r : at.x + hole;
            scene.parts.push_back(Rectangle{{x, at.y - half, r - hole, half}, poles.upper});
            scene.parts.push_back(Rectangle{{x, at.y, r - hole, half}, poles.lower});
        }
    }
    const double letter = hole > 0 ? at.x - (r + hole) / 2 : at.x, room = text_size(TextStyle::label);
    if (half < room || r - hole < room / 2) return;
    scene.parts.push_back(Text{{letter, at.y - half / 2}, poles.upper_name, poles.upper_letter, Anchor::middle});
    scene.parts.push_back(Text{{letter, at.y + half / 2}, poles.lower_name, poles.lower_letter, Anchor::middle});
}

} // namespace

void add_magnet(Scene& scene, const eddy::Magnet& magnet, Spot centre, double points_per_m) {
    const Poles upright{north_pole, south_pole, "N", "S", on_north, on_south},
        turned{south_pole, north_pole, "S", "N", on_south, on_north};
    for (int i = 0; i < magnet.stack.pieces; ++i)
        add_piece(scene, magnet, {centre.x, centre.y + magnet.place_m(i) * points_per_m}, points_per_m,
                  magnet.sign(i) > 0 ? upright : turned);
}

} // namespace pourbook
