#include "core/casting/feeding_plan.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook::casting {
namespace {

constexpr double freezing_doubt = 0.5; // relative: the rule is good to a factor of two

class Planner {
public:
    Planner(const Material& material, const FeedingInputs& inputs) : m_(material), in_(inputs) {}

    Result<FeedingPlan> run() {
        const auto melts = liquidus(m_), freezes = solidus(m_);
        if (!melts) return melts.problem();
        if (!freezes) return freezes.problem();
        const auto cool = liquid_density(m_, melts->value_si), hot = liquid_density(m_, in_.pour_K);
        if (!cool) return cool.problem();
        if (!hot) return hot.problem();
        shrink(*cool, *hot);
        freeze(*melts, *cool);
        size();
        return plan_;
    }

private:
    /// Middle of a practice figure; its sources enter the plan. NaN where there is none.
    double figure(const std::string& quantity) {
        const Range r = range_of(practices(m_.catalogue, m_.metal, quantity, in_.process));
        plan_.sources.insert(plan_.sources.end(), r.sources.begin(), r.sources.end());
        return r.middle();
    }

    void shrink(const Traced& cool, const Traced& hot) {
        plan_.melt_contraction = 1 - hot.value_si / cool.value_si;
        plan_.share = Traced{};
        const Result<Traced> solid = solidification_contraction(m_);
        if (!solid) {
            plan_.notes.push_back(solid.problem().text + ": the feed demand is not known, sized by modulus alone");
            return;
        }
        plan_.solidification = solid->value_si;
        plan_.share = *solid;
        plan_.share.value_si = one_after_the_other(plan_.melt_contraction, solid->value_si);
        plan_.share.how =
            "melt " + significant(100 * plan_.melt_contraction, 2) + " % from pour to liquidus; " + solid->how;
        add_sources(plan_.share, cool);
        if (plan_.share.value_si <= 0)
            plan_.notes.push_back("the metal grows as it freezes: it asks for no feed, but can burst a closed mould");
    }

    void freeze(const Traced& melts, const Traced& density) {
        const Result<Traced> fusion = latent_heat(m_), cp = liquid_specific_heat(m_, in_.pour_K);
        if (!fusion || !cp) {
            plan_.freezing_s = (fusion ? cp : fusion).problem();
            return;
        }
        Freezing metal{density.value_si, fusion->value_si + cp->value_si * (in_.pour_K - melts.value_si),
                       melts.value_si};
        double seconds = no_number;
        if (in_.process == "shell")
            seconds = in_shell(metal);
        else if (in_.process == "sand" || in_.process == "plaster")
            seconds = in_thick_mould(metal);
        if (std::isnan(seconds)) {
            plan_.freezing_s = Problem{Problem::Kind::no_value, "freezing time: no cited figure for this mould", 0};
            return;
        }
        Traced t;
        t.value_si = seconds;
        t.standard_uncertainty_si = freezing_doubt * seconds;
        t.estimated = true;
        t.how = plan_.mould_kind + "; good to a factor of two";
        t.how_known = HowKnown::memory;
        add_sources(t, *fusion);
        plan_.freezing_s = t;
    }

    double in_shell(const Freezing& metal) {
        plan_.mould_kind = "thin preheated shell: time grows with the modulus";
        rules_.time_power = 1;
        plan_.shell_wall_m = std::isnan(in_.shell_wall_m) ? figure("shell_wall") : in_.shell_wall_m;
        const ThinShell shell{plan_.shell_wall_m, figure("mould_conductivity"), figure("shell_surface_transfer")};
        return shell_time_s_per_m(metal, shell, room_temperature_K) * in_.modulus_m;
    }

    double in_thick_mould(const Freezing& metal) {
        plan_.mould_kind = "thick mould: time grows with the square of the modulus";
        const MouldMaterial mould{figure("mould_conductivity"), figure("mould_density"), figure("mould_specific_heat"),
                                  in_.mould_K};
        if (!(in_.mould_K < metal.temperature_K)) return no_number;
        plan_.constant_s_m2 = chvorinov_constant_s_m2(metal, mould);
        const double correction = figure("freezing_correction");
        if (!std::isnan(correction)) plan_.constant_s_m2 *= correction;
        return plan_.constant_s_m2 * in_.modulus_m * in_.modulus_m;
    }

    void size() {
        const double ratio = figure("feeder_modulus_ratio");
        rules_.time_ratio = ratio * ratio;
        rules_.volume_ratio = figure("feeder_volume_ratio");
        rules_.height_ratio = figure("feeder_height_ratio");
        rules_.efficiency = figure("feeder_efficiency");
        if (std::isnan(ratio) || std::isnan(rules_.volume_ratio) || std::isnan(rules_.height_ratio) ||
            std::isnan(rules_.efficiency)) {
            plan_.feeder = Problem{Problem::Kind::no_value, "feeder: a rule is missing from the reference", 0};
            return;
        }
        const double share = std::isnan(plan_.share.value_si) ? 0 : plan_.share.value_si;
        plan_.feeder = feeder_for(in_.casting_m3, in_.modulus_m, share, rules_);
        if (in_.process == "shell" || in_.process == "plaster")
            plan_.notes.push_back("with a burnt-out pattern the cup and sprue can be this feeder, if they sit on the "
                                  "heaviest section and nothing thinner lies between");
    }

    const Material& m_;
    const FeedingInputs& in_;
    FeedRules rules_;
    FeedingPlan plan_;
};

} // namespace

Result<FeedingPlan> feeding_plan(const Material& material, const FeedingInputs& inputs) {
    return Planner(material, inputs).run();
}

} // namespace pourbook::casting
