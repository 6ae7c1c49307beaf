#include "questions/pour/pour_in_workshop.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

template <class T> void fill(std::optional<T>& place, const std::optional<T>& from) {
    if (!place) place = from;
}

void fill_from_profile(PourRequest& r, const WorkshopData& own) {
    fill(r.workshop.furnace_maximum_K, own.profile.furnace_maximum_K);
    fill(r.workshop.lift_maximum_kg, own.profile.lift_maximum_kg);
    fill(r.power_W, own.profile.power_W);
    fill(r.efficiency, own.profile.efficiency);
    if (!r.workshop.mould_material.empty()) return;
    for (const MouldKind& mould : own.moulds) {
        if (mould.process != r.process) continue;
        r.workshop.mould_material = mould.material;
        fill(r.workshop.mould_maximum_K, mould.maximum_K);
        r.part_remarks.push_back("Your mould " + mould.name + " (" + mould.material + ") is taken.");
        return;
    }
}

PourRequest in_crucible(PourRequest r, const Crucible& crucible) {
    r.workshop.crucible_material = crucible.material;
    r.workshop.crucible_volume_m3 = crucible.volume_m3;
    const std::string volume = crucible.volume_m3 ? ", " + trimmed(*crucible.volume_m3 * 1e6, 4) + " cm3" : "";
    r.part_remarks.push_back("Your crucible " + crucible.name + " (" + crucible.material + volume + ") is taken.");
    return r;
}

} // namespace

Result<PourResult> pour_in_workshop(const Catalogue& catalogue, PourRequest request, const WorkshopData& own) {
    fill_from_profile(request, own);
    if (own.crucibles.empty() || !request.workshop.crucible_material.empty() || request.workshop.crucible_volume_m3)
        return pour(catalogue, request);
    std::vector<Crucible> crucibles = own.crucibles;
    std::stable_sort(crucibles.begin(), crucibles.end(), [](const Crucible& a, const Crucible& b) {
        return a.volume_m3.value_or(1e9) < b.volume_m3.value_or(1e9); // one of unstated size comes last
    });
    Result<PourResult> plan = Problem{};
    for (const Crucible& crucible : crucibles) {
        plan = pour(catalogue, in_crucible(request, crucible));
        if (plan || plan.problem().kind != Problem::Kind::refused) return plan;
    }
    return plan;
}

Result<PourResult> pour_beyond_limits(const Catalogue& catalogue, PourRequest request, const WorkshopData& own) {
    fill_from_profile(request, own);
    request.workshop = {};
    Result<PourResult> plan = pour(catalogue, request);
    if (!plan) return plan;
    for (const std::string& caution : plan->limits.cautions) std::erase(plan->remarks, caution);
    plan->limits.cautions.clear();
    return plan;
}

casting::Workshop limits_in_workshop(PourRequest request, const WorkshopData& own) {
    fill_from_profile(request, own);
    const bool stated = !request.workshop.crucible_material.empty() || request.workshop.crucible_volume_m3;
    const auto largest =
        std::max_element(own.crucibles.begin(), own.crucibles.end(), [](const Crucible& a, const Crucible& b) {
            return a.volume_m3.value_or(0) < b.volume_m3.value_or(0);
        });
    if (!stated && largest != own.crucibles.end()) request = in_crucible(std::move(request), *largest);
    return request.workshop;
}

} // namespace pourbook
