#include "core/casting/mesh.hpp"
#include "importers/mesh/read_stl.hpp"

#include <catch2/catch.hpp>

#include <bit>
#include <chrono>
#include <cmath>
#include <numbers>
#include <sstream>

using namespace pourbook;
using namespace pourbook::casting;

namespace {

using Quad = std::array<Corner, 4>;

void add_quad(Mesh& m, const Quad& q) {
    m.triangles.push_back({q[0], q[1], q[2]});
    m.triangles.push_back({q[0], q[2], q[3]});
}

Mesh cube(float side, float at = 0) {
    Mesh m;
    m.name = "cube";
    const float a = at, b = at + side;
    add_quad(m, {{{a, a, a}, {a, b, a}, {b, b, a}, {b, a, a}}});
    add_quad(m, {{{a, a, b}, {b, a, b}, {b, b, b}, {a, b, b}}});
    add_quad(m, {{{a, a, a}, {b, a, a}, {b, a, b}, {a, a, b}}});
    add_quad(m, {{{a, b, a}, {a, b, b}, {b, b, b}, {b, b, a}}});
    add_quad(m, {{{a, a, a}, {a, a, b}, {a, b, b}, {a, b, a}}});
    add_quad(m, {{{b, a, a}, {b, b, a}, {b, b, b}, {b, a, b}}});
    return m;
}

/// A tube of n flat sides.
Mesh tube(float bore, float outside, float length, int n) {
    Mesh m;
    m.name = "tube";
    const auto at = [&](float d, int i, float z) {
        const double angle = 2 * std::numbers::pi * (i % n) / n;
        return Corner{static_cast<float>(d / 2 * std::cos(angle)), static_cast<float>(d / 2 * std::sin(angle)), z};
    };
    for (int i = 0; i < n; ++i) {
        add_quad(m, {at(outside, i, 0), at(outside, i + 1, 0), at(outside, i + 1, length), at(outside, i, length)});
        add_quad(m, {at(bore, i + 1, 0), at(bore, i, 0), at(bore, i, length), at(bore, i + 1, length)});
        add_quad(m, {at(bore, i, length), at(outside, i, length), at(outside, i + 1, length), at(bore, i + 1, length)});
        add_quad(m, {at(outside, i, 0), at(bore, i, 0), at(bore, i + 1, 0), at(outside, i + 1, 0)});
    }
    return m;
}

std::string binary(const Mesh& m) {
    std::string out = "solid as some programs begin even binary files";
    out.resize(80, ' ');
    const auto add = [&](std::uint32_t x) {
        for (int i = 0; i < 4; ++i) out += static_cast<char>((x >> (8 * i)) & 0xff);
    };
    add(static_cast<std::uint32_t>(m.triangles.size()));
    for (const Triangle& t : m.triangles) {
        for (int i = 0; i < 3; ++i) add(0);
        for (const Corner& c : t)
            for (float x : c) add(std::bit_cast<std::uint32_t>(x));
        out += std::string(2, '\0');
    }
    return out;
}

std::string text(const Mesh& m) {
    std::ostringstream out;
    out.precision(9);
    out << "solid part\n";
    for (const Triangle& t : m.triangles) {
        out << " facet normal 0 0 0\n  outer loop\n";
        for (const Corner& c : t) out << "   vertex " << c[0] << " " << c[1] << " " << c[2] << "\r\n";
        out << "  endloop\n endfacet\n";
    }
    out << "endsolid part\n";
    return out.str();
}

Result<Mesh> read(const std::string& content, const MeshProgress& progress = {}) {
    std::istringstream in(content);
    return read_stl(in, "part.stl", progress);
}

std::string fault(const Mesh& m) {
    const Result<Solid> s = measured(m, 0.001);
    return s ? "" : s.problem().text;
}

} // namespace

TEST_CASE("a cube and a tube by mesh: exact volume, surface and box") {
    const Result<Solid> c = measured(cube(20), 0.001);
    REQUIRE(c);
    CHECK(c->volume_m3 == Approx(8e-6).epsilon(1e-12));
    CHECK(c->surface_m2 == Approx(2.4e-3).epsilon(1e-12));
    CHECK(c->box_m[1] == Approx(0.02));
    // A tube of n flat sides holds n/2 sin(2 pi/n) (R^2 - r^2) L (law: area of the regular polygon).
    const int n = 96;
    const Result<Solid> t = measured(tube(12, 16, 100, n), 0.001);
    REQUIRE(t);
    CHECK(t->volume_m3 == Approx(n / 2.0 * std::sin(2 * std::numbers::pi / n) * (64 - 36) * 100 * 1e-9).epsilon(1e-6));
    CHECK(t->wall_m == Approx(0.002).epsilon(0.01));
    CHECK(t->heavy_half_m == Approx(0.001).epsilon(0.02));
    CHECK(!t->wall_estimated);
    CHECK(measured(cube(1), 0.0254)->volume_m3 == Approx(std::pow(0.0254, 3)));
}

TEST_CASE("a mesh that encloses nothing sound is refused, saying where") {
    Mesh broken = cube(20);
    broken.triangles.erase(broken.triangles.begin() + 4);
    CHECK(fault(broken).find("it leaks: 3 edges without a neighbour, the first from (") != std::string::npos);
    Mesh turned = cube(20);
    std::swap(turned.triangles[3][0], turned.triangles[3][1]);
    CHECK(fault(turned).find("turned against each other along 3 edges") != std::string::npos);
    Mesh inside_out = cube(20);
    for (Triangle& t : inside_out.triangles) std::swap(t[0], t[1]);
    CHECK(fault(inside_out).find("inside out") != std::string::npos);
    CHECK(fault(Mesh{}).find("no triangle") != std::string::npos);
    Mesh flat;
    flat.triangles = {{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}}, {{{0, 0, 0}, {0, 1, 0}, {1, 0, 0}}}};
    CHECK(fault(flat).find("flat") != std::string::npos);
    CHECK(measured(cube(20), 1.0).problem().text.find("is the unit right?") != std::string::npos);
    CHECK(measured(broken, 0.001).problem().kind == Problem::Kind::refused);
}

TEST_CASE("a thin fin on a block: the fin is the thinnest wall, the block's middle the heaviest place") {
    // Two bodies in one file: a cube of 20 and a plate of 1 x 20 x 20 beside it.
    Mesh both = cube(20);
    for (const Triangle& t : cube(20, 40).triangles) {
        Triangle flat = t;
        for (Corner& c : flat) c[0] = c[0] > 50 ? 41.0F : 40.0F;
        both.triangles.push_back(flat);
    }
    const auto s = measured(both, 0.001);
    REQUIRE(s);
    CHECK(s->bodies == 2);
    CHECK(s->wall_m == Approx(0.001));
    CHECK(s->heavy_half_m == Approx(0.010).epsilon(0.005));
    REQUIRE(s->heavy_at);
    for (const double x : *s->heavy_at) CHECK(x == Approx(10).margin(0.2));
}

TEST_CASE("several bodies add, a void turned inward subtracts") {
    Mesh two = cube(20);
    const Mesh other = cube(10, 40);
    two.triangles.insert(two.triangles.end(), other.triangles.begin(), other.triangles.end());
    CHECK(measured(two, 0.001)->volume_m3 == Approx(9e-6));
    Mesh hollow = cube(20);
    for (Triangle t : cube(10, 5).triangles) {
        std::swap(t[0], t[1]);
        hollow.triangles.push_back(t);
    }
    CHECK(measured(hollow, 0.001)->volume_m3 == Approx(7e-6));
}

TEST_CASE("binary and text files give the same mesh") {
    const Mesh drawn = tube(12, 16, 100, 24);
    for (const std::string& content : {binary(drawn), text(drawn)}) {
        const Result<Mesh> m = read(content);
        REQUIRE(m);
        CHECK(m->triangles == drawn.triangles);
    }
}

TEST_CASE("faulty files are named with their line or size") {
    CHECK(read("").problem().text.find("empty") != std::string::npos);
    CHECK(read("hello").problem().text.find("neither") != std::string::npos);
    CHECK(read(binary(cube(20)).substr(0, 300)).problem().text.find("line 1") != std::string::npos); // begins "solid"
    std::string cut = binary(cube(20));
    cut.replace(0, 5, "part ");
    cut.resize(300);
    CHECK(read(cut).problem().text.find("announces 12 triangles (684 bytes) and has 300 bytes") != std::string::npos);
    CHECK(read("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 x\n").problem().text.find("line 4") !=
          std::string::npos);
    CHECK(read("solid a\nvertex 0 0 0\nendfacet\n").problem().text.find("a triangle with 1 corners") !=
          std::string::npos);
    CHECK(read(text(cube(20)).substr(0, 200)).problem().kind == Problem::Kind::unreadable);
    CHECK(!read_stl_file("/nowhere/part.stl"));
}

TEST_CASE("a million triangles in one pass, with progress that can stop it") {
    const Mesh drawn = tube(12, 16, 100, 125000);
    REQUIRE(drawn.triangles.size() == 1000000);
    const std::string content = binary(drawn);
    double last = -1;
    int calls = 0;
    const auto begin = std::chrono::steady_clock::now();
    const Result<Mesh> m = read(content, [&](double share) {
        CHECK(share > last);
        last = share;
        ++calls;
        return true;
    });
    REQUIRE(m);
    const Result<Solid> s = measured(*m, 0.001);
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - begin;
    REQUIRE(s);
    CHECK(last == Approx(1));
    CHECK(calls >= 50);
    CHECK(s->volume_m3 == Approx(std::numbers::pi * (64 - 36) * 100 * 1e-9).epsilon(1e-4));
    WARN("a million triangles read and checked in " << seconds.count() << " s");
    const Result<Mesh> stopped = read(content, [](double share) { return share < 0.3; });
    REQUIRE(!stopped);
    CHECK(stopped.problem().text.find("stopped") != std::string::npos);
}
