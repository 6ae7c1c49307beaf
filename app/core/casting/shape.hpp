// Parts by shape: volume, surface, bounding box, least section. Exact elementary geometry; lengths in metres.
#pragma once

#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace pourbook::casting {

constexpr double shortest_m = 1e-5, longest_m = 10; // of a size of a part

enum class Form { tube, bar, plate, cone, sphere, ring };

/// Sizes in the order of size_names(form).
struct Shape {
    Form form = Form::bar;
    std::array<double, 3> size_m{};
};

/// What the geometry of a part gives, whatever it came from.
struct Solid {
    double volume_m3 = 0;
    double surface_m2 = 0;
    std::array<double, 3> box_m{};
    double wall_m = 0;           // least section
    bool wall_estimated = false; // 2 V / A of a mesh instead of a drawn thickness
    double heavy_half_m = 0;     // half the thickness of the heaviest place: radius of the largest ball inside
    double bore_m = 0;           // diameter of a bore that a core fills, 0: none
    std::size_t bodies = 1;      // of a mesh
    double edges = 0.75;         // freezing.hpp; a mesh or cone counts between ball and cube
    std::optional<std::array<double, 3>> heavy_at = {}; // of a mesh: where the heaviest place is, in the file's unit

    /// Casting modulus V / A, all surfaces cooling.
    double modulus_m() const { return volume_m3 / surface_m2; }
};

const char* name_of(Form form);
/// "bore", "outside diameter", "length" ... as many as the form has.
std::vector<std::string> size_names(Form form);
/// A hollow size, which a core holds: it grows smaller with stock and tolerance.
bool is_bore(Form form, std::size_t index);

/// Range: every length from 10 micrometres to 10 metres; a bore smaller than the outside.
/// Errors: unreadable, naming the size.
Result<Solid> measured(const Shape& shape);

/// Each outside face moved outward and each bore inward by the stock (machining allowance on a face). A bore that
/// closes is an error (refused).
Result<Shape> with_stock(const Shape& shape, double stock_m);

/// Every length times the factor.
Shape scaled(const Shape& shape, double factor);

} // namespace pourbook::casting
