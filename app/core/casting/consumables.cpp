#include "core/casting/consumables.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::casting {
namespace {

class Used {
public:
    Used(const Catalogue& catalogue, const Metal& metal, const ConsumableInputs& inputs)
        : catalogue_(catalogue), metal_(metal), in_(inputs) {}

    Consumables run() {
        if (in_.process == "shell" || in_.process == "plaster") filament();
        if (in_.process == "shell") shell();
        if (in_.process == "shell" || in_.process == "plaster") kiln();
        if (!std::isnan(in_.propane_kg_low)) pay("propane", in_.propane_kg_low, in_.propane_kg_high);
        return out_;
    }

private:
    Range figure(const std::string& quantity, const std::string& material) {
        auto all = practices(catalogue_, metal_, quantity, in_.process);
        const Range r = range_of(material.empty() ? all : of_material(all, material));
        out_.sources.insert(out_.sources.end(), r.sources.begin(), r.sources.end());
        return r;
    }

    void pay(const std::string& material, double low_kg, double high_kg) {
        const Range price = figure("consumable_price", material);
        if (price.empty()) return;
        out_.cost_low_usd += price.low_si * low_kg;
        out_.cost_high_usd += price.high_si * high_kg;
    }

    void filament() {
        const Range wall = figure("pattern_wall", "filament"), infill = figure("pattern_infill", "filament");
        const Range density = figure("pattern_density", "filament");
        if (wall.empty() || infill.empty() || density.empty()) return;
        const auto mass = [&](double thick, double share) {
            const double skin = std::min(in_.surface_m2 * thick, in_.volume_m3);
            return (skin + share * (in_.volume_m3 - skin)) * density.middle() * (1 + in_.gating_share);
        };
        out_.filament_kg = wall;
        out_.filament_kg.low_si = mass(wall.low_si, infill.low_si);
        out_.filament_kg.high_si = mass(wall.high_si, infill.high_si);
        pay("filament", out_.filament_kg.low_si, out_.filament_kg.high_si);
    }

    void shell() {
        const Range density = figure("mould_density", "");
        if (density.empty() || std::isnan(in_.shell_wall_m)) return;
        const double kg = in_.surface_m2 * in_.shell_wall_m * density.middle() * (1 + in_.gating_share);
        out_.shell_kg = density;
        out_.shell_kg.low_si = out_.shell_kg.high_si = kg;
        pay("shell", kg, kg);
    }

    void kiln() {
        out_.kiln_J = figure("kiln_energy", "");
        const Range price = figure("electricity_price", "");
        if (out_.kiln_J.empty() || price.empty()) return;
        out_.cost_low_usd += price.low_si * out_.kiln_J.low_si;
        out_.cost_high_usd += price.high_si * out_.kiln_J.high_si;
    }

    const Catalogue& catalogue_;
    const Metal& metal_;
    const ConsumableInputs& in_;
    Consumables out_;
};

} // namespace

Consumables consumables(const Catalogue& catalogue, const Metal& metal, const ConsumableInputs& inputs) {
    return Used(catalogue, metal, inputs).run();
}

} // namespace pourbook::casting
