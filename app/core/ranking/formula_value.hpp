// Values of a formula's tree; plain IEEE arithmetic, so an impossible one comes out as NaN or infinity.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/ranking/formula.hpp"
#include "core/ranking/formula_node.hpp"

namespace pourbook {

/// values[i] stands for the name with index i, in SI.
double number_of(const FormulaNode& n, const std::vector<double>& values);

/// The same for many samples at once: columns[i][s] is name i in sample s.
std::vector<double> numbers_of(const FormulaNode& n, const Columns& columns, std::size_t samples);

/// Of a condition's tree.
bool truth_of(const FormulaNode& n, const std::vector<double>& values, const Metal& metal);

} // namespace pourbook
