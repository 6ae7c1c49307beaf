// What a small dissolved impurity does to a metal's conductivity, and back: the content of each impurity that would
// explain a measured conductivity. rho = rho_pure + k w (Matthiessen), k from db/increments.json.
// Range: dissolved impurities, added resistivity up to 1.5 uohm cm.
#pragma once

#include "core/alloys/resistivity.hpp"

namespace pourbook {

/// What dissolved metals add at most where Matthiessen's rule of a dilute alloy is used, ohm m.
constexpr double most_dilute_si = 1.5e-8;

struct ImpurityEffect {
    std::string element;
    Estimate per_wt;                                    // ohm m per weight per cent
    double resistivity_si = no_number;                  // with the content asked
    double content_wt = no_number;                      // the content asked, or the equivalent one
    double low90_wt = no_number, high90_wt = no_number; // of an equivalent content
    double most_wt = no_number;                         // what the host can hold dissolved, where drawn
};

/// Errors: no_value (no coefficient), out_of_range (more than 1.5 uohm cm).
Result<ImpurityEffect> effect_of_impurity(const Catalogue& catalogue, const std::string& host,
                                          const std::string& impurity, double content_wt);

/// Every impurity of the host that a coefficient is stored for, the smallest content first.
/// Errors: refused where the measured metal conducts as well as the pure host or better; out_of_range.
Result<std::vector<ImpurityEffect>> equivalent_impurities(const Catalogue& catalogue, const std::string& host,
                                                          double measured_resistivity_si);

} // namespace pourbook
