// What is known of a part that one casts: from what it is melted, what was done to it, how porous it is.
// What is not stated is taken from common practice (db/casting/state.json). Plain data.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// A content between two ends, all alike likely; per cent by mass.
struct ContentRange {
    std::string element;
    double low_wt = 0;
    double high_wt = 0;
    bool operator==(const ContentRange&) const = default;
};

/// Share of the volume that is pores, between two ends.
struct PorosityRange {
    double low = 0;
    double high = 0;
    bool operator==(const PorosityRange&) const = default;
};

struct CastingState {
    std::string feedstock;              // one of feedstock_names (materials/names.hpp); empty: not stated
    std::vector<ContentRange> contents; // foreign elements in the metal, stated in place of a feedstock
    std::optional<PorosityRange> porosity;
    std::string treatment;  // one of treatment_names; empty: as cast
    bool own_trials = true; // draws follow the castings that the person measured (own_castings.hpp)
    bool operator==(const CastingState&) const = default;

    bool feedstock_stated() const { return !feedstock.empty() || !contents.empty(); }
};

/// Errors are sentences without the option's name; empty: read.
/// "ingot", or contents such as "P 0.02 Fe 0 to 0.01".
std::string read_feedstock(CastingState& state, const std::string& words);
/// "2%", "0:3%".
std::string read_porosity(CastingState& state, const std::string& words);
std::string read_treatment(CastingState& state, const std::string& words);

} // namespace pourbook
