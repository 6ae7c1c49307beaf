// A closed triangle mesh: is it watertight and turned outward, what does it enclose?
//
// Corners are joined where their coordinates are equal as stored. Volume: divergence theorem, the sum over triangles of
// a . (b x c) / 6 about a point of the mesh. Every edge must be walked as often one way as the other; that also admits
// several bodies and inner voids (turned inward), and bodies that touch along an edge. Overlaps of bodies are counted
// twice. Least section and heaviest place: mesh_thickness.hpp; 2 V / A where they
// are not found or the mesh has more than 200,000 triangles.
#pragma once

#include "core/casting/shape.hpp"

#include <cstddef>
#include <vector>

namespace pourbook::casting {

using Corner = std::array<float, 3>;
using Triangle = std::array<Corner, 3>;

struct Mesh {
    std::vector<Triangle> triangles; // in the file's own unit
    std::string name;
};

/// unit_m: length of one unit of the file. Errors: refused, saying where the mesh leaks (in the file's unit), that it
/// is turned inside out or badly joined, is empty or too large.
Result<Solid> measured(const Mesh& mesh, double unit_m);

} // namespace pourbook::casting
