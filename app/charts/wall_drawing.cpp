#include "charts/wall_drawing.hpp"

namespace pourbook {
namespace {

/// From one place across to another, at the upper end and at the lower.
void add_strip(Scene& scene, const eddy::WallOutline& o, const WallPlace& place, double left, double right,
               double lower_left, double lower_right, Colour colour) {
    const double top = place.mouth.y + o.from_m * place.along, height = (o.to_m - o.from_m) * place.along;
    const auto x = [&](double radius_m) { return place.mouth.x + radius_m * place.across; };
    if (o.tapers())
        scene.parts.push_back(Polygon{
            {{x(left), top}, {x(right), top}, {x(lower_right), top + height}, {x(lower_left), top + height}}, colour});
    else
        scene.parts.push_back(Rectangle{{x(left), top, x(right) - x(left), height}, colour});
}

} // namespace

void add_wall(Scene& scene, const eddy::WallOutline& o, const WallPlace& place, Colour colour) {
    add_strip(scene, o, place, -o.upper.outer_radius_m, -o.upper.inner_radius_m, -o.lower.outer_radius_m,
              -o.lower.inner_radius_m, colour);
    add_strip(scene, o, place, o.upper.inner_radius_m, o.upper.outer_radius_m, o.lower.inner_radius_m,
              o.lower.outer_radius_m, colour);
}

void add_bore(Scene& scene, const eddy::WallOutline& o, const WallPlace& place, Colour colour) {
    add_strip(scene, o, place, -o.upper.inner_radius_m, o.upper.inner_radius_m, -o.lower.inner_radius_m,
              o.lower.inner_radius_m, colour);
}

} // namespace pourbook
