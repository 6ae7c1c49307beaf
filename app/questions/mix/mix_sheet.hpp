// Everything about a mix on one sheet, from words with units: the answer, what was paid against the metal in it,
// hazards, the diagram with the mix on it, conductivity against composition. A part that can't be answered (a target
// out of reach, an impurity without a coefficient) is left out and says why; the rest stands.
#pragma once

#include "questions/mix/mix.hpp"
#include "questions/mix/mix_curve.hpp"
#include "questions/mix/phase_diagram.hpp"

namespace pourbook {

struct MixStockWords {
    std::string mass, metal; // as in mix_words.hpp
    std::string paid;        // for all of it, such as "850 USD" (shown_money.hpp); may be empty
    bool operator==(const MixStockWords&) const = default;
};

struct MixSheetWords {
    bool bare = false; // the composition, not the stocks
    std::vector<MixStockWords> stocks;
    std::string composition;
    std::string treatment = "as-cast";
    std::string melt_loss, target, with, phases_at, impurities, measured; // empty: not asked
    bool operator==(const MixSheetWords&) const = default;
};

struct MixSheet {
    Result<MixResult> answer = Problem{Problem::Kind::no_value, "not asked", 0};
    std::string target_fault, impurity_fault, measured_fault, paid_fault;
    double paid_usd = no_number;  // where a price is given for any stock
    double worth_usd = no_number; // metal in the melt after losses
    std::vector<const Caution*> cautions;
    std::optional<PhaseDiagram> diagram; // of the two main elements
    std::string no_diagram;              // why there is none
    std::vector<MixCurve> curves;        // of the same two, the treatment asked for first
    double curve_wt = no_number;         // the mix on their axis
    std::string words;                   // "mix:...", to be used as a metal
};

MixSheet mix_sheet(const Catalogue& catalogue, const MixSheetWords& words);

/// "Ag 94 Cu 6": three figures each.
std::string short_words(const Composition& composition);

/// Where a composition stands between its two main elements, in per cent by mass of the two.
struct MixAxis {
    std::string a, b; // in the order of their diagram, where one is stored
    double wt_b = 0;
};

/// Errors: no_value (a single element).
Result<MixAxis> axis_of(const Catalogue& catalogue, const Composition& composition);

/// How it is called there: "Cu 88 Sn 8 Zn 4 by its two main elements".
std::string name_on_axis(const Composition& composition);

/// The figures a word may stand for, by name: mass, metal, paid, composition, melt-loss, target, with, phases-at,
/// impurities, measured. Why the word can't be read; empty where it can (or is empty and may be).
std::string mix_word_fault(const Catalogue& catalogue, const std::string& name, const std::string& word);

} // namespace pourbook
