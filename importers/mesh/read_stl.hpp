// Stereolithography files (STL), binary and text, read in one pass.
//
// Binary: 80 bytes, the number of triangles as 32-bit little-endian, 50 bytes a triangle (normal, three corners as
// 32-bit floats, two bytes unused). Text: "solid", "facet normal", "outer loop", three "vertex x y z", "endloop",
// "endfacet", "endsolid". A file is binary if its size fits its number of triangles, whatever its first word. Normals
// are not read: the order of the corners decides. STL carries no unit.
#pragma once

#include "core/casting/mesh.hpp"

#include <functional>
#include <iosfwd>
#include <string>

namespace pourbook {

/// Called with the share read, 0 to 1, about once in a hundredth; false stops the reading.
using MeshProgress = std::function<bool(double)>;

/// Errors: unreadable, with the line (text) or the sizes (binary), or that the reading was stopped.
Result<casting::Mesh> read_stl(std::istream& in, const std::string& name, const MeshProgress& progress = {});

/// Errors: unreadable; also where the file can't be opened.
Result<casting::Mesh> read_stl_file(const std::string& path, const MeshProgress& progress = {});

} // namespace pourbook
