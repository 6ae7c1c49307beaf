// Pattern dimensions: finished size, machining stock, contraction, casting tolerance.
//   cast = finished + 2 stock (a bore: - 2 stock)     pattern = cast x (1 + contraction)
// What a rigid mould or core holds needs less; `held` is the pattern that would be right if it did not shrink at all.
// Tolerance: total width by ISO 8062 for the grade that the process usually keeps, half of
// it to either side. Pattern draft is not added.
#pragma once

#include "core/casting/mesh.hpp"
#include "core/casting/practice.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook::casting {

/// A shape, or the box of a mesh.
struct Piece {
    std::string words; // as the person gave it
    std::optional<Shape> shape;
    Solid solid; // as drawn
};

struct DimensionPlan {
    std::string name; // "bore", "length", "box x"
    bool bore = false;
    double finished_m = 0, cast_m = 0, pattern_m = 0;
    double held_m = no_number;                    // the pattern if mould or core let this length not shrink at all
    double tolerance_width_m = no_number;         // total; NaN where none is cited
    double low_m = no_number, high_m = no_number; // between these the right pattern lies (pattern_spans)
};

struct PiecePattern {
    std::string words;
    std::vector<DimensionPlan> dimensions;
    Solid cast;                     // with stock, cold
    bool stock_approximate = false; // mesh: volume + surface x stock
};

struct ToleranceTable {
    std::string grade; // CT7; empty: none cited for the process. Small sizes may be held finer.
    std::string note;
    std::vector<const Practice*> widths; // of every grade
    std::vector<const Practice*> finer;  // grades finer by size
    std::vector<SourceValue> sources;
};

ToleranceTable tolerances(const Catalogue& catalogue, const Metal& metal, const std::string& process);

/// Total width for a cast dimension; NaN outside the table.
double tolerance_width_m(const ToleranceTable& table, double cast_m);

/// Errors: refused (stock closes a bore), unreadable (stock negative or above 50 mm).
Result<PiecePattern> pattern_of(const Piece& piece, double stock_m, double contraction, const ToleranceTable& table);

/// Where the right pattern may lie: from the least allowance in print (a mould that holds back) to the free contraction
/// with nine in ten of its uncertainty, less what the mould itself grows on heating. NaN: not known, left out.
struct PatternSpan {
    double low = 0, high = 0; // of the contraction
    std::string decides;      // a sentence
};
PatternSpan pattern_span(double contraction, double standard_uncertainty, double allowance_low, double allowance_high,
                         double mould_growth);
/// Contraction that castings of one's own reached, measured against their patterns.
struct ReachedContraction {
    double strain = 0, standard_uncertainty = 0; // of one casting, scatter between castings included
};
/// The span narrowed by them: their mean, weighted by 1/u^2, +- 1.645 of its uncertainty; unchanged without any.
PatternSpan span_after_trials(const PatternSpan& span, const std::vector<ReachedContraction>& reached);
void set_spans(std::vector<PiecePattern>& pieces, const PatternSpan& span);

/// Sentences on bores that may not clear a diameter: as cast the lower tolerance counts, machined the drawn size.
std::vector<std::string> bores_too_small(const std::vector<PiecePattern>& pieces, double clear_m, bool machined);

} // namespace pourbook::casting
