// A property of a casting: the handbook's figure with what the casting's state changes in it.
//
//   condition     the cited figure of the casting's treatment where there is one, else that of another condition with
//                 the difference the estimates from composition give (structure.hpp). A pure metal: its annealed
//                 figure.
//   contents      rho += k w for each foreign element, w drawn between its ends, k the published increment
//                 (Matthiessen; increment_per_wt). Not where a figure is cited as cast and no feedstock is stated, nor
//                 for a mix, whose composition is stated, nor where a residual resistivity ratio is given.
//                 The thermal resistivity rises by the same over L0 T (Wiedemann-Franz).
//   pores         porosity.hpp, one draw for all properties of the metal; oxide counts as pores of the conduction.
// Solid metal only; other properties are answered in the casting's condition, or as for the handbook's metal.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

/// `conditions.casting` is set. Errors: those of evaluate().
Result<Evaluated> casting_value(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                                const Conditions& conditions);

/// Keys of the draws: "copper.content.P", "copper.porosity", "copper.oxide", "copper.structure".
std::string content_key(const Metal& metal, const std::string& element);
std::string state_key(const Metal& metal, const char* what);

} // namespace pourbook
