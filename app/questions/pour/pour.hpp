// From a chosen metal and a part to a casting plan: pattern, charge, feeder, temperatures, heat, cost, cautions.
#pragma once

#include "core/casting/charge.hpp"
#include "core/casting/consumables.hpp"
#include "core/casting/contraction.hpp"
#include "core/casting/feeding_plan.hpp"
#include "core/casting/furnace.hpp"
#include "core/casting/gating.hpp"
#include "core/casting/hazards.hpp"
#include "core/casting/heat.hpp"
#include "core/casting/limits.hpp"
#include "core/casting/makeable.hpp"
#include "core/casting/melt_loss.hpp"
#include "core/casting/pattern.hpp"
#include "core/casting/pour_heat.hpp"
#include "questions/pour/pour_request.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PourFill {
    casting::GatingPlan gating;
    casting::Range least_section;
    double wall_m = 0; // thinnest
    bool wall_estimated = false;
    bool wall_too_thin = false;
};

/// The yield one's own castings had, and whether it asks for more metal than the plan.
struct OwnYield {
    double mean = no_number;
    std::size_t castings = 0;
    double planned_kg = 0; // the charge by the plan alone
    bool taken = false;
};

/// Lots of the metal on one's own shelf against what is to be melted.
struct Shelf {
    double kg = 0, need_kg = 0; // of all castings wanted
    std::vector<std::string> lots;

    double short_kg() const { return need_kg > kg ? need_kg - kg : 0; }
};

struct PourMoney {
    double value = no_number, low = no_number, high = no_number; // USD
    std::string as_of;
    Result<casting::Traced> price = Problem{}; // USD/kg
    double returns_value = no_number;
    bool by_lots = false; // what the person's own lots cost
};

struct PourResult {
    const Metal* metal = nullptr;
    PourRequest request;
    std::vector<casting::Warning> cautions;
    std::vector<std::string> remarks; // cautions of this plan: limits, thin wall, missing data
    double part_volume_m3 = 0, part_surface_m2 = 0, cast_volume_m3 = 0;
    casting::Traced density, melt_density;
    double part_mass_kg = 0, cast_mass_kg = 0;
    Result<casting::Contraction> contraction = Problem{};
    casting::Allowance allowance;
    std::vector<casting::PiecePattern> patterns; // empty without a contraction
    casting::ToleranceTable tolerance;
    casting::PatternSpan span;
    casting::MouldGrowth mould_growth; // on heating to its temperature
    double scale = no_number;          // of the pattern, own castings apart; NaN without a contraction
    casting::PourHeat heat;
    casting::MouldHeatPlan mould;
    double mould_K = no_number;
    Result<casting::FreezingPlan> freezing = Problem{}; // of the heaviest place
    double thinnest_s = no_number;                      // until the thinnest wall is solid
    Result<casting::Carry> carry = Problem{};           // from the kiln
    casting::Charge charge;                             // for one casting
    casting::Traced melt_loss, gating;
    bool gating_by_plan = false; // weighed from the planned sprue and gates, not by the printed share
    std::vector<casting::ElementLoss> element_losses;
    casting::Range usual_yield;
    casting::FeedingPlan feeding;
    std::string freezes_last; // piece that sinks if it is not fed
    casting::Solid heaviest;  // that piece, as cast
    double feeder_kg = 0;     // of all feeders
    double sleeved_yield = no_number;
    PourFill fill;
    Result<casting::MeltHeat> melt_heat = Problem{};
    double melt_energy_J = no_number, melt_energy_uncertainty_J = no_number; // one casting
    casting::Firing firing;
    PourMoney money;
    std::optional<OwnYield> own_yield;
    std::optional<Shelf> shelf;
    casting::Consumables consumables;
    casting::SprueLoad sprue_load;
    std::vector<const Practice*> additions; // to the melt
    std::vector<const Practice*> after;     // knock-out, machining, heat treatment, joining
    casting::Checked limits;
    double melt_volume_m3 = 0; // of one charge
    std::size_t heats = 1;
    std::vector<const Practice*> deoxidation, gas, shell_steps, burnout, checklist, draft, defects;
};

/// Errors: unknown metal; unreadable (a number of the request, named); refused (hazard, limit, physics); no_value where
/// density, solidus or liquidus are missing.
Result<PourResult> pour(const Catalogue& catalogue, const PourRequest& request);

} // namespace pourbook
