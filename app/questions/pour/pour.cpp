#include "questions/pour/pour.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace pourbook {
namespace {

struct Bounded {
    const char* name;
    std::optional<double> value;
    double low, high; // low itself is refused where `above`
    bool above;
    const char* words;
};

/// A number outside its sensible range is refused by name.
std::string fault_of(const PourRequest& r) {
    const std::array bounds = {
        Bounded{"mould temperature", r.mould_K, 250, 1700, false, "from -23 to 1427 degC"},
        Bounded{"sprue height", r.sprue_height_m, 0, 3, true, "above 0 and at most 3 m"},
        Bounded{"sprue foot", r.sprue_foot_m, 0, 0.2, true, "above 0 and at most 200 mm"},
        Bounded{"shell wall", r.shell_wall_m, 0, 0.1, true, "above 0 and at most 100 mm"},
        Bounded{"diameter to clear", r.clear_m, 0, 2, true, "above 0 and at most 2 m"},
        Bounded{"power", r.power_W, 0, 1e6, true, "above 0 and at most 1 MW"},
        Bounded{"efficiency", r.efficiency, 0, 1, true, "above 0 and at most 100 %"},
        Bounded{"start temperature", r.start_K, 200, 900, false, "from -73 to 627 degC"},
        Bounded{"crucible volume", r.workshop.crucible_volume_m3, 0, 1, true, "above 0 and at most 1 m3"},
        Bounded{"furnace maximum", r.workshop.furnace_maximum_K, 293, 3500, false, "from 20 to 3227 degC"},
        Bounded{"number of castings", static_cast<double>(r.count), 1, 10000, false, "from 1 to 10000"}};
    for (const Bounded& b : bounds) {
        if (!b.value) continue;
        const bool fits = *b.value <= b.high && (b.above ? *b.value > b.low : *b.value >= b.low);
        if (!fits) return std::string(b.name) + " must be " + b.words;
    }
    if (r.pieces.empty())
        return "no part given: add --part tube:12mm:16mm:100mm, bar:, plate:, cone:, sphere:, ring: or stl:";
    return {};
}

class Planner {
public:
    Planner(const Catalogue& catalogue, const Metal& metal, const PourRequest& request)
        : catalogue_(catalogue), material_{catalogue, metal, request.conditions}, in_(request) {
        out_.metal = &metal;
        out_.request = request;
        out_.remarks = request.part_remarks;
    }

    Result<PourResult> run() {
        using Step = std::string (Planner::*)();
        constexpr std::array<Step, 6> steps = {&Planner::hazards, &Planner::geometry,  &Planner::temperatures,
                                               &Planner::feeding, &Planner::weigh_out, &Planner::check_limits};
        for (const Step step : steps)
            if (!(this->*step)().empty()) return problem_;
        melt();
        fill();
        money();
        bores();
        notes();
        return std::move(out_);
    }

private:
    const Metal& metal() const { return material_.metal; }

    template <class T> std::string failed(const Result<T>& result) {
        problem_ = result.problem();
        return problem_.text.empty() ? "failed" : problem_.text;
    }

    std::vector<const Practice*> practice(const std::string& quantity) const {
        return casting::practices(catalogue_, metal(), quantity, in_.process);
    }

    std::string hazards() {
        const auto may = casting::may_be_melted(catalogue_, metal(), in_.acknowledge_hazard);
        if (!may) return failed(may);
        out_.cautions = casting::cautions(catalogue_, metal(), in_.process);
        return {};
    }

    std::string geometry() {
        const auto density = casting::solid_density(material_);
        if (!density) return failed(density);
        out_.density = *density;
        out_.contraction = casting::free_contraction(material_);
        out_.allowance = casting::allowances(material_, in_.process);
        out_.tolerance = casting::tolerances(catalogue_, metal(), in_.process);
        if (!out_.contraction) out_.remarks.push_back("No pattern: " + out_.contraction.problem().text + ".");
        const double strain = out_.contraction ? out_.contraction->strain.value_si : 0;
        out_.fill.wall_m = std::numeric_limits<double>::max();
        for (const casting::Piece& piece : in_.pieces) {
            const auto pattern = casting::pattern_of(piece, in_.stock_m, strain, out_.tolerance);
            if (!pattern) return failed(pattern);
            add_piece(piece, *pattern);
        }
        out_.part_mass_kg = out_.part_volume_m3 * density->value_si;
        out_.cast_mass_kg = out_.cast_volume_m3 * density->value_si;
        if (!out_.contraction) out_.patterns.clear();
        return {};
    }

    void add_piece(const casting::Piece& piece, const casting::PiecePattern& pattern) {
        out_.part_volume_m3 += piece.solid.volume_m3;
        out_.part_surface_m2 += piece.solid.surface_m2;
        out_.cast_volume_m3 += pattern.cast.volume_m3;
        if (pattern.cast.modulus_m() > out_.modulus_m) {
            out_.modulus_m = pattern.cast.modulus_m();
            out_.freezes_last = piece.words;
        }
        if (pattern.cast.wall_m < out_.fill.wall_m) {
            out_.fill.wall_m = pattern.cast.wall_m;
            out_.fill.wall_estimated = pattern.cast.wall_estimated;
        }
        out_.patterns.push_back(pattern);
    }

    std::string temperatures() {
        const auto heat = casting::pour_heat(material_, in_.process, out_.fill.wall_m, in_.superheat_K);
        if (!heat) return failed(heat);
        out_.heat = *heat;
        if (in_.mould_K)
            out_.mould_K = *in_.mould_K;
        else if (!heat->mould.empty())
            out_.mould_K = heat->mould.middle();
        else if (in_.process == "sand")
            out_.mould_K = room_temperature_K;
        if (out_.mould_K >= out_.heat.pour.value_si) {
            problem_ = {Problem::Kind::refused, "the mould is to be as hot as the metal: it would never freeze", 0};
            return problem_.text;
        }
        return {};
    }

    std::string feeding() {
        casting::FeedingInputs inputs;
        inputs.process = in_.process;
        inputs.casting_m3 = out_.cast_volume_m3;
        inputs.modulus_m = out_.modulus_m;
        inputs.pour_K = out_.heat.pour.value_si;
        if (!std::isnan(out_.mould_K)) inputs.mould_K = out_.mould_K;
        if (in_.shell_wall_m) inputs.shell_wall_m = *in_.shell_wall_m;
        const auto plan = casting::feeding_plan(material_, inputs);
        const auto melt = casting::liquid_density(material_, inputs.pour_K);
        if (!plan) return failed(plan);
        out_.feeding = *plan;
        out_.melt_density = *melt;
        if (!in_.no_feeder && plan->feeder) out_.feeder_kg = plan->feeder->chosen().volume_m3() * out_.density.value_si;
        if (!in_.no_feeder && !plan->feeder) out_.remarks.push_back("No feeder: " + plan->feeder.problem().text + ".");
        if (in_.no_feeder) out_.remarks.push_back("Without a feeder it will sink at " + out_.freezes_last + ".");
        return {};
    }

    /// The stated figure, else the middle of the printed range.
    casting::Traced stated_or(const std::optional<double>& stated, const std::string& quantity) {
        casting::Traced t;
        t.how = "as stated";
        if (stated)
            t.value_si = *stated;
        else
            t = casting::traced(casting::range_of(practice(quantity)), "printed range");
        return t;
    }

    std::string weigh_out() {
        out_.melt_loss = stated_or(in_.melt_loss, "melt_loss");
        out_.gating = stated_or(std::nullopt, "gating_share");
        out_.usual_yield = casting::range_of(practice("yield"));
        casting::ChargeInputs inputs;
        inputs.casting_kg = out_.cast_mass_kg;
        inputs.gating_kg = in_.gating_kg.value_or(out_.gating.value_si * out_.cast_mass_kg);
        inputs.feeder_kg = out_.feeder_kg;
        inputs.melt_loss = out_.melt_loss.value_si;
        inputs.heel_kg = in_.heel_kg;
        inputs.yield = in_.yield;
        const auto charge = casting::charge_for(inputs);
        if (!charge) return failed(charge);
        out_.charge = *charge;
        out_.melt_volume_m3 = charge->charge_kg / out_.melt_density.value_si;
        if (charge->short_of_feed)
            out_.remarks.push_back("The yield stated leaves less metal than gating and feeder need.");
        return {};
    }

    std::string check_limits() {
        casting::Demand demand;
        demand.pour_K = out_.heat.pour.value_si;
        demand.mould_K = in_.process == "sand" ? no_number : out_.mould_K;
        demand.heat_volume_m3 = out_.melt_volume_m3;
        demand.heat_mass_kg = out_.charge.charge_kg;
        demand.process = in_.process;
        const auto checked = casting::within_limits(catalogue_, metal(), in_.workshop, demand);
        if (!checked) return failed(checked);
        out_.limits = *checked;
        out_.remarks.insert(out_.remarks.begin(), checked->cautions.begin(), checked->cautions.end());
        const std::size_t in_one = in_.workshop.crucible_volume_m3 ? checked->castings_per_heat : in_.count;
        out_.heats = (in_.count + in_one - 1) / in_one;
        return {};
    }

    void melt() {
        out_.melt_heat = casting::heat_to_pour(material_, in_.start_K, out_.heat.pour.value_si);
        if (!out_.melt_heat) {
            out_.remarks.push_back("No heat to melt: " + out_.melt_heat.problem().text + ".");
            return;
        }
        out_.melt_energy_J = out_.melt_heat->total_J_kg * out_.charge.charge_kg;
        out_.melt_energy_uncertainty_J = out_.melt_heat->standard_uncertainty_J_kg * out_.charge.charge_kg;
        out_.firing = casting::firing(catalogue_, metal(), out_.melt_energy_J, in_.power_W, in_.efficiency);
    }

    void fill() {
        PourFill& f = out_.fill;
        f.least_section = casting::range_of(practice("least_section"));
        f.wall_too_thin = !f.least_section.empty() && f.wall_m < f.least_section.high_si;
        if (f.wall_too_thin)
            out_.remarks.push_back("The thinnest section is " + trimmed(f.wall_m * 1000, 3) +
                                   " mm; this process is printed for " + trimmed(f.least_section.low_si * 1000, 2) +
                                   " to " + trimmed(f.least_section.high_si * 1000, 2) +
                                   " mm at the least: hotter mould and metal, or a thicker wall.");
        if (!in_.sprue_height_m) return;
        f.speed_m_s = casting::sprue_speed_m_s(*in_.sprue_height_m);
        if (!in_.sprue_foot_m) return;
        f.foot_area_m2 = std::numbers::pi / 4 * *in_.sprue_foot_m * *in_.sprue_foot_m;
        const double hot_m3 = out_.charge.poured_kg / out_.melt_density.value_si;
        f.time_s = casting::fill_time_s(hot_m3, *in_.sprue_height_m, f.foot_area_m2);
    }

    void money() {
        const Result<Evaluated> price = evaluate(catalogue_, metal(), "price", in_.conditions);
        if (!price) {
            out_.money.price = price.problem();
            return;
        }
        PourMoney& m = out_.money;
        m.price = casting::traced(*price);
        m.value = price->value_si * out_.charge.charge_kg;
        const double half = normal_90 * price->standard_uncertainty_si * out_.charge.charge_kg;
        m.low = std::max(m.value - half, 0.0);
        m.high = m.value + half;
        m.returns_value = price->value_si * out_.charge.returns_kg;
        for (const SourceValue& s : price->sources)
            for (const PriceSet& set : catalogue_.price_sets)
                for (const Price& p : set.prices)
                    if (s.record_id == "price." + p.metal && catalogue_.price(p.metal) == &p &&
                        (m.as_of.empty() || p.as_of < m.as_of))
                        m.as_of = p.as_of;
    }

    void bores() {
        if (!in_.clear_m) return;
        const auto faults = casting::bores_too_small(out_.patterns, *in_.clear_m, in_.stock_m > 0);
        out_.remarks.insert(out_.remarks.end(), faults.begin(), faults.end());
    }

    void notes() {
        out_.deoxidation = practice("deoxidation");
        out_.gas = practice("gas_risk");
        out_.draft = practice("draft");
        out_.defects = practice("defect");
        out_.checklist = practice("checklist");
        out_.burnout = practice("burnout_step");
        if (in_.process == "shell") out_.shell_steps = practice("shell_step");
    }

    const Catalogue& catalogue_;
    casting::Material material_;
    const PourRequest& in_;
    PourResult out_;
    Problem problem_;
};

} // namespace

Result<PourResult> pour(const Catalogue& catalogue, const PourRequest& request) {
    const auto metal = find_metal(catalogue, request.metal);
    if (!metal) return metal.problem();
    if (const std::string fault = fault_of(request); !fault.empty())
        return Problem{Problem::Kind::unreadable, fault, 0};
    return Planner(catalogue, **metal, request).run();
}

} // namespace pourbook
