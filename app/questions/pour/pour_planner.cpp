#include "questions/pour/pour_planner.hpp"

#include "core/casting/makeable.hpp"
#include "core/quantity/format.hpp"
#include "questions/pour/pour_gating.hpp"
#include "questions/pour/pour_money.hpp"
#include "questions/pour/pour_weighing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace pourbook {
namespace {

constexpr double poured_over_casting = 1.5; // before feeder and gating are known, for the time of filling
constexpr double lighter_molten = 0.93;     // density of the melt over that of the cold solid, where nothing is cited

constexpr std::array commonest = {"gas", "shrinkage", "cold run", "moisture", "oxygen", "hot tear"};

std::string shown_mm(double metres) {
    return trimmed(metres * 1000, 3) + " mm";
}

class PourPlanner {
public:
    PourPlanner(const Catalogue& catalogue, const Metal& metal, const PourRequest& request)
        : catalogue_(catalogue), material_{catalogue, metal, request.conditions}, in_(request) {
        out_.metal = &metal;
        out_.request = request;
        out_.remarks = request.part_remarks;
    }

    Result<PourResult> run() {
        using Step = std::string (PourPlanner::*)();
        constexpr std::array<Step, 5> steps = {&PourPlanner::hazards, &PourPlanner::geometry,
                                               &PourPlanner::temperatures, &PourPlanner::feed_and_weigh,
                                               &PourPlanner::check_limits};
        for (const Step step : steps)
            if (!(this->*step)().empty()) return problem_;
        melt();
        fill();
        pattern();
        out_.money = pour_money(catalogue_, metal(), in_, out_.charge);
        bores();
        notes();
        return std::move(out_);
    }

private:
    const Metal& metal() const { return material_.metal; }

    std::string refuse(const Problem& problem) {
        problem_ = problem;
        return problem_.text.empty() ? "failed" : problem_.text;
    }
    template <class T> std::string failed(const Result<T>& result) { return refuse(result.problem()); }

    void remark(const std::string& text) { out_.remarks.push_back(text); }

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
        if (!out_.contraction) remark("No pattern: " + out_.contraction.problem().text + ".");
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
        const casting::Solid& cast = pattern.cast;
        out_.part_volume_m3 += piece.solid.volume_m3;
        out_.part_surface_m2 += piece.solid.surface_m2;
        out_.cast_volume_m3 += cast.volume_m3;
        if (out_.freezes_last.empty() || cast.modulus_m() > out_.heaviest.modulus_m()) {
            out_.heaviest = cast;
            out_.freezes_last = piece.words;
            if (cast.heavy_at)
                out_.freezes_last += " about x " + trimmed((*cast.heavy_at)[0], 3) + ", y " +
                                     trimmed((*cast.heavy_at)[1], 3) + ", z " + trimmed((*cast.heavy_at)[2], 3) +
                                     " of the file";
        }
        if (piece.solid.bodies > 1)
            remark(piece.words + " holds " + std::to_string(piece.solid.bodies) +
                   " separate surfaces: bodies or closed hollows. Bodies that overlap count twice.");
        if (cast.wall_m < out_.fill.wall_m) {
            out_.fill.wall_m = cast.wall_m;
            out_.fill.wall_estimated = cast.wall_estimated;
            thinnest_ = cast;
        }
        out_.patterns.push_back(pattern);
    }

    std::string temperatures() {
        const auto melts = casting::liquidus(material_), freezes = casting::solidus(material_);
        if (!melts) return failed(melts);
        if (!freezes) return failed(freezes);
        const std::string section = casting::section_class(material_, out_.fill.wall_m);
        out_.mould = casting::mould_heat(material_, in_.process, section, freezes->value_si);
        if (in_.mould_K)
            out_.mould_K = *in_.mould_K;
        else if (!out_.mould.range.empty())
            out_.mould_K = out_.mould.range.middle();
        else if (in_.process == "sand")
            out_.mould_K = room_temperature_K;
        casting::PourHeatInputs inputs;
        inputs.process = in_.process;
        inputs.part = thinnest_;
        inputs.thinnest_m = out_.fill.wall_m;
        inputs.mould_K = out_.mould_K;
        inputs.fill_s =
            casting::pouring_time_s(poured_over_casting * out_.cast_mass_kg, out_.fill.wall_m, light_metal(out_));
        inputs.superheat_K = in_.superheat_K;
        inputs.furnace_maximum_K = in_.workshop.furnace_maximum_K;
        const auto heat = casting::pour_heat(material_, inputs);
        if (!heat) return failed(heat);
        out_.heat = *heat;
        for (const std::string& c : heat->cautions) remark(c);
        return mould_and_metal();
    }

    std::string mould_and_metal() {
        const double pour_K = out_.heat.pour.value_si;
        if (out_.mould_K >= pour_K)
            return refuse({Problem::Kind::refused, "the mould is to be as hot as the metal: it would never freeze", 0});
        if (in_.mould_K && in_.process != "sand" && *in_.mould_K < 373.15)
            remark("A mould below 100 degC may still be damp: dry it through first; and thin walls run cold in it.");
        if (!out_.mould.metal_limit_K || pour_K <= *out_.mould.metal_limit_K) return {};
        const std::string& stated = in_.workshop.mould_material;
        if (!stated.empty() && stated.find("gypsum") == std::string::npos) return {};
        return refuse({Problem::Kind::refused,
                       "the metal is poured at " + trimmed(pour_K - 273.15, 4) + " degC, above " +
                           trimmed(*out_.mould.metal_limit_K - 273.15, 4) + " degC for " + out_.mould.limit_why +
                           ". If yours is another investment, name it: --mould 'phosphate-bonded investment'",
                       0});
    }

    casting::Traced melt_density() {
        const auto melt = casting::liquid_density(material_, out_.heat.pour.value_si);
        if (melt) return *melt;
        remark("The density of the melt is not known (" + melt.problem().text +
               "): taken as 7 % less than that of the cold solid.");
        casting::Traced t = out_.density;
        t.value_si *= lighter_molten;
        t.estimated = true;
        t.how = "7 % below the cold solid: nothing cited";
        return t;
    }

    void freezing() {
        casting::FreezingInputs inputs;
        inputs.process = in_.process;
        inputs.part = out_.heaviest;
        inputs.pour_K = out_.heat.pour.value_si;
        inputs.mould_K = out_.mould_K;
        if (in_.shell_wall_m) inputs.shell_wall_m = *in_.shell_wall_m;
        out_.freezing = casting::freezing_plan(material_, inputs);
        if (!out_.freezing) return;
        const auto thinnest = casting::frozen_section(thinnest_, in_.process, out_.freezing->wall_m);
        casting::FrozenSection wall = thinnest;
        wall.half_m = out_.fill.wall_m / 2;
        if (wall.core_m == 0) wall.spread = 0;
        const auto seconds = casting::freezing_s(out_.freezing->reckoned, wall);
        if (seconds) out_.thinnest_s = std::min(*seconds, out_.freezing->time_s.value_si);
        if (in_.process == "shell" && !std::isnan(out_.mould_K))
            out_.carry = casting::carry_from_kiln(material_, in_.process, out_.freezing->wall_m, out_.mould_K);
    }

    std::string feed_and_weigh() {
        out_.melt_density = melt_density();
        freezing();
        casting::FeedingInputs inputs;
        inputs.process = in_.process;
        inputs.casting_m3 = out_.cast_volume_m3;
        inputs.heaviest = out_.heaviest;
        inputs.pour_K = out_.heat.pour.value_si;
        const auto plan = casting::feeding_plan(material_, inputs, out_.freezing);
        if (plan)
            out_.feeding = *plan;
        else
            out_.feeding.feeder = plan.problem();
        const auto& f = out_.feeding;
        const double all = static_cast<double>(f.feeders);
        if (!in_.no_feeder && f.feeder) out_.feeder_kg = all * f.feeder->chosen().volume_m3() * out_.density.value_si;
        if (!in_.no_feeder && !f.feeder && !f.too_thin) remark("No feeder: " + f.feeder.problem().text + ".");
        if (in_.no_feeder && !std::isnan(f.hole_m3) && f.hole_m3 > 0)
            remark("Without a feeder " + significant(f.hole_m3 * 1e6, 2) + " cm3 will be missing at " +
                   out_.freezes_last + ": " +
                   (f.too_thin ? "as pores through the wall."
                               : "a sunk top or a hollow in its middle, unless the sprue still feeds it."));
        const auto fault = weigh_pour(material_, in_, out_);
        return fault ? refuse(*fault) : std::string{};
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
            remark("No heat to melt: " + out_.melt_heat.problem().text + ".");
            return;
        }
        out_.melt_energy_J = out_.melt_heat->total_J_kg * out_.charge.charge_kg;
        out_.melt_energy_uncertainty_J = out_.melt_heat->standard_uncertainty_J_kg * out_.charge.charge_kg;
        out_.firing = casting::firing(catalogue_, metal(), out_.melt_energy_J, out_.heat.pour.value_si, in_.power_W,
                                      in_.efficiency);
    }

    void fill() {
        PourFill& f = out_.fill;
        f.least_section = casting::range_of(practice("least_section"));
        f.wall_too_thin = !f.least_section.empty() && f.wall_m < f.least_section.high_si;
        if (f.wall_too_thin)
            remark("The thinnest section is " + shown_mm(f.wall_m) + "; this process is printed for " +
                   trimmed(f.least_section.low_si * 1000, 2) + " to " + trimmed(f.least_section.high_si * 1000, 2) +
                   " mm at the least: " + (in_.process == "sand" ? "hotter metal" : "hotter mould and metal") +
                   ", or a thicker wall.");
        for (const std::string& w : f.gating.warnings) remark(w);
    }

    void pattern() {
        if (in_.process == "shell" && out_.freezing)
            for (const casting::Piece& piece : in_.pieces) {
                casting::Solid cast = piece.solid;
                for (const casting::PiecePattern& p : out_.patterns)
                    if (p.words == piece.words) cast = p.cast;
                for (const std::string& s : casting::cannot_be_shelled(piece.words, cast, out_.freezing->wall_m))
                    remark(s);
            }
        if (in_.process != "shell")
            for (const casting::Piece& piece : in_.pieces)
                for (const std::string& s :
                     casting::core_cautions(piece.words, piece.solid, in_.process, out_.melt_density.value_si))
                    remark(s);
        if (out_.freezing)
            for (const casting::Piece& piece : in_.pieces) {
                const auto& m = out_.freezing->reckoned.metal;
                const std::string s =
                    casting::tears_round_core(piece.words, piece.solid, in_.process, m.liquidus_K - m.solidus_K);
                if (!s.empty()) remark(s);
            }
        for (const casting::Piece& piece : in_.pieces)
            if (const std::string s = casting::lies_flat(piece.words, piece.solid); !s.empty()) remark(s);
        if (!out_.contraction) return;
        out_.mould_growth = casting::mould_growth(casting::range_of(practice("mould_growth")), out_.mould_K);
        const auto& strain = out_.contraction->strain;
        out_.span = casting::pattern_span(strain.value_si, strain.standard_uncertainty_si, out_.allowance.low,
                                          out_.allowance.high, out_.mould_growth);
        const double taken = out_.mould_growth.any() ? out_.span.middle() : strain.value_si;
        out_.scale = 1 + taken;
        casting::set_patterns(out_.patterns, taken);
        casting::set_spans(out_.patterns, out_.span);
        if (in_.own_trials) casting::set_own(out_.patterns, out_.span, in_.own.lengths);
    }

    void bores() {
        if (!in_.clear_m) return;
        const auto faults = casting::bores_too_small(out_.patterns, *in_.clear_m, in_.stock_m > 0);
        out_.remarks.insert(out_.remarks.end(), faults.begin(), faults.end());
    }

    void notes() {
        out_.deoxidation = practice("deoxidation");
        out_.additions = practice("addition");
        for (const char* quantity : {"after_pour", "machining", "heat_treatment", "joining"})
            for (const Practice* p : practice(quantity)) out_.after.push_back(p);
        use_up();
        out_.gas = practice("gas_risk");
        out_.draft = practice("draft");
        const Metal* principal = casting::principal_element(material_);
        const bool takes_up_oxygen = principal && (principal->slug == "copper" || principal->slug == "silver");
        for (const Practice* p : practice("defect"))
            if (std::find(commonest.begin(), commonest.end(), p->grade) != commonest.end() &&
                (p->grade != "oxygen" || takes_up_oxygen))
                out_.defects.push_back(p);
        out_.checklist = practice("checklist");
        out_.burnout = practice("burnout_step");
        if (in_.process == "shell") out_.shell_steps = practice("shell_step");
    }

    void use_up() {
        casting::ConsumableInputs c;
        c.process = in_.process;
        c.volume_m3 = out_.cast_volume_m3;
        c.surface_m2 = out_.part_surface_m2;
        c.shell_wall_m = out_.freezing ? out_.freezing->wall_m : in_.shell_wall_m.value_or(no_number);
        c.gating_share = out_.charge.returns_kg / out_.cast_mass_kg;
        c.propane_kg_low = out_.firing.propane_kg_low;
        c.propane_kg_high = out_.firing.propane_kg_high;
        out_.consumables = casting::consumables(catalogue_, metal(), c);
        out_.sprue_load = sprue_load_of(material_, out_);
        if (const std::string said = weak_sprue(out_); !said.empty()) remark(said);
    }

    const Catalogue& catalogue_;
    casting::Material material_;
    const PourRequest& in_;
    casting::Solid thinnest_;
    PourResult out_;
    Problem problem_;
};

} // namespace

Result<PourResult> planned_pour(const Catalogue& catalogue, const Metal& metal, const PourRequest& request) {
    return PourPlanner(catalogue, metal, request).run();
}

} // namespace pourbook
