// Foreign elements that a casting's metal may hold beyond its own composition: from the feedstock, from what
// deoxidation leaves, and the oxide of undeoxidised copper. Ranges: db/casting/state.json, or as stated.
#pragma once

#include "core/materials/casting_state.hpp"
#include "core/materials/catalogue.hpp"

#include <vector>

namespace pourbook {

struct Trace {
    std::string element;
    bool dissolved = true; // else out of solution, as a second phase
    double low_wt = 0;
    double high_wt = 0;
    const Practice* practice = nullptr; // null: stated
};

/// In file order. Elements of the metal's own composition are left out, unless stated: its figures hold them. An alloy
/// has none unless something is stated.
std::vector<Trace> traces_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state);

/// The pores of the metal's castings, stated, as the person's own were weighed (questions/workshop/own_trials) unless
/// that is switched off, or by common practice; with the entry it rests on.
struct CastPorosity {
    PorosityRange range;
    const Practice* practice = nullptr;
};
CastPorosity porosity_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state);

/// Share of the volume that is oxide, which hardly conducts: none where the metal keeps none or its contents are
/// stated.
CastPorosity oxide_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state);

} // namespace pourbook
