// A part as people write it: tube:ID:OD:LENGTH, bar:DxL, plate:LxWxT, cone:D1:D2:L, sphere:D, ring:OD:ID:L, stl:FILE.
// Sizes may be parted by ':' or 'x'; each carries its unit (25mm, 1in), or one mm, cm or in at the end serves all
// (22:28:400mm).
#pragma once

#include "core/casting/shape.hpp"
#include "core/quantity/unit.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct PartWords {
    std::optional<casting::Shape> shape; // empty: a mesh
    std::string file;                    // of the mesh
};

/// Errors: unreadable, with the word and what is expected.
Result<PartWords> part_from(const std::string& words);

/// The sizes of a shape, parted by ':' or 'x'.
std::vector<std::string> split_sizes(const std::string& text);

} // namespace pourbook
