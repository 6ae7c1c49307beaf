#include "core/casting/freezing.hpp"

#include "core/casting/heat_line.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::casting {
namespace {

constexpr double longest_s = 1e6;
constexpr double liquid_enough_K = 2; // above the liquidus: superheat that no longer counts
constexpr double grid_growth = 1.09;  // each mould cell against the one nearer the metal

Problem not_frozen(const std::string& why) {
    return refused("freezing: " + why);
}

std::string freezing_fault(const FreezingCase& w) {
    for (const double x :
         {w.section.half_m, w.metal.density_kg_m3, w.metal.solid_J_kg_K, w.metal.melt_J_kg_K, w.metal.fusion_J_kg,
          w.metal.solid_W_m_K, w.metal.melt_W_m_K, w.metal.solidus_K, w.mould.conductivity_W_m_K, w.mould.density_kg_m3,
          w.mould.specific_heat_J_kg_K, w.wall_m, w.mould_K, w.contact_W_m2_K, w.outside.air_K})
        if (!(x > 0)) return "a size or property is not above nought";
    if (!std::isfinite(w.section.half_m) || !std::isfinite(w.wall_m)) return "a size is not finite";
    if (w.metal.liquidus_K < w.metal.solidus_K) return "the liquidus lies below the solidus";
    if (w.outside.air_K >= w.metal.solidus_K) return "the air is as hot as the solidus";
    return {};
}

EnthalpyCurve curve_of(const MetalHeat& m) {
    const double across = (m.solid_J_kg_K + m.melt_J_kg_K) / 2 * (m.liquidus_K - m.solidus_K);
    return {m.density_kg_m3 * m.solid_J_kg_K, m.density_kg_m3 * m.melt_J_kg_K,
            m.density_kg_m3 * (m.fusion_J_kg + across), m.solidus_K, m.liquidus_K};
}

EnthalpyCurve curve_of(const MouldHeat& m) {
    EnthalpyCurve c;
    c.solid_J_m3_K = c.melt_J_m3_K = m.density_kg_m3 * m.specific_heat_J_kg_K;
    return c;
}

/// Widths of the cells of a wall, the finest first.
std::vector<double> wall_cells(double wall_m, int cells) {
    std::vector<double> out;
    double sum = 0, width = 1;
    for (int i = 0; i < cells; ++i, width *= grid_growth) {
        out.push_back(width);
        sum += width;
    }
    for (double& w : out) w *= wall_m / sum;
    return out;
}

/// Cells from the inside outward; the area through which heat flows grows as the section says.
class LineBuilder {
public:
    explicit LineBuilder(const FrozenSection& section) : section_(section) {
        if (section.core_m > 0) section_.spread = section_.edges = 1;
    }
    void begin_at(double radius_m) { at_m_ = radius_m; }
    void mould(const MouldHeat& m, double start_K, const std::vector<double>& layers) {
        HeatCell cell{curve_of(m), m.conductivity_W_m_K, m.conductivity_W_m_K, 0, 0, 0};
        cell.enthalpy_J_m3 = cell.curve.enthalpy_J_m3(start_K);
        for (const double width : layers) add(cell, width);
    }
    void metal(const MetalHeat& m, double start_K, double thickness_m, int count) {
        HeatCell cell{curve_of(m), m.solid_W_m_K, m.melt_W_m_K, 0, 0, 0};
        cell.enthalpy_J_m3 = cell.curve.enthalpy_J_m3(start_K);
        first_metal_ = cells.size();
        for (int i = 0; i < count; ++i) add(cell, thickness_m / count);
        behind_metal_ = cells.size();
    }
    std::size_t first_metal() const { return first_metal_; }
    std::size_t behind_metal() const { return behind_metal_; }

    std::vector<HeatCell> cells;

private:
    void add(HeatCell cell, double width) {
        cell.inner_m = at_m_;
        cell.outer_m = at_m_ += width;
        cell.outer_area = area_at(cell.outer_m);
        cell.volume = volume_within(cell.outer_m) - volume_within(cell.inner_m);
        cells.push_back(cell);
    }

    /// Place r as the radius of the round body whose surface grows alike: beyond the metal edges round themselves off.
    double area_at(double r) const {
        const double face = section_.half_m, s = section_.spread;
        if (section_.core_m > 0 || r <= face) return std::pow(r, s);
        return std::pow(face + section_.edges * (r - face), s);
    }
    double volume_within(double r) const {
        const double face = section_.half_m, s = section_.spread;
        if (section_.core_m > 0 || r <= face) return std::pow(r, s + 1) / (s + 1);
        const double beyond = std::pow(face + section_.edges * (r - face), s + 1) - std::pow(face, s + 1);
        return (std::pow(face, s + 1) + beyond / section_.edges) / (s + 1);
    }

    FrozenSection section_;
    double at_m_ = 0;
    std::size_t first_metal_ = 0, behind_metal_ = 0;
};

LineBuilder line_of(const FreezingCase& w, const FreezingGrid& grid) {
    LineBuilder b(w.section);
    double thickness = w.section.half_m;
    if (w.section.core_m > 0) {
        thickness *= 2;
        const double core = std::min(w.section.core_m, w.section.core_wall_m);
        b.begin_at(w.section.core_m - core);
        std::vector<double> inward = wall_cells(core, grid.mould_cells);
        std::reverse(inward.begin(), inward.end());
        b.mould(w.mould, w.mould_K, inward);
    }
    b.metal(w.metal, w.pour_K, thickness, grid.metal_cells);
    b.mould(w.mould, w.mould_K, wall_cells(w.wall_m, grid.mould_cells));
    return b;
}

/// Marks the times at which cells of the metal pass a level of enthalpy.
class FreezingWatch {
public:
    FreezingWatch(const HeatLine& line, std::size_t from, std::size_t to) : line_(line), from_(from), to_(to) {
        solid_.assign(to - from, -1);
        for (std::size_t i = from; i < to; ++i) before_.push_back(line.cells()[i].enthalpy_J_m3);
    }

    void after_step(double t, double dt) {
        bool all_below_liquidus = true;
        for (std::size_t i = from_; i < to_; ++i) {
            const double now = line_.cells()[i].enthalpy_J_m3;
            double& past = before_[i - from_];
            if (solid_[i - from_] < 0 && now <= 0) solid_[i - from_] = t - dt * (past > now ? now / (now - past) : 0);
            if (line_.temperature_K(i) > line_.cells()[i].curve.liquidus_K + liquid_enough_K)
                all_below_liquidus = false;
            past = now;
        }
        if (all_below_liquidus && superheat_gone_s < 0) superheat_gone_s = t;
    }
    bool done() const {
        return std::none_of(solid_.begin(), solid_.end(), [](double s) { return s < 0; });
    }
    void into(FreezingCourse& course) const {
        course.superheat_gone_s = superheat_gone_s;
        for (std::size_t i = from_; i < to_; ++i) {
            course.cells.push_back({line_.cells()[i].middle_m(), solid_[i - from_]});
            if (solid_[i - from_] < course.freezing_s) continue;
            course.freezing_s = solid_[i - from_];
            course.last_radius_m = line_.cells()[i].middle_m();
        }
    }

private:
    const HeatLine& line_;
    std::size_t from_, to_;
    std::vector<double> before_, solid_;
    double superheat_gone_s = -1;
};

/// The time heat takes across the finest mould cell: the first step.
double first_step_s(const FreezingCase& w, const FreezingGrid& grid) {
    const double finest = wall_cells(w.wall_m, grid.mould_cells).front();
    const double storing = w.mould.density_kg_m3 * w.mould.specific_heat_J_kg_K;
    return std::clamp(0.2 * finest * finest * storing / w.mould.conductivity_W_m_K, 1e-4, 0.01);
}

OuterEnd outer_end(const Outside& o) {
    return {o.air_K, o.emissivity, o.convection_W_m2_K};
}

} // namespace

Result<FreezingCourse> freezing_course(const FreezingCase& w, const FreezingGrid& grid) {
    if (const std::string fault = freezing_fault(w); !fault.empty()) return not_frozen(fault);
    const LineBuilder b = line_of(w, grid);
    std::vector<int> contacts;
    if (std::isfinite(w.contact_W_m2_K)) {
        contacts.push_back(static_cast<int>(b.behind_metal()) - 1);
        if (b.first_metal() > 0) contacts.push_back(static_cast<int>(b.first_metal()) - 1);
    }
    HeatLine line(b.cells, outer_end(w.outside), contacts, w.contact_W_m2_K);
    FreezingWatch watch(line, b.first_metal(), b.behind_metal());
    const double before_J = line.heat_J();
    const double least_dt = first_step_s(w, grid);
    FreezingCourse course;
    const auto cold = [&] {
        for (std::size_t i = b.first_metal(); i < b.behind_metal(); ++i)
            if (w.cool_to_K > 0 && line.temperature_K(i) > w.cool_to_K) return false;
        return true;
    };
    for (double t = 0; !watch.done() || !cold();) {
        double dt = std::max(least_dt, grid.step_share * t);
        while (!line.step(dt))
            if ((dt /= 2) < 1e-9) return not_frozen("the equations did not settle");
        t += dt;
        watch.after_step(t, dt);
        if (w.cool_to_K > 0) course.cooled_s = t;
        if (t > longest_s)
            return not_frozen("it would take more than " + std::to_string(static_cast<int>(longest_s)) + " s");
    }
    watch.into(course);
    double metal_J = 0;
    for (std::size_t i = b.first_metal(); i < b.behind_metal(); ++i)
        metal_J += line.volume(i) * (b.cells[i].enthalpy_J_m3 - line.cells()[i].enthalpy_J_m3);
    course.heat_error = std::abs(before_J - line.heat_J() - line.lost_J()) / metal_J;
    return course;
}

Result<std::vector<double>> empty_mould_K(const MouldHeat& mould, double wall_m, double kiln_K, const Outside& outside,
                                          const std::vector<double>& times_s) {
    if (!(wall_m > 0) || !(mould.conductivity_W_m_K > 0) || !(kiln_K > 0))
        return not_frozen("a size is not above nought");
    constexpr int cells = 20;
    constexpr double dt = 1;
    LineBuilder b(FrozenSection{wall_m, 0, 1, 0, wall_m});
    b.mould(mould, kiln_K, std::vector<double>(cells, wall_m / cells));
    HeatLine line(b.cells, outer_end(outside), {}, 1);
    std::vector<double> out;
    double t = 0;
    for (const double until : times_s) {
        for (; t < until; t += dt)
            if (!line.step(dt)) return not_frozen("the equations did not settle");
        out.push_back(line.heat_J() / wall_m / b.cells.front().curve.solid_J_m3_K);
    }
    return out;
}

} // namespace pourbook::casting
