#include "core/casting/feeding_plan.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::casting {
namespace {

constexpr double most_feeders = 4;
constexpr double hardly_shrinks = 0.01; // grey iron

std::string in_mm(double metres) {
    return significant(metres * 1000, 2) + " mm";
}

class FeedingPlanner {
public:
    FeedingPlanner(const Material& material, const FeedingInputs& inputs, const Result<FreezingPlan>& freezing)
        : m_(material), in_(inputs), freezing_(freezing) {}

    Result<FeedingPlan> run() {
        const auto melts = liquidus(m_);
        if (!melts) return melts.problem();
        const auto cool = liquid_density(m_, melts->value_si), hot = liquid_density(m_, in_.pour_K);
        if (!cool) return cool.problem();
        if (!hot) return hot.problem();
        shrink(*cool, *hot);
        reach();
        size();
        if (plan_.too_thin) thin_wall();
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
        plan_.hole_m3 = std::max(0.0, plan_.share.value_si) * in_.casting_m3;
        if (plan_.share.value_si <= 0)
            plan_.notes.push_back("the metal grows as it freezes: it asks for no feed, but can burst a closed mould");
    }

    /// How far a feeder serves, and whether one can.
    void reach() {
        plan_.thickness_m = 2 * in_.heaviest.heavy_half_m;
        plan_.distance_m = figure("feeding_distance") * plan_.thickness_m;
        plan_.end_effect_m = figure("feeding_end_effect") * plan_.thickness_m;
        const double longest = std::max({in_.heaviest.box_m[0], in_.heaviest.box_m[1], in_.heaviest.box_m[2]});
        const double needed = std::ceil(longest / (2 * plan_.distance_m + plan_.thickness_m));
        plan_.too_thin = in_.heaviest.modulus_m() < figure("feeder_least_modulus") || needed > most_feeders;
        plan_.feeders = std::isfinite(needed) && needed > 1 ? static_cast<std::size_t>(needed) : 1;
    }

    void size() {
        FeedRules rules;
        rules.modulus_ratio = figure("feeder_modulus_ratio");
        rules.neck_ratio = figure("feeder_neck_ratio");
        rules.volume_ratio = figure("feeder_volume_ratio");
        rules.height_ratio = figure("feeder_height_ratio");
        rules.efficiency = figure("feeder_efficiency");
        if (std::isnan(rules.modulus_ratio + rules.neck_ratio + rules.volume_ratio + rules.height_ratio +
                       rules.efficiency)) {
            plan_.feeder = Problem{Problem::Kind::no_value, "feeder: a rule is missing from the reference", 0};
            return;
        }
        if (plan_.too_thin) {
            plan_.feeder = Problem{Problem::Kind::refused,
                                   "no feeder can serve a wall of " + in_mm(plan_.thickness_m) +
                                       ": its neck would freeze with the wall",
                                   0};
            return;
        }
        const double share = std::isnan(plan_.share.value_si) ? 0 : plan_.share.value_si;
        const double each_m3 = in_.casting_m3 / static_cast<double>(plan_.feeders);
        const double modulus = in_.heaviest.modulus_m();
        const double widest = std::min({in_.heaviest.box_m[0], in_.heaviest.box_m[1], in_.heaviest.box_m[2]});
        plan_.feeder = feeder_for(each_m3, modulus, share, rules, widest);
        rules.sleeve_factor = figure("sleeve_modulus_factor");
        rules.efficiency = figure("sleeve_efficiency");
        if (!std::isnan(rules.sleeve_factor + rules.efficiency))
            plan_.sleeved = feeder_for(each_m3, modulus, share, rules, widest);
        feeder_time();
        if (share > 0 && share < hardly_shrinks)
            plan_.notes.push_back(
                "this metal hardly shrinks as it freezes: in a stiff mould a feeder by feed demand is "
                "enough");
        if (in_.process == "shell" || in_.process == "plaster")
            plan_.notes.push_back("with a burnt-out pattern the cup and sprue can be this feeder, if they sit on the "
                                  "heaviest section and nothing thinner lies between");
    }

    void feeder_time() {
        if (!plan_.feeder || !freezing_) return;
        const Cylinder& c = plan_.feeder->chosen();
        const double half = std::min(c.diameter_m, c.height_m) / 2;
        const auto t = freezing_s(freezing_->reckoned, {half, std::clamp(half / c.modulus_m() - 1, 0.0, 2.0)});
        if (t) plan_.feeder_freezing_s = *t;
    }

    void thin_wall() {
        plan_.gate_spacing_m = figure("gate_spacing") * plan_.thickness_m;
        if (std::isnan(plan_.share.value_si) || plan_.share.value_si <= 0) return;
        if (plan_.solidification <= 0) {
            plan_.notes.push_back(
                "its graphite grows as it freezes and makes up for most of what the melt loses: a stiff "
                "mould, and gates that freeze early");
            return;
        }
        plan_.notes.push_back("expect fine pores through the wall, most midway between gates and at the inside of "
                              "corners: up to " +
                              significant(100 * std::max(0.0, plan_.solidification), 2) + " % of it, " +
                              significant(plan_.hole_m3 * 1e6, 2) + " cm3 in all if nothing flows after");
        plan_.notes.push_back("against them: a wall that thickens toward the gate (a degree or so), a hotter mould at "
                              "the gates than at the end, pouring at the cool end of the window");
    }

    const Material& m_;
    const FeedingInputs& in_;
    const Result<FreezingPlan>& freezing_;
    FeedingPlan plan_;
};

} // namespace

Result<FeedingPlan> feeding_plan(const Material& material, const FeedingInputs& inputs,
                                 const Result<FreezingPlan>& freezing) {
    return FeedingPlanner(material, inputs, freezing).run();
}

} // namespace pourbook::casting
