// The standard uncertainty taken where a source states none: the dictionary's default of the property, times a factor
// for the kind of source (our estimate; the table in db/README.md gives the products, beside what critical evaluations
// state of their own figures).
#pragma once

#include "core/materials/catalogue.hpp"

namespace pourbook {

/// 0.25 (standard, evaluated review) to 2.5 (remembered). A figure that is not read counts as remembered, but for one
/// computed from a printed equation.
double source_factor(const Reference* reference, HowKnown how_known);

} // namespace pourbook
