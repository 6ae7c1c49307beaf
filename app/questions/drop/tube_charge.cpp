#include "questions/drop/tube_charge.hpp"

#include "questions/pour/pour.hpp"

namespace pourbook {

Result<TubeCharge> tube_charge(const Catalogue& catalogue, const Metal& metal, double bore_m, double outside_m,
                               double length_m, const std::string& process) {
    const casting::Shape shape{casting::Form::tube, {bore_m, outside_m, length_m}};
    const Result<casting::Solid> solid = casting::measured(shape);
    if (!solid) return solid.problem();
    PourRequest request;
    request.metal = metal.slug;
    request.process = process;
    request.pieces = {{"tube", shape, *solid}};
    const Result<PourResult> plan = pour(catalogue, request);
    if (!plan) return plan.problem();
    return TubeCharge{plan->charge.charge_kg, plan->melt_volume_m3};
}

} // namespace pourbook
