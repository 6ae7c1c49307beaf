#include "charts/time_chart.hpp"

#include "charts/drop_charts.hpp"
#include "charts/race.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

constexpr int evenly = 300, past_the_coil = 240; // points in time, and in depth round a coil

class FallInTime {
public:
    FallInTime(const RaceLane& lane, const DropResult& drop, TimeOf what, const std::optional<PickupCoil>& coil,
               UnitSystem units)
        : lane_(lane), drop_(drop), what_(what), coil_(coil), units_(units) {}

    CurveLine line() const {
        CurveLine out{lane_.id, lane_.name, lane_.slot, {{}}, {}, "", {}};
        for (const double t : times()) {
            const RacePlace p = place_at(lane_, t);
            const double y = shown(p);
            out.stretches.front().push_back({t, y, y, y,
                                             lane_.name + "\nafter " + significant(t, 4) + " s\n" +
                                                 length_text(std::round(p.depth_m * 1e5) / 1e5, units_) +
                                                 " below the mouth\n" + speed_text(p.speed_m_s, units_) + "\nload " +
                                                 force_text(std::max(p.load_N, 0.0), UnitSystem::shown)});
        }
        return out;
    }

    double peak() const {
        double most = 0;
        for (const double t : times()) most = std::max(most, std::abs(shown(place_at(lane_, t))));
        return most;
    }

private:
    std::vector<double> times() const {
        const double end = lane_.path.back().time_s;
        std::vector<double> out;
        for (int i = 0; i <= evenly; ++i) out.push_back(end * i / evenly);
        for (const eddy::Instant& i : lane_.path) out.push_back(i.time_s);
        if (what_ == TimeOf::voltage) add_passing(out);
        std::sort(out.begin(), out.end());
        out.erase(std::unique(out.begin(), out.end()), out.end());
        return out;
    }

    /// Close together in depth while the magnet passes the coil.
    void add_passing(std::vector<double>& times) const {
        const double reach = lane_.magnet.whole_length_m() / 2 + 2 * coil_->diameter_m;
        for (int i = 0; i <= past_the_coil; ++i) {
            const double depth = coil_->at_m + reach * (2.0 * i / past_the_coil - 1);
            double low = 0, high = lane_.path.back().time_s;
            if (depth <= lane_.path.front().depth_m || depth >= lane_.path.back().depth_m) continue;
            for (int turn = 0; turn < 50; ++turn) {
                const double middle = (low + high) / 2;
                (place_at(lane_, middle).depth_m < depth ? low : high) = middle;
            }
            times.push_back(high);
        }
    }

    double shown(const RacePlace& p) const {
        const NamedUnit length = length_unit(units_);
        if (what_ == TimeOf::speed) return p.speed_m_s / length.si;
        if (what_ == TimeOf::place) return p.depth_m / length.si;
        return what_ == TimeOf::load ? p.load_N : 1000 * voltage(p);
    }

    double voltage(const RacePlace& p) const {
        const double r = coil_->diameter_m / 2;
        const double remanence = drop_.moment_A_m2 * eddy::vacuum_permeability / lane_.magnet.volume_m3();
        return coil_->turns * 2 * std::numbers::pi * r * p.speed_m_s * remanence *
               eddy::radial_field_over_remanence(lane_.magnet, r, coil_->at_m - p.depth_m);
    }

    const RaceLane& lane_;
    const DropResult& drop_;
    TimeOf what_;
    const std::optional<PickupCoil>& coil_;
    UnitSystem units_;
};

std::string title_of(TimeOf what) {
    switch (what) {
    case TimeOf::speed:
        return "Speed of the falling magnet against time";
    case TimeOf::place:
        return "Place of the falling magnet against time";
    case TimeOf::load:
        return "Load on the hand or scale against time";
    default:
        return "Voltage of a pickup coil against time";
    }
}

std::string unit_label(TimeOf what, UnitSystem units) {
    const std::string length = length_unit(units).name;
    switch (what) {
    case TimeOf::speed:
        return "speed, " + length + "/s";
    case TimeOf::place:
        return "centre below the mouth, " + length;
    case TimeOf::load:
        return "load beyond the tube's weight, N";
    default:
        return "voltage, mV";
    }
}

std::optional<Problem> coil_fault(const std::vector<DropOfMetal>& drops, TimeOf what,
                                  const std::optional<PickupCoil>& coil) {
    if (what != TimeOf::voltage) return std::nullopt;
    if (!coil) return unreadable("a voltage needs a coil: --coil-turns 200 --coil-diameter 20mm --coil-at 150mm");
    for (const DropOfMetal& d : drops)
        if (d.result && coil->diameter_m < 2 * d.result->setup.inputs.outside_radius_m.value)
            return unreadable("--coil-diameter: the coil is narrower than the tube it sits on");
    return std::nullopt;
}

std::string coil_note(const std::string& name, const DropResult& r, const PickupCoil& coil, double peak_mV,
                      UnitSystem units) {
    const eddy::DropInputs& i = r.setup.inputs;
    const double wall = i.outside_radius_m.value - i.bore_radius_m.value,
                 speed = r.fall.terminal_speed_m_s.value_or(r.fall.exit_speed_m_s),
                 share = eddy::vacuum_permeability * r.tube.conductivity_S_m() * speed * wall / 2;
    return name + ": " + trimmed(coil.turns, 6) + " turns of " + length_text(coil.diameter_m, units) + " at " +
           length_text(coil.at_m, units) + ": up to " + significant(peak_mV, 3) +
           " mV; the wall's own currents change it by some " + significant(100 * share, 1) + " %";
}

} // namespace

Result<CurveChart> time_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, TimeOf what,
                              const std::optional<PickupCoil>& coil, UnitSystem units) {
    if (auto fault = coil_fault(drops, what, coil)) return *fault;
    CurveChart chart;
    chart.title = title_of(what);
    chart.x_label = "time after the release, s";
    chart.y_label = unit_label(what, units);
    chart.legend = "of the stated figures, on the axis";
    const Race race = race_of(catalogue, drops, units);
    for (std::size_t i = 0; i < drops.size(); ++i) {
        if (!drops[i].result) {
            chart.notes.push_back("no curve: " + drops[i].result.problem().text);
            continue;
        }
        const DropResult& r = *drops[i].result;
        const FallInTime fall(race.lanes[i], r, what, coil, units);
        chart.lines.push_back(fall.line());
        if (what == TimeOf::voltage) chart.notes.push_back(coil_note(race.lanes[i].name, r, *coil, fall.peak(), units));
        const double weight = r.magnet_mass_kg * eddy::standard_gravity_m_s2;
        if (what == TimeOf::load && chart.levels.empty())
            chart.levels.push_back({weight, "weight of the magnet, " + force_text(weight, UnitSystem::shown)});
    }
    chart.origin = origin_of(catalogue, drops);
    return chart;
}

} // namespace pourbook
