#include "core/casting/mesh.hpp"

#include "core/bits.hpp"
#include "core/casting/mesh_thickness.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <unordered_map>

namespace pourbook::casting {
namespace {

struct CornerHash {
    std::size_t operator()(const Corner& c) const {
        std::uint64_t h = 0xcbf29ce484222325ULL;
        for (float x : c) h = (h ^ bits_as<std::uint32_t>(x + 0.0F)) * 0x9e3779b97f4a7c15ULL; // -0 is 0
        return static_cast<std::size_t>(h ^ (h >> 29));
    }
};

/// An edge between two numbered corners, smaller number first; forward if walked that way.
struct Edge {
    std::uint64_t ends;
    bool forward;
};

class Joined {
public:
    explicit Joined(const std::vector<Triangle>& triangles) {
        number_.reserve(triangles.size() / 2 + 4);
        edges_.reserve(3 * triangles.size());
        for (const Triangle& t : triangles) {
            const std::array<std::uint32_t, 3> n = {number_of(t[0]), number_of(t[1]), number_of(t[2])};
            for (std::size_t i = 0; i < 3; ++i) add_edge(n[i], n[(i + 1) % 3]);
        }
        std::sort(edges_.begin(), edges_.end(), [](const Edge& a, const Edge& b) { return a.ends < b.ends; });
    }

    /// The first fault in one sentence; empty for a sound mesh.
    std::string fault() const {
        std::size_t open = 0, turned = 0;
        std::uint64_t open_at = 0, turned_at = 0;
        for (std::size_t i = 0; i < edges_.size();) {
            std::size_t j = i, forward = 0;
            for (; j < edges_.size() && edges_[j].ends == edges_[i].ends; ++j) forward += edges_[j].forward ? 1 : 0;
            const std::size_t all = j - i;
            if (2 * forward != all) {
                std::size_t& count = all % 2 == 1 ? open : turned;
                if (count++ == 0) (all % 2 == 1 ? open_at : turned_at) = edges_[i].ends;
            }
            i = j;
        }
        if (open > 0)
            return "it leaks: " + std::to_string(open) + " edges without a neighbour, the first " + place(open_at) +
                   ": close the hole in the drawing program";
        if (turned > 0)
            return "neighbouring triangles are turned against each other along " + std::to_string(turned) +
                   " edges, the first " + place(turned_at) + ": unify the normals in the drawing program";
        return {};
    }

private:
    std::uint32_t number_of(const Corner& c) {
        const auto [at, fresh] = number_.try_emplace(c, static_cast<std::uint32_t>(corners_.size()));
        if (fresh) corners_.push_back(c);
        return at->second;
    }
    void add_edge(std::uint32_t a, std::uint32_t b) {
        if (a == b) return; // a triangle without area
        edges_.push_back({(static_cast<std::uint64_t>(std::min(a, b)) << 32) | std::max(a, b), a < b});
    }
    std::string place(std::uint64_t ends) const {
        std::string out;
        for (const std::size_t n :
             {static_cast<std::size_t>(ends >> 32), static_cast<std::size_t>(ends & 0xffffffffU)}) {
            const Corner& c = corners_[n];
            out += (out.empty() ? "from (" : " to (") + trimmed(c[0], 6) + ", " + trimmed(c[1], 6) + ", " +
                   trimmed(c[2], 6) + ")";
        }
        return out;
    }

    std::unordered_map<Corner, std::uint32_t, CornerHash> number_;
    std::vector<Corner> corners_;
    std::vector<Edge> edges_;
};

using Vector = std::array<double, 3>;

Vector minus(const Corner& a, const Corner& b) {
    Vector out{};
    for (std::size_t i = 0; i < 3; ++i) out[i] = static_cast<double>(a[i]) - static_cast<double>(b[i]);
    return out;
}

Vector cross(const Vector& a, const Vector& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

double dot(const Vector& a, const Vector& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/// In the file's unit.
Solid enclosed(const std::vector<Triangle>& triangles) {
    Solid s;
    const Corner origin = triangles.front()[0];
    Vector low, high;
    low.fill(std::numeric_limits<double>::max());
    high.fill(std::numeric_limits<double>::lowest());
    for (const Triangle& t : triangles) {
        s.volume_m3 += dot(minus(t[0], origin), cross(minus(t[1], origin), minus(t[2], origin))) / 6;
        const Vector normal = cross(minus(t[1], t[0]), minus(t[2], t[0]));
        s.surface_m2 += std::sqrt(dot(normal, normal)) / 2;
        for (const Corner& c : t)
            for (std::size_t i = 0; i < 3; ++i) {
                low[i] = std::min(low[i], static_cast<double>(c[i]));
                high[i] = std::max(high[i], static_cast<double>(c[i]));
            }
    }
    for (std::size_t i = 0; i < 3; ++i) s.box_m[i] = high[i] - low[i];
    return s;
}

constexpr std::size_t most_probed = 200000; // triangles whose thickness is looked for

Problem refused_mesh(const Mesh& mesh, const std::string& why) {
    return {Problem::Kind::refused, "mesh '" + mesh.name + "': " + why, 0};
}

} // namespace

Result<Solid> measured(const Mesh& mesh, double unit_m) {
    if (mesh.triangles.empty()) return refused_mesh(mesh, "it holds no triangle");
    if (mesh.triangles.size() > std::numeric_limits<std::uint32_t>::max() / 3)
        return refused_mesh(mesh, "too many triangles");
    for (const Triangle& t : mesh.triangles)
        for (const Corner& c : t)
            if (!std::isfinite(c[0]) || !std::isfinite(c[1]) || !std::isfinite(c[2]))
                return refused_mesh(mesh, "a corner is no number");
    if (const std::string fault = Joined(mesh.triangles).fault(); !fault.empty()) return refused_mesh(mesh, fault);
    Solid s = enclosed(mesh.triangles);
    const double thickness = *std::max_element(s.box_m.begin(), s.box_m.end());
    if (std::abs(s.volume_m3) <= 1e-9 * thickness * thickness * thickness)
        return refused_mesh(mesh, "it is flat and encloses nothing");
    if (s.volume_m3 < 0)
        return refused_mesh(mesh, "it is turned inside out (volume " + significant(s.volume_m3, 4) +
                                      " cubic units): flip the normals in the drawing program");
    s.volume_m3 *= unit_m * unit_m * unit_m;
    s.surface_m2 *= unit_m * unit_m;
    for (double& x : s.box_m) x *= unit_m;
    if (thickness * unit_m > longest_m || thickness * unit_m < shortest_m)
        return refused_mesh(mesh, "its longest side would be " + trimmed(thickness * unit_m, 4) +
                                      " m: is the unit right? (--stl-unit mm, in, cm or m)");
    s.wall_m = 2 * s.volume_m3 / s.surface_m2;
    s.heavy_half_m = s.modulus_m();
    s.wall_estimated = true;
    if (mesh.triangles.size() > most_probed) return s; // the time would be felt
    s.bodies = bodies_in(mesh);
    if (const auto t = thickness_of(mesh)) {
        s.wall_m = t->thinnest * unit_m;
        s.heavy_half_m = std::max(t->ball_radius * unit_m, s.modulus_m());
        s.wall_estimated = false;
        s.heavy_at = t->ball_at;
    }
    return s;
}

} // namespace pourbook::casting
