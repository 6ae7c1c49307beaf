// Temperature of the metal and of the mould at the pour: a window with a recommended point.
//
// Printed: the ranges of the metal's own records, else of its metal or family; the two ends always come from one
// source. A range printed for light or heavy castings stands for thin and heavy sections only (section_class). Which
// one is taken: of this section before of any, read before common practice; all are listed. Least: liquidus + what cup
// and sprue take (practice) + what the first metal in loses to the mould while the rest runs in: q = 2 b (T - T_mould)
// sqrt(t/pi) through a face at constant temperature (Carslaw and Jaeger, Conduction of Heat in Solids), b = sqrt(k rho
// c) of the mould, shared by the metal behind it, rho c V/A; at most h (T - T_mould) t where a contact transfer is
// known. Most: zinc at 0.3 atm over the melt, the printed end, the furnace, the common limit of superheat (gas,
// attack). Recommended: the printed range at its hot end for thin, at its cool end for heavy sections, but no more than
// 100 K above the least (common practice) where it is printed for any section, moved into the window and 20 K above its
// lower end, or to its middle (common practice: ladle and thermometer). A window that is
// empty says so and recommends its upper end.
#pragma once

#include "core/casting/freezing_plan.hpp"

#include <optional>

namespace pourbook::casting {

struct PrintedRange {
    double low_K = no_number, high_K = no_number;
    std::string section; // "thin", "heavy"; empty: any
    SourceValue source;
};

struct PourHeat {
    Traced pour;            // K, recommended or as asked for
    double superheat_K = 0; // above the liquidus
    double least_K = no_number, most_K = no_number;
    std::string least_why, most_why;
    std::vector<PrintedRange> printed; // all that fit the metal
    std::optional<PrintedRange> taken;
    std::string section; // thin | medium | heavy
    std::vector<std::string> cautions;
    double zinc_atm = no_number; // over the melt at the pour; NaN without zinc in copper
};

/// Preheat of the mould, from the printed figures, else a rule that is named.
struct MouldHeatPlan {
    Range range; // may be empty
    std::string how;
    bool by_rule = false;
    std::optional<double> metal_limit_K; // of the mould's material
    std::string limit_why;
};

struct PourHeatInputs {
    std::string process;
    Solid part;
    double thinnest_m = 0;
    double mould_K = no_number;
    double fill_s = no_number; // how long the mould takes to fill
    std::optional<double> superheat_K;
    std::optional<double> furnace_maximum_K;
};

/// "thin", "medium", "heavy", and the share of the way between the classes (0 thin, 1 heavy).
std::string section_class(const Material& material, double wall_m, double* share = nullptr);

/// Errors: no_value (no liquidus), unreadable (a superheat below 0 or above 600 K).
Result<PourHeat> pour_heat(const Material& material, const PourHeatInputs& inputs);

/// solidus_K, liquidus_K: of the metal.
MouldHeatPlan mould_heat(const Material& material, const std::string& process, const std::string& section,
                         double solidus_K);

} // namespace pourbook::casting
