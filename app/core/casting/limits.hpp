// What a workshop can do, as its owner entered it, against what the plan asks for.
#pragma once

#include "core/casting/practice.hpp"

#include <optional>

namespace pourbook::casting {

/// Each limit is optional: nothing is assumed where the owner has said nothing.
struct Workshop {
    std::optional<double> furnace_maximum_K;
    std::optional<double> crucible_volume_m3;
    std::string crucible_material; // graphite, clay-graphite, silicon carbide, fused silica ...; empty: not said
    std::string mould_material;    // fused silica, gypsum investment ...; empty: not said
    std::optional<double> mould_maximum_K;
    std::optional<double> lift_maximum_kg; // one person, crucible and metal

    bool empty() const;
};

struct Demand {
    double pour_K = 0;
    double mould_K = no_number; // preheat; NaN where none is planned
    double heat_volume_m3 = 0;  // melt of one casting with gating, feeder, loss and heel
    double heat_mass_kg = 0;
    std::string process;
};

struct Checked {
    std::size_t castings_per_heat = 1;
    std::vector<std::string> cautions;
    std::vector<SourceValue> sources;
};

/// Errors: refused, with the limit and what was asked of it.
Result<Checked> within_limits(const Catalogue& catalogue, const Metal& metal, const Workshop& workshop,
                              const Demand& demand);

} // namespace pourbook::casting
