#include "core/laws/answer.hpp"

#include "core/laws/anchor.hpp"
#include "core/laws/expansion.hpp"
#include "core/laws/foundry.hpp"
#include "core/laws/melt.hpp"
#include "core/laws/resistivity.hpp"
#include "core/laws/sound.hpp"
#include "core/laws/specific_heat.hpp"
#include "core/laws/thermal.hpp"
#include "core/quantity/format.hpp"

#include <array>
#include <cmath>

namespace pourbook {
namespace {

Result<Evaluated> density_of_phase(const Question& q) {
    return q.phase == Phase::liquid ? melt_density_by_law(q) : density_by_law(q);
}

constexpr double lowest_K = 1, highest_over_liquidus_K = 600;

struct LawOfProperty {
    const char* property;
    Result<Evaluated> (*answer)(const Question&);
};

constexpr std::array laws_by_property = {LawOfProperty{"resistivity", resistivity_by_law},
                                         LawOfProperty{"temperature_coefficient", temperature_coefficient_by_law},
                                         LawOfProperty{"thermal_conductivity", thermal_conductivity_by_law},
                                         LawOfProperty{"density", density_of_phase},
                                         LawOfProperty{"density_liquid", melt_density_by_law},
                                         LawOfProperty{"solidus", melting_range_by_law},
                                         LawOfProperty{"liquidus", melting_range_by_law},
                                         LawOfProperty{"latent_heat", latent_heat_by_law},
                                         LawOfProperty{"specific_heat", specific_heat_by_law},
                                         LawOfProperty{"specific_heat_liquid", specific_heat_by_law},
                                         LawOfProperty{"linear_expansion", expansion_by_law},
                                         LawOfProperty{"linear_expansion_at", expansion_by_law},
                                         LawOfProperty{"solidification_contraction", solidification_contraction_by_law},
                                         LawOfProperty{"pouring_temperature", pouring_temperature_by_law},
                                         LawOfProperty{"contraction_allowance", contraction_allowance_by_law},
                                         LawOfProperty{"speed_of_sound", speed_of_sound_by_law}};

} // namespace

Result<Evaluated> law_answer(const Question& q) {
    if (q.property.varies_with_temperature && q.temperature_K < lowest_K)
        return no_law("below " + trimmed(lowest_K, 2) + " K");
    if (q.property.varies_with_temperature && q.phase == Phase::liquid) {
        const auto liquidus = number_at(q.catalogue, q.metal, "liquidus", room_temperature_K);
        if (liquidus && q.temperature_K > *liquidus + highest_over_liquidus_K)
            return no_law("more than " + trimmed(highest_over_liquidus_K, 3) + " K above the liquidus");
    }
    for (const LawOfProperty& law : laws_by_property) {
        if (q.property.id != law.property) continue;
        if (q.phase == Phase::liquid && law.answer == expansion_by_law) return no_law("a melt has no linear expansion");
        if (law.answer == temperature_coefficient_by_law && q.phase == Phase::liquid)
            return no_law("the metal is molten");
        Result<Evaluated> e = law.answer(q);
        if (e && !std::isfinite(e->value_si)) return no_law("it leaves no finite value");
        return e;
    }
    return no_law("none is kept for this property");
}

} // namespace pourbook
