// What a blend of stocks, or a composition, is: composition, estimated properties, phases, value; how to bring it to a
// wanted content; what impurities do to it. Every estimate names its rule, range and error (core/alloys).
#pragma once

#include "core/alloys/blend.hpp"
#include "core/alloys/impurity.hpp"
#include "core/alloys/melting.hpp"
#include "core/alloys/resistivity.hpp"
#include "core/evaluate/evaluate.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// Bring one element to a content by adding a stock.
struct MixTarget {
    Share content;    // element and wt_percent
    std::string with; // name of the added metal
    Composition added;
};

struct MixRequest {
    std::vector<Stock> stocks;              // melted together; empty: a bare composition
    std::optional<Composition> composition; // used where there are no stocks
    Treatment treatment = Treatment::as_cast;
    double melt_loss = 0; // share of the melt, lost evenly
    std::optional<MixTarget> target;
    std::optional<double> phases_at_K;
    std::vector<Share> impurities; // dissolved in the host, wt_percent of each; counted in every estimate
    std::optional<double> measured_resistivity_si; // explain it by impurities of the host
};

struct MixAddition {
    double mass_kg = 0; // of the added stock
    double total_kg = 0;
    Composition result;
};

/// What nine in ten melts of such scrap hold of an element.
struct ScrapContent {
    std::string element;
    double low_wt = 0, high_wt = 0;
};

/// Of an element that boils or burns off: what a melt usually takes, and what is left if the stated loss is all of it.
struct UnevenLoss {
    std::string element, text;
    double low_kg = no_number, high_kg = no_number; // of the melt; a kilogram where no mass is stated
    double wt_if_all = no_number;                   // content left; NaN where no loss is stated
    double liquidus_if_all_K = no_number;
};

struct MixResult {
    Composition composition; // stated impurities included
    Treatment treatment = Treatment::as_cast;
    std::vector<Stock> stocks;
    std::optional<Blend> blend; // of the stocks alone
    double mass_kg = no_number; // after melt loss; NaN for a bare composition
    std::string precious;       // Au, Ag, Pt or Pd, the largest above a third; empty: none
    Result<Estimate> density, linear_expansion, temperature_coefficient, thermal_conductivity;
    Result<ResistivityEstimate> resistivity;
    Result<MeltingEstimate> melting;
    std::optional<Result<std::vector<PhaseShare>>> phases;
    double phases_at_K = no_number;
    Result<Evaluated> metal_value; // USD/kg
    std::string value_as_of;       // the oldest price in it
    std::optional<MixAddition> addition;
    std::optional<MixTarget> target;
    std::vector<ImpurityEffect> impurities;   // of the contents asked
    std::vector<ImpurityEffect> equivalents;  // contents that would explain the measured resistivity
    std::vector<ScrapContent> scrap_contents; // empty without scrap
    std::vector<UnevenLoss> losses;
    std::vector<std::string> hazards; // sentences
    std::vector<std::string> sources; // keys, in order of first use
};

/// Errors: what makes the request itself senseless (no metal, a target out of reach, a loss of 100 %, an impurity
/// without a coefficient). A property without a rule is a problem inside the result.
Result<MixResult> mix(const Catalogue& catalogue, const MixRequest& request);

} // namespace pourbook
