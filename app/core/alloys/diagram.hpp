// Reading a binary diagram: phases by the lever rule, melting range, solubility, freezing without diffusion in the
// solid. All compositions are per cent by mass of the diagram's second element b. Between stored rows the lines are
// straight in temperature; nothing is read below the lowest row of a field or outside the fields that are drawn. Lever
// rule: share of the right phase = (c - c_left) / (c_right - c_left). Scheil (Z. Metallkd. 34, 1942, 70; Gulliver
// 1913): the solid does not diffuse, the liquid is mixed, so d ln f_L = - d c_L / (c_L - c_S), integrated down the
// drawn lines.
#pragma once

#include "core/materials/alloy_data.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct PhaseShare {
    std::string phase;
    double wt = 0;    // per cent of b in this phase
    double share = 0; // of the mass, 0 to 1
};

/// One or two phases at a composition and temperature.
/// Errors: out_of_range where the diagram is not drawn.
Result<std::vector<PhaseShare>> phases_at(const Diagram& diagram, double wt, double temperature_K);

struct MeltingRange {
    double solidus_K = no_number;  // first liquid on slow heating
    double liquidus_K = no_number; // last solid
    std::string first_solid;       // the phase that freezes first
};

/// Errors: out_of_range where the liquidus or solidus is not drawn at this composition.
Result<MeltingRange> melting_range(const Diagram& diagram, double wt);

/// Most of the solute (per cent by mass) that the host's solid solution holds at a temperature, against a second solid
/// phase; the largest drawn value where the temperature lies above every solid field. None where no limit is drawn.
struct Solubility {
    double wt = 0;               // per cent of the solute in the host's phase
    std::string second_phase;    // what the rest becomes
    double second_wt_solute = 0; // per cent of the solute in it
};
std::optional<Solubility> solubility(const Diagram& diagram, const std::string& host, double temperature_K);

struct ScheilStep {
    double temperature_K = 0;
    double liquid_share = 0;
    double liquid_wt = 0;
};

struct Scheil {
    std::string primary;          // first solid
    double primary_share = 0;     // of the mass
    double primary_mean_wt = 0;   // its mean content of b
    double last_liquid_share = 0; // freezes at last_K (eutectic), 0 if all is solid before
    double last_K = 0;
    std::vector<ScheilStep> steps;
};

/// Errors: as melting_range.
Result<Scheil> scheil(const Diagram& diagram, double wt);

} // namespace pourbook
