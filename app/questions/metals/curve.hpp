// A property against temperature for several metals, from 4 K (or the lowest cited temperature) to the solidus (or the
// highest cited one); solid and liquid, cited and carried stretches apart.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

struct CurveRequest {
    std::string property = "resistivity";
    std::vector<std::string> metals;
    std::string condition = "reference";
    int steps = 240; // evaluations between the lowest and the highest cited temperature of each metal
    bool operator==(const CurveRequest&) const = default;
};

struct CurvePoint {
    double temperature_K, value_si, uncertainty_si;
};

struct CurveStretch {
    Phase phase = Phase::solid;
    bool cited = true;              // else carried or estimated by a law
    bool remembered = false;        // cited from memory
    std::string source;             // key
    std::vector<CurvePoint> points; // rising in temperature, without gaps
};

struct CurveOfMetal {
    const Metal* metal = nullptr;
    std::vector<CurveStretch> stretches;
    std::vector<CurvePoint> printed;  // the figures as printed that lie on the chosen series
    std::vector<std::string> sources; // keys
    std::string missing;              // why there is no curve; empty if there is one
};

struct CurveResult {
    const Property* property = nullptr;
    std::string condition;
    std::vector<CurveOfMetal> curves; // in the order asked
};

/// Errors: unknown metal or property.
Result<CurveResult> curve(const Catalogue& catalogue, const CurveRequest& request);

} // namespace pourbook
