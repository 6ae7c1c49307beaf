#include "core/casting/shape.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::casting {
namespace {

using std::numbers::pi;
double disc(double diameter_m) {
    return pi / 4 * diameter_m * diameter_m;
}

Solid hollow(double bore, double outside, double length) {
    Solid s;
    s.volume_m3 = (disc(outside) - disc(bore)) * length;
    s.surface_m2 = pi * (outside + bore) * length + 2 * (disc(outside) - disc(bore));
    s.box_m = {outside, outside, length};
    s.wall_m = std::min((outside - bore) / 2, length);
    s.heavy_half_m = s.wall_m / 2;
    if (length > (outside - bore) / 2) s.bore_m = bore; // else a washer: flat, the bore hardly counts
    return s;
}

constexpr double sharp_edge = 0.597; // heat drawn beyond its faces (freezing.hpp)

Solid bar(double diameter, double length) {
    Solid s{disc(diameter) * length,
            pi * diameter * length + 2 * disc(diameter),
            {diameter, diameter, length},
            std::min(diameter, length),
            false,
            std::min(diameter, length) / 2};
    const double r = diameter / 2; // a disc counts as a plate
    s.edges = length < diameter ? sharp_edge : (length + 4 * sharp_edge * r) / ((length + r) * (1 + 2 * r / length));
    return s;
}

Solid plate(double l, double w, double t) {
    Solid s{l * w * t, 2 * (l * w + l * t + w * t), {l, w, t}, std::min({l, w, t}), false, std::min({l, w, t}) / 2};
    s.edges = sharp_edge;
    return s;
}

/// Radius of the ball that touches the wide end and the flank.
double ball_in_cone_m(double wide_m, double narrow_m, double length) {
    if (wide_m <= narrow_m) return wide_m;
    const double tip = length * wide_m / (wide_m - narrow_m);
    return wide_m * tip / (wide_m + std::hypot(wide_m, tip));
}

/// A frustum; one end may be a point.
Solid cone(double d1, double d2, double length) {
    const double r1 = d1 / 2, r2 = d2 / 2;
    const double slant = std::hypot(length, r1 - r2);
    Solid s;
    s.volume_m3 = pi / 3 * length * (r1 * r1 + r1 * r2 + r2 * r2);
    s.surface_m2 = pi * (r1 + r2) * slant + disc(d1) + disc(d2);
    s.box_m = {std::max(d1, d2), std::max(d1, d2), length};
    s.wall_m = std::min(d1, d2) > 0 ? std::min({d1, d2, length}) : 2 * s.volume_m3 / s.surface_m2;
    s.wall_estimated = std::min(d1, d2) <= 0;
    s.heavy_half_m = std::min(ball_in_cone_m(std::max(r1, r2), std::min(r1, r2), length), length / 2);
    return s;
}

Solid sphere(double d) {
    Solid s{pi / 6 * d * d * d, pi * d * d, {d, d, d}, d, false, d / 2};
    s.edges = 1;
    return s;
}

Problem wrong(const Shape& shape, const std::string& what) {
    return {Problem::Kind::unreadable, std::string(name_of(shape.form)) + ": " + what, 0};
}

/// Place of bore and outside diameter among the sizes of a hollow form.
struct Hollow {
    std::size_t bore, outside;
};

Hollow hollow_of(Form form) {
    return form == Form::tube ? Hollow{0, 1} : Hollow{1, 0};
}

bool has_bore(Form form) {
    return form == Form::tube || form == Form::ring;
}

Result<bool> checked(const Shape& shape) {
    const auto names = size_names(shape.form);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const double x = shape.size_m[i];
        const bool point = shape.form == Form::cone && i < 2 && x == 0;
        if (!std::isfinite(x) || (x < shortest_m && !point) || x > longest_m)
            return wrong(shape, "the " + names[i] + " must be from 0.01 mm to 10 m, not " + trimmed(x * 1000, 6) +
                                    " mm (a bare number is metres)");
    }
    if (shape.form == Form::cone && shape.size_m[0] == 0 && shape.size_m[1] == 0)
        return wrong(shape, "both ends can't be points");
    if (has_bore(shape.form)) {
        const auto [bore, outside] = hollow_of(shape.form);
        if (shape.size_m[outside] - shape.size_m[bore] < 2 * shortest_m)
            return wrong(shape, "the bore must be smaller than the outside diameter");
    }
    return true;
}

} // namespace

const char* name_of(Form form) {
    static constexpr std::array names = {"tube", "bar", "plate", "cone", "sphere", "ring"};
    return names[static_cast<std::size_t>(form)];
}

std::vector<std::string> size_names(Form form) {
    switch (form) {
    case Form::tube:
        return {"bore", "outside diameter", "length"};
    case Form::bar:
        return {"diameter", "length"};
    case Form::plate:
        return {"length", "width", "thickness"};
    case Form::cone:
        return {"diameter of one end", "diameter of the other end", "length"};
    case Form::sphere:
        return {"diameter"};
    case Form::ring:
        return {"outside diameter", "bore", "length"};
    }
    return {};
}

bool is_bore(Form form, std::size_t index) {
    return has_bore(form) && index == hollow_of(form).bore;
}

Result<Solid> measured(const Shape& shape) {
    if (const auto fine = checked(shape); !fine) return fine.problem();
    const auto& s = shape.size_m;
    switch (shape.form) {
    case Form::tube:
        return hollow(s[0], s[1], s[2]);
    case Form::bar:
        return bar(s[0], s[1]);
    case Form::plate:
        return plate(s[0], s[1], s[2]);
    case Form::cone:
        return cone(s[0], s[1], s[2]);
    case Form::sphere:
        return sphere(s[0]);
    case Form::ring:
        return hollow(s[1], s[0], s[2]);
    }
    return wrong(shape, "unknown form");
}

Result<Shape> with_stock(const Shape& shape, double stock_m) {
    Shape out = shape;
    for (std::size_t i = 0; i < size_names(shape.form).size(); ++i)
        out.size_m[i] += is_bore(shape.form, i) ? -2 * stock_m : 2 * stock_m;
    if (has_bore(shape.form) && out.size_m[hollow_of(shape.form).bore] < shortest_m)
        return Problem{Problem::Kind::refused, "the machining stock closes the bore: cast it solid (bar) and drill it",
                       0};
    return out;
}

Shape scaled(const Shape& shape, double factor) {
    Shape out = shape;
    for (double& x : out.size_m) x *= factor;
    return out;
}

} // namespace pourbook::casting
