#include "core/eddy/symmetric_eigen.hpp"

#include <cmath>

namespace pourbook::eddy {
namespace {

/// Rows p and q of a matrix turned into each other.
void rotate_rows(double* p, double* q, std::size_t size, double c, double s) {
    for (std::size_t j = 0; j < size; ++j) {
        const double x = p[j], y = q[j];
        p[j] = c * x - s * y;
        q[j] = s * x + c * y;
    }
}

void rotate_columns(std::vector<double>& a, std::size_t size, std::size_t p, std::size_t q, double c, double s) {
    for (std::size_t i = 0; i < size; ++i) {
        double& x = a[i * size + p];
        double& y = a[i * size + q];
        const double before = x;
        x = c * x - s * y;
        y = s * before + c * y;
    }
}

double off_diagonal(const std::vector<double>& a, std::size_t size) {
    double sum = 0;
    for (std::size_t i = 0; i < size; ++i)
        for (std::size_t j = 0; j < i; ++j) sum += a[i * size + j] * a[i * size + j];
    return sum;
}

} // namespace

SymmetricEigen symmetric_eigen(std::vector<double> a, std::size_t n) {
    SymmetricEigen e;
    e.size = n;
    e.vectors.assign(n * n, 0);
    double trace = 0;
    for (std::size_t i = 0; i < n; ++i) {
        e.vectors[i * n + i] = 1;
        trace += std::abs(a[i * n + i]);
    }
    const double small = 1e-11 * trace / static_cast<double>(n);
    for (int sweep = 0; sweep < 30 && off_diagonal(a, n) > small * small; ++sweep)
        for (std::size_t p = 0; p < n; ++p)
            for (std::size_t q = p + 1; q < n; ++q) {
                const double apart = a[p * n + q];
                if (std::abs(apart) < small / static_cast<double>(n)) continue;
                const double half = (a[q * n + q] - a[p * n + p]) / (2 * apart);
                const double t = (half >= 0 ? 1 : -1) / (std::abs(half) + std::sqrt(half * half + 1));
                const double c = 1 / std::sqrt(t * t + 1), s = t * c;
                rotate_rows(&a[p * n], &a[q * n], n, c, s);
                rotate_columns(a, n, p, q, c, s);
                rotate_rows(&e.vectors[p * n], &e.vectors[q * n], n, c, s);
            }
    for (std::size_t i = 0; i < n; ++i) e.values.push_back(a[i * n + i]);
    return e;
}

} // namespace pourbook::eddy
