// Eigenvalues and eigenvectors of a small dense symmetric matrix, by Jacobi's rotations (Golub and Van Loan, Matrix
// Computations, section 8.5). Work of about 50 n^3; meant for n up to 100.
#pragma once

#include <cstddef>
#include <vector>

namespace pourbook::eddy {

struct SymmetricEigen {
    std::size_t size = 0;
    std::vector<double> values;
    std::vector<double> vectors; // row k is the unit vector that belongs to values[k]
};

/// The matrix by rows, size * size.
SymmetricEigen symmetric_eigen(std::vector<double> matrix, std::size_t size);

} // namespace pourbook::eddy
