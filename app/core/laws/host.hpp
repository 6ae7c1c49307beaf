// The host of an alloy: whose lattice the electrons run through, and its resistivity by lattice waves alone.
#pragma once

#include "core/evaluate/candidate.hpp"

namespace pourbook {

/// The element with the most atoms where it conducts better than the alloy at 20 degC (resistivity_si); else, as in
/// mixtures of metals (zinc with aluminium, bismuth with tin), the best conductor with at least 5 at%. The metal itself
/// where it is an element. Null: none conducts better, or the composition is not known.
const Metal* electric_host(const Catalogue& catalogue, const Metal& metal, double resistivity_si);

/// The element with the most atoms, or null.
const Metal* main_element(const Catalogue& catalogue, const Metal& metal);

/// The chemical symbol of an element's own entry.
const std::string& symbol_of(const Metal& element);

/// Whether a host enters an alloy by its lattice alone: what its spins add there is not known.
bool without_spins(const Metal& host, bool ferromagnetic_alloy);

/// Resistivity of the host as it enters an alloy of it: cited, else by its law. For iron, nickel and cobalt in alloys
/// that are not ferromagnetic the share of the spins' order is left out: the slope above their Curie points, with
/// Bloch's shape. Above the host's melting point Bloch's shape goes on. Errors: no_value.
Result<double> host_resistivity(const Catalogue& catalogue, const Metal& host, bool ferromagnetic_alloy,
                                double temperature_K);

} // namespace pourbook
