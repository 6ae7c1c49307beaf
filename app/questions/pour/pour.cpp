#include "questions/pour/pour.hpp"

#include "questions/metals/find_metal.hpp"
#include "questions/pour/pour_planner.hpp"

#include <array>

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

} // namespace

Result<PourResult> pour(const Catalogue& catalogue, const PourRequest& request) {
    const auto metal = find_metal(catalogue, request.metal);
    if (!metal) return metal.problem();
    if (const std::string fault = fault_of(request); !fault.empty())
        return Problem{Problem::Kind::unreadable, fault, 0};
    return planned_pour(catalogue, **metal, request);
}

} // namespace pourbook
