#include "core/casting/freezing_plan.hpp"

#include "core/casting/feeder.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace pourbook::casting {
namespace {

constexpr double conductivity_doubt = 0.30, capacity_doubt = 0.15, wall_doubt = 0.10, contact_doubt = 0.4;
constexpr double black_heat_K = 773.15; // no glow in daylight
constexpr double far_end = 3;           // half thicknesses
constexpr double mould_doubt_K = 30, pour_doubt_K = 15;
constexpr double metal_conductivity_W_m_K = 60; // where nothing is cited: the time hardly depends on it
constexpr double melt_conducts = 0.5;           // share of the solid's conductivity; the time hardly depends on it

/// Middle and standard uncertainty of a practice figure.
struct Figure {
    double middle = no_number, doubt = 0;
};

class FreezingPlanner {
public:
    FreezingPlanner(const Material& material, const FreezingInputs& inputs) : m_(material), in_(inputs) {}

    Result<FreezingPlan> run() {
        if (const std::string missing = read_mould() + read_metal(); !missing.empty())
            return Problem{Problem::Kind::no_value, "freezing time: " + missing, 0};
        out_.reckoned = case_;
        FreezingCase to_black = case_;
        to_black.cool_to_K =
            std::min(black_heat_K, room_temperature_K + 0.6 * (case_.metal.solidus_K - room_temperature_K));
        const auto course = freezing_course(to_black);
        if (!course) return course.problem();
        out_.black_K = to_black.cool_to_K;
        out_.black_s = course->cooled_s;
        out_.time_s.value_si = course->freezing_s;
        out_.superheat_gone_s = course->superheat_gone_s;
        out_.time_s.estimated = true;
        spread();
        beside();
        out_.time_s.how = "one-dimensional conduction, " + out_.mould_kind + "; most in doubt: " + out_.decides;
        return out_;
    }

private:
    Figure figure(const std::string& quantity, double doubt = 0) {
        std::vector<const Practice*> own;
        for (const Practice* p : practices(m_.catalogue, m_.metal, quantity, in_.process))
            if (p->process == in_.process || p->process.empty()) own.push_back(p);
        const Range r = range_of(own);
        out_.sources.insert(out_.sources.end(), r.sources.begin(), r.sources.end());
        for (const SourceValue& s : r.sources)
            if (s.how_known != HowKnown::read) out_.time_s.how_known = s.how_known;
        const double half = (r.high_si - r.low_si) / 2 / std::sqrt(3.0);
        return {r.middle(), std::max(half, doubt * std::abs(r.middle()))};
    }

    std::string read_mould() {
        conductivity_ = figure("mould_conductivity", conductivity_doubt);
        const Figure density = figure("mould_density"), heat = figure("mould_specific_heat", capacity_doubt);
        emissivity_ = figure("mould_emissivity");
        convection_ = figure("mould_convection");
        const bool shell = in_.process == "shell";
        wall_ = shell && !std::isnan(in_.shell_wall_m) ? Figure{in_.shell_wall_m, wall_doubt * in_.shell_wall_m}
                                                       : figure(shell ? "shell_wall" : "mould_wall");
        const Figure contact = figure("mould_contact");
        const double correction = figure("freezing_correction").middle;
        case_.mould = {conductivity_.middle, density.middle, heat.middle};
        if (!std::isnan(correction)) case_.mould.conductivity_W_m_K /= correction;
        correction_ = correction;
        case_.outside = {room_temperature_K, emissivity_.middle, convection_.middle};
        case_.wall_m = out_.wall_m = wall_.middle;
        if (!std::isnan(contact.middle)) case_.contact_W_m2_K = contact.middle;
        for (const double x : {case_.mould.conductivity_W_m_K, case_.mould.density_kg_m3,
                               case_.mould.specific_heat_J_kg_K, case_.wall_m, emissivity_.middle, convection_.middle})
            if (std::isnan(x)) return "no cited figures for this mould; ";
        if (std::isnan(in_.mould_K)) return "the mould's temperature is not known, state --mould-temperature; ";
        case_.mould_K = in_.mould_K;
        case_.section = frozen_section(in_.part, in_.process, case_.wall_m);
        out_.mould_kind = (shell                        ? "shell of "
                           : in_.process == "permanent" ? "metal mould of "
                           : in_.process == "plaster"   ? "investment of "
                                                        : "sand of ") +
                          significant(case_.wall_m * 1000, 2) + " mm";
        return {};
    }

    std::string read_metal() {
        const auto melts = liquidus(m_), freezes = solidus(m_), fusion = latent_heat(m_);
        if (!melts) return melts.problem().text;
        if (!freezes) return freezes.problem().text;
        if (!fusion) return fusion.problem().text;
        const auto density = liquid_density(m_, melts->value_si);
        const auto solid = solid_specific_heat(m_, freezes->value_si);
        const auto melt = liquid_specific_heat(m_, std::max(in_.pour_K, melts->value_si));
        if (!density) return density.problem().text;
        if (!solid) return solid.problem().text;
        if (!melt) return melt.problem().text;
        const auto conducts = cited(m_, "thermal_conductivity", room_temperature_K);
        const double k = conducts ? conducts->value_si : metal_conductivity_W_m_K;
        case_.metal = {density->value_si, solid->value_si,   melt->value_si, fusion->value_si, k,
                       melt_conducts * k, freezes->value_si, melts->value_si};
        case_.pour_K = in_.pour_K;
        fusion_doubt_ = std::abs(fusion->relative());
        for (const Traced* t : {&*fusion, &*density, &*solid, &*melt}) add_sources(out_.time_s, *t);
        return {};
    }

    using Move = std::function<void(FreezingCase&)>;

    /// d ln(time) for a move of one input; nought where the moved case does not freeze.
    double change(const Move& move) const {
        FreezingCase moved = case_;
        move(moved);
        const auto t = freezing_course(moved, {16, 24, 0.04});
        return t && base_s_ > 0 ? std::abs(std::log(t->freezing_s / base_s_)) : 0;
    }

    void spread() {
        const auto base = freezing_course(case_, {16, 24, 0.04});
        base_s_ = base ? base->freezing_s : 0;
        struct Input {
            const char* name;
            Move move;
        };
        const std::array<Input, 8> inputs = {
            Input{
                "conductivity of the mould",
                [&](FreezingCase& c) { c.mould.conductivity_W_m_K *= 1 + conductivity_.doubt / conductivity_.middle; }},
            Input{"heat capacity of the mould",
                  [&](FreezingCase& c) { c.mould.specific_heat_J_kg_K *= 1 + capacity_doubt; }},
            Input{"thickness of the mould", [&](FreezingCase& c) { c.wall_m -= wall_.doubt; }},
            Input{"emissivity", [&](FreezingCase& c) { c.outside.emissivity -= emissivity_.doubt; }},
            Input{"convection", [&](FreezingCase& c) { c.outside.convection_W_m2_K -= convection_.doubt; }},
            Input{"temperature of the mould", [&](FreezingCase& c) { c.mould_K -= mould_doubt_K; }},
            Input{"temperature of the metal", [&](FreezingCase& c) { c.pour_K += pour_doubt_K; }},
            Input{"heat of fusion", [&](FreezingCase& c) { c.metal.fusion_J_kg *= 1 + fusion_doubt_; }}};
        double squares = 0, most = -1;
        for (const Input& input : inputs) {
            const double d = change(input.move);
            squares += d * d;
            if (d > most) out_.decides = input.name;
            most = std::max(most, d);
        }
        if (std::isfinite(case_.contact_W_m2_K)) {
            const double d = change([](FreezingCase& c) { c.contact_W_m2_K *= 1 - contact_doubt; });
            squares += d * d;
            if (d > most) out_.decides = "heat transfer between metal and mould";
        }
        const double ln = std::sqrt(squares);
        out_.low_s = out_.time_s.value_si * std::exp(-normal_90 * ln);
        out_.high_s = out_.time_s.value_si * std::exp(normal_90 * ln);
        out_.time_s.standard_uncertainty_si = out_.time_s.value_si * ln;
    }

    /// The slab of the same modulus, and Chvorinov's rule in a thick mould.
    void beside() {
        if (const auto slab = freezing_s(case_, {in_.part.modulus_m()}); slab) out_.of_slab_s = *slab;
        if (in_.process != "sand" && in_.process != "plaster") return;
        const Freezing metal{case_.metal.density_kg_m3,
                             case_.metal.fusion_J_kg +
                                 case_.metal.melt_J_kg_K * (case_.pour_K - case_.metal.liquidus_K),
                             case_.metal.liquidus_K};
        MouldMaterial mould{conductivity_.middle, case_.mould.density_kg_m3, case_.mould.specific_heat_J_kg_K,
                            case_.mould_K};
        out_.chvorinov_s_m2 = chvorinov_constant_s_m2(metal, mould) * (std::isnan(correction_) ? 1 : correction_);
        out_.chvorinov_s = out_.chvorinov_s_m2 * in_.part.modulus_m() * in_.part.modulus_m();
    }

    const Material& m_;
    const FreezingInputs& in_;
    FreezingCase case_;
    FreezingPlan out_;
    Figure conductivity_, emissivity_, convection_, wall_;
    double correction_ = no_number, fusion_doubt_ = 0, base_s_ = 0;
};

} // namespace

FrozenSection frozen_section(const Solid& solid, const std::string& process, double shell_wall_m) {
    FrozenSection s;
    s.half_m = solid.heavy_half_m;
    if (solid.bore_m > 0) {
        s.core_m = solid.bore_m / 2;
        if (process == "shell") s.core_wall_m = shell_wall_m;
        return s;
    }
    double spread = solid.heavy_half_m / solid.modulus_m() - 1;
    for (const double side : solid.box_m) // an end far from the middle does nothing for it
        if (side / 2 > far_end * solid.heavy_half_m) spread -= 2 * solid.heavy_half_m / side;
    s.spread = std::clamp(spread, 0.0, 2.0);
    s.edges = solid.edges;
    return s;
}

Result<FreezingPlan> freezing_plan(const Material& material, const FreezingInputs& inputs) {
    return FreezingPlanner(material, inputs).run();
}

Result<double> freezing_s(FreezingCase reckoned, const FrozenSection& section) {
    reckoned.section = section;
    const auto course = freezing_course(reckoned);
    if (!course) return course.problem();
    return course->freezing_s;
}

Result<Carry> carry_from_kiln(const Material& m, const std::string& process, double wall_m, double kiln_K) {
    Carry out;
    const auto figure = [&](const std::string& quantity) {
        const Range r = range_of(practices(m.catalogue, m.metal, quantity, process));
        out.sources.insert(out.sources.end(), r.sources.begin(), r.sources.end());
        return r.middle();
    };
    const MouldHeat mould{figure("mould_conductivity"), figure("mould_density"), figure("mould_specific_heat")};
    const Outside outside{room_temperature_K, figure("mould_emissivity"), figure("mould_convection")};
    if (std::isnan(mould.conductivity_W_m_K + outside.emissivity + outside.convection_W_m2_K))
        return Problem{Problem::Kind::no_value, "no cited figures for this mould", 0};
    out.seconds = {30, 60, 120};
    const auto kelvin = empty_mould_K(mould, wall_m, kiln_K, outside, out.seconds);
    if (!kelvin) return kelvin.problem();
    out.mould_K = *kelvin;
    return out;
}

} // namespace pourbook::casting
