// From a wish to a tube: a fall of so long, or as long as the metal in hand or the money allows, under the workshop's
// limits. Found for each metal: bore, wall and length; then which metal, and what more money would gain.
//
//   bore     the magnet's diameter and the gap on both sides: a narrower bore brakes more with less metal
//   wall, length   the lightest tube with the time, or the slowest that the limits leave (core/eddy/tube_design.hpp);
//            the wall to tenths of a millimetre, the length to millimetres, as a drawing has them
//   charge   what has to be molten for it, by pour(): metal in hand, crucible and one person's lift limit the charge,
//            the money the metal of the tube itself
// What is told of each is the answer of drop() for the tube as drawn, so that its command gives the same figures.
#pragma once

#include "core/workshop/data.hpp"
#include "questions/drop/drop.hpp"
#include "questions/fields.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct DesignRequest {
    SetupWords setup; // the magnet
    std::optional<double> time_s, mass_kg, budget_usd;
    double clear_m = 0.5e-3; // between magnet and bore, on each side
    double longest_m = 1;
    bool longest_stated = false;
    std::optional<double> least_wall_m; // else the least section of the process
    std::optional<double> crucible_m3, lift_kg;
    std::string process = "shell";
    std::vector<std::string> metals; // empty: all that are cast at home
    Conditions conditions;           // of the tube
    std::size_t top = 6, samples = 200;
    std::uint64_t seed = 1;
    bool operator==(const DesignRequest&) const = default;
};

struct DesignedTube {
    const Metal* metal = nullptr;
    std::string tube; // "21mm:27mm:400mm"
    double bore_m = 0, wall_m = 0, length_m = 0;
    DropResult drop;
    double charge_kg = no_number, melt_m3 = no_number; // NaN: no plan for a pour
    std::string no_pour;                               // why

    std::string drop_command, pour_command;
};

struct DesignOut {
    std::string metal, name, reason;
};

struct DesignResult {
    DesignRequest request;
    DropSetup setup; // of the magnet in a tube of the bore
    double bore_m = 0, least_wall_m = 0, most_wall_m = 0;
    std::vector<DesignedTube> tubes;   // a wanted time: cheapest first; else the longest fall first
    std::vector<DesignedTube> front;   // each costs more and falls longer than the one before
    std::vector<DesignOut> impossible; // metals without such a tube
    std::size_t more = 0;              // metals with one that are not shown
    std::vector<std::string> assumptions, cautions;
};

/// Errors: unreadable (no wish; a limit that is not above zero); those of magnet_setup; unknown metal; refused where no
/// metal has such a tube, with what comes nearest.
Result<DesignResult> design(const Catalogue& catalogue, const DesignRequest& request);

/// What the request leaves open is taken from the workshop: what one person lifts, the largest crucible.
DesignRequest within_workshop(DesignRequest request, const WorkshopData& own);

const QuestionOf<DesignRequest>& design_question();

} // namespace pourbook
