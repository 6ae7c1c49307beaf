#include "questions/drop/drop_figures.hpp"

#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string speed_interval(const DropResult& r, UnitSystem units) {
    if (!r.settles || !std::isfinite(r.speed_low90_m_s)) return "";
    return interval_text(speed_text(r.speed_low90_m_s, units), speed_text(r.speed_high90_m_s, units));
}

bool knows_peak(const DropResult& r) {
    return std::isfinite(r.peak_drag_N);
}

} // namespace

std::vector<DropFigure> drop_figures(const Catalogue& catalogue, const DropResult& r, UnitSystem units) {
    const auto known = [](double x, auto words) { return std::isfinite(x) ? words(x) : std::string(); };
    return {
        {"time", "fall time", seconds_text(r.fall.time_s),
         interval_text(seconds_text(r.fall_time_low90_s), seconds_text(r.fall_time_high90_s)),
         "The magnet is " + r.setup.timing + ". Without a tube: " + seconds_text(r.free_fall_time_s) + "." +
             (std::isfinite(r.fall_time_across_s)
                  ? " A ball with its poles across the tube takes " + seconds_text(r.fall_time_across_s) + "."
                  : "")},
        {"speed", "terminal speed", r.settles ? speed_text(*r.fall.terminal_speed_m_s, units) : std::string("none"),
         speed_interval(r, units),
         "Where the drag holds the weight. Reached within a few time constants of " + seconds_text(r.time_constant_s) +
             ". " + r.regime + "."},
        {"coefficient", "drag coefficient", damping_text(r.coefficient_N_s_m, units), "",
         "Drag over speed while the induced currents' own field is small."},
        {"peak", "peak drag", knows_peak(r) ? force_text(r.peak_drag_N, units) : std::string("not known"),
         knows_peak(r) ? "at " + speed_text(r.peak_drag_speed_m_s, units) : std::string("with slits or off the axis"),
         "The most drag any speed gives; a heavier magnet has no terminal speed."},
        {"moment", "magnet", significant(r.moment_A_m2, 3) + " A·m²", mass_text(r.magnet_mass_kg, units),
         "Moment: remanence times volume over the magnetic constant, less what the recoil permeability takes."},
        {"felt", "felt in the hand", force_text(r.felt_N, units), "on top of the tube's own weight",
         r.settles ? "The hand that holds the tube carries the magnet's weight while it falls evenly."
                   : "At most: the magnet never falls evenly in so short a tube."},
        {"heat", "heat in the wall", significant(r.fall.heat_J, 3) + " J",
         known(r.warming_K, [&](double k) { return "warms it by " + difference_text(k, units); }),
         "The height that the magnet loses, less the speed it keeps."},
        {"tube", "tube", std::isfinite(r.tube_mass_kg) ? mass_text(r.tube_mass_kg, units) : std::string("no density"),
         known(r.cost_usd, [&](double usd) { return "metal " + shown_money(catalogue, usd, 3, units); }),
         joined({"Mass from the cited density; money for that mass at the cited price.", rate_sentence(catalogue)},
                " ")},
    };
}

std::vector<std::string> drop_grounds(const DropResult& r) {
    std::vector<std::string> out;
    for (const SourceValue& s : r.tube.value.sources)
        if (s.chosen)
            out.push_back("resistivity: " + s.printed + " [" + s.key + ", " + s.locator + "] (" + name_of(s.how_known) +
                          ")");
    for (const CitedFigure& f : r.setup.sources)
        out.push_back(f.what + " [" + f.citation.source + "] (" + name_of(f.citation.how_known) + ")");
    for (const std::string& a : r.setup.assumptions) out.push_back("assumed: " + a);
    for (const std::string& n : r.tube.notes) out.push_back(n);
    return out;
}

std::vector<std::string> drop_sources(const DropResult& r) {
    std::vector<std::string> out;
    const auto add = [&](const std::string& key) {
        if (std::find(out.begin(), out.end(), key) == out.end()) out.push_back(key);
    };
    for (const SourceValue& s : r.tube.value.sources)
        if (s.chosen) add(s.key);
    for (const CitedFigure& f : r.setup.sources) add(f.citation.source);
    return out;
}

} // namespace pourbook
