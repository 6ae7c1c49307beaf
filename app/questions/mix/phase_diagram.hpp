// A stored binary diagram as lines and fields to be drawn, with one composition on it: its melting range, and the
// phases at a temperature with their shares by the lever rule. Compositions are per cent by mass of Diagram::b.
#pragma once

#include "core/alloys/diagram.hpp"
#include "core/materials/catalogue.hpp"

#include <optional>

namespace pourbook {

struct PhaseDiagramRequest {
    std::string a, b; // chemical symbols, in any order
    std::optional<double> wt_of_b;
    std::optional<double> temperature_K; // of the tie line
};

struct DiagramSpot {
    double wt = 0;
    double temperature_K = 0;
};

struct DiagramLine {
    std::string kind; // liquidus | solidus | solvus | three phases
    std::vector<DiagramSpot> spots;
    const DiagramField* field = nullptr; // where its figures come from
};

/// Which phases stand where, on a grid of columns x rows from the lowest content and temperature upwards.
struct DiagramFields {
    static constexpr int columns = 80, rows = 60;
    std::vector<std::string> names; // "liquid", "(Ag) + liquid", "not drawn"
    std::vector<int> of_cell;
};

struct PhaseDiagram {
    const Diagram* diagram = nullptr;
    double low_wt = 0, high_wt = 100; // what is drawn
    double low_K = 0, high_K = 0;
    std::vector<DiagramLine> lines;
    DiagramFields fields;
    std::optional<double> wt;            // the composition asked for, of Diagram::b
    std::optional<MeltingRange> melting; // of it, where drawn
    double temperature_K = no_number;    // asked for
    std::vector<PhaseShare> phases;      // there; empty: not asked for, or not drawn
    std::string not_drawn;               // why there are none
};

/// Errors: unknown (element), no_value (no diagram stored), unreadable (content outside 0 to 100).
Result<PhaseDiagram> phase_diagram(const Catalogue& catalogue, const PhaseDiagramRequest& request);

} // namespace pourbook
