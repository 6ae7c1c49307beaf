#include "charts/part_sketch.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

constexpr Colour upper_pole{0xD5, 0x5E, 0x00}, lower_pole{0x00, 0x72, 0xB2}; // as magnets are drawn
constexpr int sketch_steps = 32;                                             // of a circle

class PartSketch {
public:
    PartSketch(const casting::Shape& shape, bool poles, const Canvas& canvas)
        : shape_(shape), poles_(poles), canvas_(canvas), metal_(canvas.palette.dim) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        using casting::Form;
        const auto [a, b, c] = shape_.size_m;
        switch (shape_.form) {
        case Form::tube:
            add_walls(a, b, c);
            break;
        case Form::ring:
            add_walls(b, a, c);
            break;
        case Form::bar:
            add_solid(a, a, b);
            break;
        case Form::cone:
            add_solid(b, a, c);
            break;
        case Form::plate:
            add_solid(a, a, b);
            break;
        case Form::sphere:
            add_ball(a);
            break;
        }
        return std::move(scene_);
    }

private:
    Spot middle() const { return {canvas_.width / 2, canvas_.height / 2}; }

    /// Points a metre, so that it fits.
    double scale(double wide_m, double high_m) const {
        return std::min((canvas_.width - 2) / wide_m, (canvas_.height - 2) / high_m);
    }

    /// Between two lines from the upper edge to the lower one; a magnet's poles meet half way.
    void add_sides(double upper_left, double upper_right, double lower_left, double lower_right, double half) {
        const Spot m = middle();
        const double left = (upper_left + lower_left) / 2, right = (upper_right + lower_right) / 2;
        const auto piece = [&](double l1, double r1, double y1, double l2, double r2, double y2, Colour colour) {
            scene_.parts.push_back(Polygon{
                {{m.x + l1, m.y + y1}, {m.x + r1, m.y + y1}, {m.x + r2, m.y + y2}, {m.x + l2, m.y + y2}}, colour});
        };
        if (!poles_) return piece(upper_left, upper_right, -half, lower_left, lower_right, half, metal_);
        piece(upper_left, upper_right, -half, left, right, 0, upper_pole);
        piece(left, right, 0, lower_left, lower_right, half, lower_pole);
    }

    void add_solid(double upper_m, double lower_m, double high_m) {
        const double s = scale(std::max(upper_m, lower_m), high_m);
        add_sides(-upper_m * s / 2, upper_m * s / 2, -lower_m * s / 2, lower_m * s / 2, high_m * s / 2);
    }

    void add_walls(double bore_m, double outside_m, double high_m) {
        const double s = scale(outside_m, high_m), in = bore_m * s / 2, out = std::max(outside_m * s / 2, in + 1),
                     half = high_m * s / 2;
        add_sides(-out, -in, -out, -in, half);
        add_sides(in, out, in, out, half);
        if (!poles_)
            scene_.parts.push_back(Polyline{
                {{middle().x, middle().y - half}, {middle().x, middle().y + half}}, metal_.with_alpha(140), 1, true});
    }

    void add_ball(double diameter_m) {
        const double radius = diameter_m * scale(diameter_m, diameter_m) / 2;
        for (const double side : {-1.0, 1.0}) {
            std::vector<Spot> spots;
            for (int i = 0; i <= sketch_steps; ++i) {
                const double angle = std::numbers::pi * i / sketch_steps;
                spots.push_back({middle().x + radius * std::cos(angle), middle().y + side * radius * std::sin(angle)});
            }
            scene_.parts.push_back(Polygon{spots, !poles_ ? metal_ : side < 0 ? upper_pole : lower_pole});
        }
    }

    const casting::Shape& shape_;
    bool poles_;
    const Canvas& canvas_;
    Colour metal_;
    Scene scene_;
};

} // namespace

Scene part_sketch(const casting::Shape& shape, bool poles, const Canvas& canvas) {
    return PartSketch(shape, poles, canvas).run();
}

} // namespace pourbook
