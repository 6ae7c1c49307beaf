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
    std::size_t own = 0;                          // castings of one's own that it goes by
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

/// What the mould itself grows on heating: none, a range, or perhaps (from none to all of it).
struct MouldGrowth {
    double low = 0, high = 0;
    bool any() const { return high > 0; }
};
/// Of an investment whose printed growth at a high heat is known: all of it from 500 degC on, where its cristobalite
/// has turned (270 degC, textbooks, from memory) up to there perhaps, below none.
MouldGrowth mould_growth(const Range& printed, double mould_K);

/// Where the right pattern may lie: from the least allowance in print (a mould that holds back) to the free contraction
/// with nine in ten of its uncertainty; where the mould grows, less its growth, up to the allowances in print, which
/// are from pattern to metal. NaN: not known, left out.
struct PatternSpan {
    double low = 0, high = 0; // of the contraction
    std::string decides;      // a sentence

    double middle() const { return (low + high) / 2; }
};
PatternSpan pattern_span(double contraction, double standard_uncertainty, double allowance_low, double allowance_high,
                         const MouldGrowth& growth);
/// Every pattern by one contraction.
void set_patterns(std::vector<PiecePattern>& pieces, double contraction);
/// Contraction that castings of one's own reached, measured against their patterns.
struct ReachedContraction {
    double strain = 0, standard_uncertainty = 0; // of one casting, scatter between castings included
};
/// The span narrowed by them: their mean, weighted by 1/u^2, +- 1.645 of its uncertainty; unchanged without any.
PatternSpan span_after_trials(const PatternSpan& span, const std::vector<ReachedContraction>& reached);
void set_spans(std::vector<PiecePattern>& pieces, const PatternSpan& span);

/// A size of a casting of one's own against its pattern's.
struct OwnLength {
    std::string size; // "bore", "length"
    bool bore = false;
    ReachedContraction reached;
};
/// Each size by the castings of one's own that have it: those of its name, else of any size but a bore. A bore, which a
/// core holds, goes by bores alone.
void set_own(std::vector<PiecePattern>& pieces, const PatternSpan& span, const std::vector<OwnLength>& own);

/// Sentences on bores that may not clear a diameter: as cast the lower tolerance counts, machined the drawn size.
std::vector<std::string> bores_too_small(const std::vector<PiecePattern>& pieces, double clear_m, bool machined);

} // namespace pourbook::casting
