#include "charts/marker.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

constexpr std::size_t shapes = 6;

/// Corners and turn in degrees of each shape but the circle.
struct Corners {
    int count;
    double turn;
    double size; // so that all shapes look equally heavy
};
constexpr std::array<Corners, shapes> corners = {Corners{0, 0, 1},   Corners{4, 45, 1.25}, Corners{3, -90, 1.35},
                                                 Corners{4, 0, 1.3}, Corners{3, 90, 1.35}, Corners{6, 0, 1.15}};

} // namespace

void add_marker(Scene& scene, std::size_t slot, Spot centre, double radius, Colour colour, bool filled) {
    const Corners& shape = corners[slot % shapes];
    if (shape.count == 0) {
        scene.parts.push_back(Circle{centre, radius, colour, filled ? 0.0 : 1.5});
        return;
    }
    std::vector<Spot> spots;
    for (int i = 0; i < shape.count; ++i) {
        const double angle = (shape.turn + 360.0 * i / shape.count) * std::numbers::pi / 180;
        spots.push_back(
            {centre.x + shape.size * radius * std::cos(angle), centre.y + shape.size * radius * std::sin(angle)});
    }
    if (filled) {
        scene.parts.push_back(Polygon{spots, colour});
        return;
    }
    spots.push_back(spots.front());
    scene.parts.push_back(Polyline{spots, colour, 1.5});
}

} // namespace pourbook
