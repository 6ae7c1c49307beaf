// Heat conduction along one line of cells whose enthalpy bends at melting: the solver under freezing.hpp.
// Unknown: enthalpy by volume H (J/m3) of each cell; T(H) rises in three straight pieces. Backward Euler; Newton's
// method converges although T(H) has corners, since every column of the matrix is diagonally dominant. The inner end
// is closed to heat; the outer end radiates and convects.
#pragma once

#include <vector>

namespace pourbook::casting {

/// Temperature and enthalpy of one material; H = 0 solid at the solidus. Without fusion: solidus 0 K, H = C T.
struct EnthalpyCurve {
    double solid_J_m3_K = 0, melt_J_m3_K = 0;
    double melting_J_m3 = 0; // from the solidus to the liquidus
    double solidus_K = 0, liquidus_K = 0;

    double temperature_K(double h_J_m3) const;
    double slope_K_m3_J(double h_J_m3) const;  // dT/dH
    double enthalpy_J_m3(double kelvin) const; // liquid at the liquidus
};

struct HeatCell {
    EnthalpyCurve curve;
    double solid_W_m_K = 0, melt_W_m_K = 0;
    double inner_m = 0, outer_m = 0;   // places along the line
    double outer_area = 0, volume = 0; // of any one unit of area
    double enthalpy_J_m3 = 0;

    double middle_m() const { return (inner_m + outer_m) / 2; }
    double conductivity_W_m_K() const;
};

struct OuterEnd {
    double air_K = 293.15, emissivity = 0, convection_W_m2_K = 0;
};

class HeatLine {
public:
    /// contacts: numbers of the cells behind which the contact transfer acts (both faces where metal has a core).
    HeatLine(std::vector<HeatCell> cells, OuterEnd end, std::vector<int> contacts, double contact_W_m2_K);

    /// One step; false where Newton's method did not converge (take a shorter one; nothing has changed then).
    bool step(double dt_s);

    const std::vector<HeatCell>& cells() const { return cells_; }
    double volume(std::size_t i) const { return cells_[i].volume; }
    double heat_J() const;                    // of all cells
    double lost_J() const { return lost_J_; } // through the outer end
    double temperature_K(std::size_t i) const { return cells_[i].curve.temperature_K(cells_[i].enthalpy_J_m3); }

private:
    void conduct();
    double end_W_K(double cell_K) const;

    std::vector<HeatCell> cells_;
    OuterEnd end_;
    std::vector<int> contacts_;
    double contact_W_m2_K_;
    std::vector<double> face_W_K_;
    double lost_J_ = 0;
    std::vector<double> trial_, diagonal_, lower_, upper_, residual_; // of one step
};

} // namespace pourbook::casting
