// A second model of freezing, apart from the program's: explicit finite differences on the enthalpy over cells and
// links; slab, long bar and ball in one dimension, a cube with its shell in three (an eighth of it; the shell rounded
// about edges and corners, as dipping makes it). Same stated assumptions as core/casting/freezing.hpp.
#pragma once

#include "core/casting/freezing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace pourbook::testing {

class SecondFreezing {
public:
    explicit SecondFreezing(const casting::FreezingCase& c) : c_(c) {}

    /// power 0 slab, 1 long bar, 2 ball. Returns seconds until the last place is solid.
    double line_s(double half_m, int power, int metal = 6, int mould = 24) {
        std::vector<double> edge = {0};
        for (int i = 1; i <= metal; ++i) edge.push_back(half_m * i / metal);
        for (int i = 1; i <= mould; ++i) edge.push_back(half_m + c_.wall_m * std::pow(1.0 * i / mould, 1.3));
        for (std::size_t i = 0; i + 1 < edge.size(); ++i) {
            const double volume = (std::pow(edge[i + 1], power + 1) - std::pow(edge[i], power + 1)) / (power + 1);
            add(volume, static_cast<int>(i) < metal);
            if (i > 0)
                links_.push_back(
                    {i - 1, i, std::pow(edge[i], power), (edge[i] - edge[i - 1]) / 2, (edge[i + 1] - edge[i]) / 2});
        }
        const std::size_t last = cells_.size() - 1;
        cells_[last].outside_m2 = std::pow(edge.back(), power);
        outer_half_m_ = (edge[last + 1] - edge[last]) / 2;
        return frozen_s();
    }

    double cube_s(double side_m, int metal, int mould) {
        half_ = side_m / 2;
        for (int i = 0; i < metal; ++i) width_.push_back(half_ / metal);
        for (int i = 0; i < mould; ++i) width_.push_back(c_.wall_m / mould);
        start_ = {0};
        for (const double w : width_) start_.push_back(start_.back() + w);
        outer_half_m_ = c_.wall_m / mould / 2;
        fill_cube(metal);
        link_cube();
        cover_cube();
        return frozen_s();
    }

private:
    struct Cell {
        double volume_m3, enthalpy;
        bool metal;
        double outside_m2 = 0;
        double kelvin = 0, conducts = 0, gain_W = 0;
    };
    struct Link {
        std::size_t a, b;
        double area, half_a, half_b;
    };
    using Place = std::array<int, 3>;

    double melting() const {
        const auto& m = c_.metal;
        return m.density_kg_m3 * (m.fusion_J_kg + (m.solid_J_kg_K + m.melt_J_kg_K) / 2 * (m.liquidus_K - m.solidus_K));
    }
    double mould_J_m3_K() const { return c_.mould.density_kg_m3 * c_.mould.specific_heat_J_kg_K; }

    void add(double volume, bool metal) {
        const auto& m = c_.metal;
        const double hot = melting() + m.density_kg_m3 * m.melt_J_kg_K * (c_.pour_K - m.liquidus_K);
        cells_.push_back({volume, metal ? hot : mould_J_m3_K() * c_.mould_K, metal});
    }

    void fill_cube(int metal) {
        const int n = static_cast<int>(width_.size());
        constexpr int fine = 6;
        number_.assign(static_cast<std::size_t>(n * n * n), -1);
        double all = 0, kept = 0;
        for (int i = 0; i < n * n * n; ++i) {
            const Place at = {i / (n * n), i / n % n, i % n};
            int inside = 0;
            for (int s = 0; s < fine * fine * fine; ++s) {
                const Place part = {s / (fine * fine), s / fine % fine, s % fine};
                double beyond = 0;
                for (std::size_t a = 0; a < 3; ++a) {
                    const double x = start_[at[a]] + width_[at[a]] * (part[a] + 0.5) / fine - half_;
                    beyond += x > 0 ? x * x : 0;
                }
                inside += beyond <= c_.wall_m * c_.wall_m ? 1 : 0;
            }
            const double share = inside / std::pow(fine, 3);
            const double volume = share * width_[at[0]] * width_[at[1]] * width_[at[2]];
            const bool is_metal = std::max({at[0], at[1], at[2]}) < metal;
            all += is_metal ? 0 : volume;
            if (share <= 0.35) continue;
            kept += is_metal ? 0 : volume;
            number_[i] = static_cast<int>(cells_.size());
            places_.push_back(at);
            shares_.push_back(share);
            add(volume, is_metal);
        }
        for (Cell& cell : cells_) // what lies in cells too empty to count goes to the others alike
            if (!cell.metal) cell.volume_m3 *= all / kept;
    }

    void link_cube() {
        const int n = static_cast<int>(width_.size());
        for (std::size_t i = 0; i < places_.size(); ++i)
            for (std::size_t axis = 0; axis < 3; ++axis) {
                Place next = places_[i];
                if (++next[axis] >= n) continue;
                const int j = number_[(next[0] * n + next[1]) * n + next[2]];
                if (j < 0) continue;
                double area = std::min(shares_[i], shares_[j]);
                for (std::size_t a = 0; a < 3; ++a) area *= a == axis ? 1 : width_[next[a]];
                links_.push_back(
                    {i, static_cast<std::size_t>(j), area, width_[places_[i][axis]] / 2, width_[next[axis]] / 2});
            }
    }

    /// A patch of the outside belongs to the cell of the mould nearest to it.
    void cover(const std::array<double, 3>& point, double area) {
        std::size_t nearest = 0;
        double best = 1e9;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            if (cells_[i].metal) continue;
            double square = 0;
            for (std::size_t a = 0; a < 3; ++a)
                square += std::pow(point[a] - start_[places_[i][a]] - width_[places_[i][a]] / 2, 2);
            if (square < best) best = square, nearest = i;
        }
        cells_[nearest].outside_m2 += area;
    }

    /// Faces, edges rounded as quarter cylinders, a corner rounded as an eighth of a ball.
    void cover_cube() {
        constexpr int n = 24;
        constexpr double quarter = 1.5707963267948966;
        const double w = c_.wall_m, out = half_ + w;
        for (int i = 0; i < n * n; ++i) {
            const double u = (i / n + 0.5) / n, v = (i % n + 0.5) / n;
            for (std::size_t a = 0; a < 3; ++a) {
                std::array<double, 3> p{};
                p[a] = out, p[(a + 1) % 3] = half_ * u, p[(a + 2) % 3] = half_ * v;
                cover(p, half_ * half_ / n / n);
                p[a] = half_ + w * std::cos(quarter * v), p[(a + 2) % 3] = half_ + w * std::sin(quarter * v);
                cover(p, half_ * w * quarter / n / n);
            }
            const double flat = std::sqrt(1 - u * u);
            cover({half_ + w * flat * std::cos(quarter * v), half_ + w * flat * std::sin(quarter * v), half_ + w * u},
                  quarter * w * w / n / n);
        }
    }

    double longest_step_s() const {
        const auto& m = c_.metal;
        const double metal = std::max(m.solid_W_m_K, m.melt_W_m_K), mould = c_.mould.conductivity_W_m_K;
        std::vector<double> out(cells_.size(), 0);
        for (const Link& l : links_) {
            const double flow = l.area / (l.half_a / (cells_[l.a].metal ? metal : mould) +
                                          l.half_b / (cells_[l.b].metal ? metal : mould));
            out[l.a] += flow, out[l.b] += flow;
        }
        double step = 1e9;
        for (std::size_t i = 0; i < cells_.size(); ++i) {
            const double holds =
                cells_[i].metal ? m.density_kg_m3 * std::min(m.solid_J_kg_K, m.melt_J_kg_K) : mould_J_m3_K();
            step = std::min(step, 0.8 * cells_[i].volume_m3 * holds / out[i]);
        }
        return step;
    }

    void state(Cell& cell, double melting_J) const {
        const auto& m = c_.metal;
        const double h = cell.enthalpy;
        cell.gain_W = 0;
        if (!cell.metal) {
            cell.kelvin = h / mould_J_m3_K(), cell.conducts = c_.mould.conductivity_W_m_K;
            return;
        }
        const double melted = h / melting_J;
        cell.kelvin = h < 0        ? m.solidus_K + h / (m.density_kg_m3 * m.solid_J_kg_K)
                      : melted < 1 ? m.solidus_K + (m.liquidus_K - m.solidus_K) * melted
                                   : m.liquidus_K + (h - melting_J) / (m.density_kg_m3 * m.melt_J_kg_K);
        cell.conducts = m.solid_W_m_K + std::clamp(melted, 0.0, 1.0) * (m.melt_W_m_K - m.solid_W_m_K);
    }

    void radiate(Cell& cell) const {
        const auto& o = c_.outside;
        const double inside = c_.mould.conductivity_W_m_K / outer_half_m_;
        double face = cell.kelvin;
        for (int i = 0; i < 3; ++i) {
            const double leaves = o.convection_W_m2_K +
                                  o.emissivity * 5.670374419e-8 * (face * face + o.air_K * o.air_K) * (face + o.air_K);
            face = (cell.kelvin * inside + leaves * o.air_K) / (inside + leaves);
        }
        cell.gain_W -= cell.outside_m2 * (cell.kelvin - face) * inside;
    }

    double frozen_s() {
        const double dt = longest_step_s(), melting_J = melting();
        for (double t = 0; t < 1e4;) {
            for (Cell& cell : cells_) state(cell, melting_J);
            for (const Link& l : links_) {
                Cell &a = cells_[l.a], &b = cells_[l.b];
                const double flow = (a.kelvin - b.kelvin) * l.area / (l.half_a / a.conducts + l.half_b / b.conducts);
                a.gain_W -= flow, b.gain_W += flow;
            }
            double hottest = -1;
            for (Cell& cell : cells_) {
                if (cell.outside_m2 > 0) radiate(cell);
                cell.enthalpy += dt * cell.gain_W / cell.volume_m3;
                if (cell.metal) hottest = std::max(hottest, cell.enthalpy);
            }
            t += dt;
            if (hottest <= 0) return t;
        }
        return 1e9;
    }

    casting::FreezingCase c_;
    std::vector<Cell> cells_;
    std::vector<Link> links_;
    double outer_half_m_ = 0, half_ = 0;
    std::vector<double> width_, start_, shares_;
    std::vector<int> number_;
    std::vector<Place> places_;
};

} // namespace pourbook::testing
