#include "core/casting/mesh_thickness.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace pourbook::casting {
namespace {

using Place = std::array<double, 3>;

constexpr double rays_times_triangles = 4e7; // bounds the time to some tenths of a second
constexpr double share_left_out = 0.005;     // of the surface, at the thin end

Place place_of(const Corner& c) {
    return {static_cast<double>(c[0]), static_cast<double>(c[1]), static_cast<double>(c[2])};
}

Place along(const Place& a, double t, const Place& d) {
    return {a[0] + t * d[0], a[1] + t * d[1], a[2] + t * d[2]};
}

Place from_to(const Place& a, const Place& b) {
    return {b[0] - a[0], b[1] - a[1], b[2] - a[2]};
}

double product(const Place& a, const Place& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Place normal_to(const Place& a, const Place& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

struct Facet {
    Place a, ab, ac, normal, middle; // normal: unit length, outward
    double area = 0;

    explicit Facet(const Triangle& t)
        : a(place_of(t[0])), ab(from_to(a, place_of(t[1]))), ac(from_to(a, place_of(t[2]))), normal(normal_to(ab, ac)) {
        const double length = std::sqrt(product(normal, normal));
        area = length / 2;
        for (std::size_t i = 0; i < 3; ++i) {
            normal[i] = length > 0 ? normal[i] / length : 0;
            middle[i] = a[i] + (ab[i] + ac[i]) / 3;
        }
    }

    /// Distance along a ray to this facet (Moller and Trumbore, J. Graphics Tools 2, 1997, 21), infinite if it misses.
    double hit(const Place& from, const Place& direction) const {
        constexpr double none = std::numeric_limits<double>::infinity();
        const Place p = normal_to(direction, ac);
        const double det = product(ab, p);
        if (std::abs(det) < 1e-300) return none;
        const Place s = from_to(a, from);
        const double u = product(s, p) / det;
        if (u < 0 || u > 1) return none;
        const Place q = normal_to(s, ab);
        const double v = product(direction, q) / det;
        if (v < 0 || u + v > 1) return none;
        return product(ac, q) / det;
    }

    /// Squared distance of a place to this facet.
    double distance2(const Place& p) const {
        const Place ap = from_to(a, p);
        const double d1 = product(ab, ap), d2 = product(ac, ap);
        const double bb = product(ab, ab), bc = product(ab, ac), cc = product(ac, ac);
        const double det = bb * cc - bc * bc;
        double u = det > 0 ? (cc * d1 - bc * d2) / det : 0, v = det > 0 ? (bb * d2 - bc * d1) / det : 0;
        if (!(u >= 0 && v >= 0 && u + v <= 1 && det > 0)) return edges2(p);
        const Place foot = along(along(a, u, ab), v, ac);
        const Place to = from_to(foot, p);
        return product(to, to);
    }

    double edges2(const Place& p) const {
        const Place b = along(a, 1, ab), c = along(a, 1, ac);
        const auto edge2 = [&](const Place& from, const Place& d) {
            const double length2 = product(d, d);
            const double t = length2 > 0 ? std::clamp(product(from_to(from, p), d) / length2, 0.0, 1.0) : 0;
            const Place to = from_to(along(from, t, d), p);
            return product(to, to);
        };
        return std::min({edge2(a, ab), edge2(a, ac), edge2(b, from_to(b, c))});
    }
};

struct Ray {
    double length = 0, area = 0;
    Place middle{};
};

class Probe {
public:
    explicit Probe(const Mesh& mesh) {
        facets_.reserve(mesh.triangles.size());
        for (const Triangle& t : mesh.triangles) facets_.emplace_back(t);
    }

    std::vector<Ray> rays(std::size_t most) const {
        const double all = static_cast<double>(facets_.size());
        const auto bound = static_cast<std::size_t>(std::max(50.0, rays_times_triangles / all));
        const std::size_t step = std::max<std::size_t>(1, facets_.size() / std::min(most, bound));
        std::vector<Ray> out;
        for (std::size_t i = 0; i < facets_.size(); i += step) {
            const Facet& f = facets_[i];
            if (!(f.area > 0)) continue;
            const Place inward = {-f.normal[0], -f.normal[1], -f.normal[2]};
            const double from_skin = 1e-6 * std::sqrt(f.area);
            double nearest = std::numeric_limits<double>::infinity();
            for (std::size_t j = 0; j < facets_.size(); ++j)
                if (const double t = j == i ? 0 : facets_[j].hit(f.middle, inward); t > from_skin)
                    nearest = std::min(nearest, t);
            if (std::isfinite(nearest)) out.push_back({nearest, f.area, along(f.middle, nearest / 2, inward)});
        }
        return out;
    }

    double to_wall(const Place& p) const {
        double best = std::numeric_limits<double>::infinity();
        for (const Facet& f : facets_) best = std::min(best, f.distance2(p));
        return std::sqrt(best);
    }

private:
    std::vector<Facet> facets_;
};

/// Steps along the axes, halved until they are a two-thousandth of the radius.
void climb(const Probe& probe, Place& at, double& radius) {
    for (double step = radius / 2; step > radius / 2000; step /= 2)
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (const double sign : {-1.0, 1.0}) {
                Place to = at;
                to[axis] += sign * step;
                const double there = probe.to_wall(to);
                if (there <= radius || there > radius + step) continue; // farther than the step: outside the body
                at = to;
                radius = there;
            }
}

} // namespace

std::optional<Thickness> thickness_of(const Mesh& mesh, std::size_t most_points) {
    const Probe probe(mesh);
    std::vector<Ray> rays = probe.rays(most_points);
    if (rays.empty()) return std::nullopt;
    std::sort(rays.begin(), rays.end(), [](const Ray& a, const Ray& b) { return a.length < b.length; });
    const double all =
        std::accumulate(rays.begin(), rays.end(), 0.0, [](double s, const Ray& r) { return s + r.area; });
    Thickness t;
    double passed = 0;
    for (const Ray& r : rays)
        if ((passed += r.area) >= share_left_out * all) {
            t.thinnest = r.length;
            break;
        }
    constexpr int most_tries = 60;
    int tries = 0;
    for (auto r = rays.rbegin(); r != rays.rend() && r->length / 2 > t.ball_radius && tries < most_tries;
         ++r, ++tries) {
        const double radius = std::min(probe.to_wall(r->middle), r->length / 2);
        if (radius <= t.ball_radius) continue;
        t.ball_radius = radius;
        t.ball_at = r->middle;
    }
    climb(probe, t.ball_at, t.ball_radius);
    return t;
}

std::size_t bodies_in(const Mesh& mesh) {
    std::map<Corner, std::size_t> number;
    std::vector<std::size_t> parent;
    const auto root = [&](std::size_t i) {
        while (parent[i] != i) i = parent[i] = parent[parent[i]];
        return i;
    };
    for (const Triangle& t : mesh.triangles) {
        std::array<std::size_t, 3> n{};
        for (std::size_t i = 0; i < 3; ++i) {
            const auto [at, fresh] = number.try_emplace(t[i], parent.size());
            if (fresh) parent.push_back(at->second);
            n[i] = at->second;
        }
        parent[root(n[1])] = root(n[0]);
        parent[root(n[2])] = root(n[0]);
    }
    std::size_t bodies = 0;
    for (std::size_t i = 0; i < parent.size(); ++i) bodies += root(i) == i ? 1 : 0;
    return bodies;
}

} // namespace pourbook::casting
