// What every estimate from composition carries, and the setting it is made in.
#pragma once

#include "core/alloys/composition.hpp"
#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

enum class Treatment { as_cast, annealed, quenched, aged };
const char* name_of(Treatment treatment);
std::optional<Treatment> treatment_named(const std::string& name);

struct Estimate {
    double value_si = no_number;
    double standard_uncertainty_si = 0; // from the errors met on known alloys (error_table.hpp)
    double low90_si = no_number, high90_si = no_number;
    std::string rule;               // which rule, in a few words
    std::string range;              // where it holds
    std::string error;              // how far it was off on known alloys
    std::vector<std::string> trail; // steps in plain sentences
    std::vector<Citation> sources;
};

/// Catalogue, composition and treatment of one estimate. A table's point within `without_point_within_wt` per cent by
/// mass of the composition is left out (for tests that must not see the alloy's own figure); negative: none.
struct AlloySetting {
    const Catalogue& catalogue;
    const Composition& composition;
    Treatment treatment = Treatment::as_cast;
    double without_point_within_wt = -1;
    std::vector<std::string> dissolved = {}; // elements taken as wholly in solution, whatever the treatment

    const AlloyData& data() const { return catalogue.alloys; }
};

/// Adds a source once.
void cite(Estimate& estimate, const Citation& citation);

/// The problem of an alloy that no rule holds for.
Problem no_rule(const std::string& why);

/// A pure metal's own value at 20 degC, its source noted. Errors: no_value.
Result<double> pure_value(const Catalogue& catalogue, const std::string& symbol, const char* property,
                          Estimate& estimate);

} // namespace pourbook
