#include "answers/drop/eddy_text.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

std::string seconds(double s) {
    return s < 0.1 ? significant(s * 1000, 3) + " ms" : significant(s, 3) + " s";
}

void write_head(std::ostream& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
                UnitSystem units) {
    out << "magnet  " << magnet_text(setup, units) << "\n"
        << "tube    " << tube_text(setup.inputs, units) << "\n"
        << "metal   " << metal_text(tube, conditions, units) << "\n\n";
}

std::string peak_text(double force_N, double speed_m_s, UnitSystem units) {
    if (!std::isfinite(force_N)) return "not known with slits or off the axis";
    return newtons(force_N) + " at " + speed_text(speed_m_s, units);
}

void write_speeds(std::ostream& out, const DropResult& r, UnitSystem units) {
    if (!r.fall.terminal_speed_m_s) {
        out << "terminal speed    none: the weight, " << newtons(r.magnet_mass_kg * eddy::standard_gravity_m_s2)
            << ", is more than the peak drag\n";
    } else if (!r.settles) {
        out << "terminal speed    not reached; in a long tube " << speed_text(*r.fall.terminal_speed_m_s, units)
            << "\n";
    } else {
        out << "terminal speed    " << speed_text(*r.fall.terminal_speed_m_s, units);
        if (std::isfinite(r.speed_low90_m_s))
            out << "  (90 %: " << speed_text(r.speed_low90_m_s, units) << " to "
                << speed_text(r.speed_high90_m_s, units) << ")";
        constexpr double thrown_at_most_m_s = 1000;
        if (r.fall.unstable_speed_m_s && *r.fall.unstable_speed_m_s < thrown_at_most_m_s)
            out << "; thrown in faster than " << speed_text(*r.fall.unstable_speed_m_s, units) << " it would run away";
        out << "\n";
    }
    out << "drag coefficient  " << significant(r.coefficient_N_s_m, 4) << " N·s/m, time constant "
        << seconds(r.time_constant_s);
    if (r.fading_s > r.time_constant_s)
        out << "; the wall's currents fade in " << seconds(r.fading_s) << ", so that it swings before it settles";
    out << "\n"
        << "peak drag         " << peak_text(r.peak_drag_N, r.peak_drag_speed_m_s, units) << "\n";
    if (r.path_factor != 1)
        out << "slits, off axis   " << significant(r.path_factor, 4)
            << " times the drag of the whole tube on its axis\n";
}

} // namespace

std::string text_of(const DropResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    write_head(out, r.setup, r.tube, r.conditions, units);
    out << "fall time         " << seconds(r.fall.time_s) << "  (90 %: " << seconds(r.fall_time_low90_s) << " to "
        << seconds(r.fall_time_high90_s) << "; without a tube " << seconds(r.free_fall_time_s) << ")\n";
    if (std::isfinite(r.fall_time_across_s))
        out << "poles across      " << seconds(r.fall_time_across_s) << " (the same ball, turned)\n";
    out << "timing            " << r.setup.timing << "\n";
    write_speeds(out, r, units);
    out << "regime            " << r.regime << "\n"
        << "magnet            " << mass_text(r.magnet_mass_kg, units) << ", moment " << significant(r.moment_A_m2, 4)
        << " A·m²\n"
        << "tube              ";
    if (std::isfinite(r.tube_mass_kg)) out << mass_text(r.tube_mass_kg, units) << "; ";
    if (std::isfinite(r.cost_usd))
        out << "its metal costs " << shown_money(catalogue, r.cost_usd, 3, units) << at_rate(catalogue) << "; ";
    if (r.settles)
        out << "the open ends take " << length_text(r.model->nominal().tube_length_m - r.effective_length_m, units)
            << " from its length\n";
    else
        out << "it brakes like " << length_text(r.effective_length_m, units) << " of a long one\n";
    out << "in the hand       the tube weighs " << newtons(r.felt_N)
        << (r.settles ? " more while the magnet falls evenly" : " more at most") << "\n"
        << "heat in the wall  " << significant(r.fall.heat_J, 3) << " J";
    if (std::isfinite(r.warming_K)) out << ", warming it by " << significant(r.warming_K * 1000, 2) << " mK";
    out << "\n";
    if (!r.cautions.empty()) out << "\nBeware\n";
    for (const std::string& what : r.cautions) out << wrapped("  " + what, page_width, "      ");
    out << "\nLeft out\n";
    for (const std::string& what : r.left_out) out << wrapped("  " + what, page_width, "      ");
    write_grounds(out, r.setup, &r.tube, catalogue);
    out << "\nData version " << catalogue.data_version << "\n";
    return out.str();
}

std::string text_of(const DragResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    write_head(out, r.setup, r.tube, r.conditions, units);
    out << "drag       " << significant(r.drag_N, 5) << " N at " << speed_text(r.speed_m_s, units)
        << "  (90 %: " << newtons(r.drag_low90_N) << " to " << newtons(r.drag_high90_N) << ")\n"
        << "linear law " << newtons(r.linear_drag_N) << ", without the induced currents' own field\n"
        << "peak drag  " << peak_text(r.peak_drag_N, r.peak_drag_speed_m_s, units) << "\n";
    if (std::isfinite(r.skin_depth_m))
        out << "skin depth " << length_text(r.skin_depth_m, units) << " for what a ring of the wall sees\n";
    out << "\nThe tube is taken as infinitely long and the magnet as coaxial.\n";
    write_grounds(out, r.setup, &r.tube, catalogue);
    out << "\nData version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook
