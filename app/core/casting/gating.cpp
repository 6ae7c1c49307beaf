#include "core/casting/gating.hpp"

#include "core/casting/feeder.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pourbook::casting {
namespace {

constexpr double pound_kg = 0.45359237;
constexpr double cup_widths = 2, gate_length_m = 0.01;
constexpr double share_of_freezing = 1.0 / 3; // of the thinnest wall, in which the mould must be full (ours)
constexpr double hardly_longer = 1.2;         // nobody pours to a fifth of the time

double diameter_m(double area_m2) {
    return std::sqrt(4 * area_m2 / std::numbers::pi);
}

double area_m2(double diameter) {
    return std::numbers::pi / 4 * diameter * diameter;
}

class GatingPlanner {
public:
    GatingPlanner(const Catalogue& catalogue, const Metal& metal, const std::string& process,
                  const GatingInputs& inputs)
        : catalogue_(catalogue), metal_(metal), process_(process), in_(inputs) {}

    GatingPlan run() {
        g_.rule_s = pouring_time_s(in_.cavity_kg, in_.thinnest_m, in_.light_metal);
        g_.most_s = share_of_freezing * in_.thinnest_s;
        heads();
        const double discharge = figure("discharge"), cup_m = figure("cup_depth");
        const double effective = std::max(bottom_head_m(g_.head_m, in_.height_m), g_.head_m / 10);
        if (!std::isnan(in_.foot_m) && !std::isnan(in_.sprue_m))
            as_stated(discharge, effective);
        else
            as_planned(discharge, effective);
        g_.foot_speed_m_s = sprue_speed_m_s(g_.head_m);
        g_.foot_m = diameter_m(g_.choke_m2);
        g_.top_m = diameter_m(sprue_area_m2(g_.choke_m2, g_.head_m, std::min(cup_m, g_.head_m)));
        gates();
        metal(std::min(cup_m, g_.head_m));
        return g_;
    }

private:
    double figure(const std::string& quantity) {
        const Range r = range_of(practices(catalogue_, metal_, quantity, process_));
        g_.sources.insert(g_.sources.end(), r.sources.begin(), r.sources.end());
        return r.middle();
    }

    void heads() {
        g_.least_head_m = figure("least_head");
        if (!std::isnan(in_.surface_tension_N_m))
            g_.capillary_m = 2 * in_.surface_tension_N_m / (in_.thinnest_m * in_.density_kg_m3 * earth_gravity_m_s2);
        g_.head_m = std::isnan(in_.sprue_m) ? in_.height_m + g_.least_head_m : in_.sprue_m;
        if (g_.head_m < in_.height_m + g_.least_head_m - 1e-9)
            g_.warnings.push_back("The sprue is " + trimmed(g_.head_m * 1000, 3) + " mm high, the casting " +
                                  trimmed(in_.height_m * 1000, 3) + " mm: stand the cup at least " +
                                  trimmed(g_.least_head_m * 1000, 2) + " mm above the highest place, or lay the part.");
    }

    void as_planned(double discharge, double effective) {
        g_.fill_s = std::isnan(g_.most_s) ? g_.rule_s : std::min(g_.rule_s, g_.most_s);
        g_.choke_m2 = choke_area_m2(in_.cavity_m3, g_.fill_s, effective, discharge);
    }

    void as_stated(double discharge, double effective) {
        g_.stated = true;
        g_.choke_m2 = area_m2(in_.foot_m);
        g_.fill_s = in_.cavity_m3 / (discharge * g_.choke_m2 * sprue_speed_m_s(effective));
        if (!std::isnan(g_.most_s) && g_.fill_s > g_.most_s)
            g_.warnings.push_back(
                "This sprue fills in " + significant(g_.fill_s, 2) +
                " s, a third of the thinnest wall's freezing time is " + significant(g_.most_s, 2) +
                " s: cold runs. A foot of " +
                significant(1000 * diameter_m(choke_area_m2(in_.cavity_m3, g_.most_s, effective, discharge)), 2) +
                " mm, a hotter mould, or more sprues.");
    }

    void gates() {
        const double limit = figure("gate_speed");
        const double flow_m3_s = in_.cavity_m3 / g_.fill_s;
        g_.gate_speed_m_s = limit;
        g_.gates_m2 = flow_m3_s / limit;
        g_.vents_m2 = g_.choke_m2;
        if (!std::isnan(in_.gate_spacing_m))
            g_.gates =
                std::max<std::size_t>(1, static_cast<std::size_t>(std::ceil(in_.longest_m / in_.gate_spacing_m)));
        if (std::isnan(g_.most_s) || g_.rule_s <= hardly_longer * g_.most_s || g_.stated) return;
        g_.warnings.push_back("The thinnest wall freezes in " + significant(in_.thinnest_s, 2) + " s: pour in " +
                              significant(g_.fill_s, 2) + " s, not in the " + significant(g_.rule_s, 2) +
                              " s common for this weight, or heat the mould.");
    }

    /// Sprue: the integral of A_foot sqrt(H / z) from the cup's floor to the foot.
    void metal(double cup_m) {
        const double sprue = 2 * g_.choke_m2 * std::sqrt(g_.head_m) * (std::sqrt(g_.head_m) - std::sqrt(cup_m));
        const double cup = area_m2(cup_widths * g_.top_m) * cup_m / 3; // a cone
        const double runner = g_.choke_m2 * (g_.gates > 1 ? in_.longest_m : in_.longest_m / 2);
        g_.metal_m3 = sprue + cup + runner + g_.gates_m2 * gate_length_m;
    }

    const Catalogue& catalogue_;
    const Metal& metal_;
    const std::string& process_;
    const GatingInputs& in_;
    GatingPlan g_;
};

} // namespace

double bottom_head_m(double sprue_m, double casting_height_m) {
    return sprue_m - casting_height_m / 2;
}

double choke_area_m2(double volume_m3, double time_s, double head_m, double discharge) {
    return volume_m3 / (time_s * discharge * sprue_speed_m_s(head_m));
}

double sprue_area_m2(double foot_area_m2, double foot_depth_m, double depth_m) {
    return foot_area_m2 * std::sqrt(foot_depth_m / depth_m);
}

double pouring_time_s(double mass_kg, double wall_m, bool light_metal) {
    const double root = std::sqrt(mass_kg / pound_kg);
    if (!light_metal) return root * (0.95 + wall_m / inch_m / 0.853);
    return root / (wall_m < 0.006 ? 1.48 : wall_m <= 0.012 ? 1.25 : 0.70);
}

GatingPlan gating_plan(const Catalogue& catalogue, const Metal& metal, const std::string& process,
                       const GatingInputs& inputs) {
    return GatingPlanner(catalogue, metal, process, inputs).run();
}

} // namespace pourbook::casting
