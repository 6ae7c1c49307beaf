#include "core/casting/pattern.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <cmath>
#include <cstdlib>

namespace pourbook::casting {
namespace {

constexpr double greatest_stock_m = 0.05;

DimensionPlan planned(const std::string& name, bool bore, double finished_m, double cast_m, double contraction,
                      const ToleranceTable& table) {
    DimensionPlan d{name, bore, finished_m, cast_m, cast_m * (1 + contraction)};
    d.held_m = cast_m;
    d.tolerance_width_m = tolerance_width_m(table, cast_m);
    return d;
}

/// A mesh grows by its stock on every face; its volume only about.
void plan_mesh(PiecePattern& out, const Piece& piece, double stock_m, double contraction, const ToleranceTable& table) {
    static constexpr std::array axes = {"box x", "box y", "box z"};
    out.cast = piece.solid;
    out.stock_approximate = stock_m > 0;
    out.cast.volume_m3 += piece.solid.surface_m2 * stock_m;
    for (std::size_t i = 0; i < 3; ++i) {
        out.cast.box_m[i] += 2 * stock_m;
        out.dimensions.push_back(planned(axes[i], false, piece.solid.box_m[i], out.cast.box_m[i], contraction, table));
    }
    out.cast.wall_m += 2 * stock_m;
}

} // namespace

ToleranceTable tolerances(const Catalogue& catalogue, const Metal& metal, const std::string& process) {
    ToleranceTable table;
    for (const Practice* p : practices(catalogue, metal, "tolerance_grade", process)) {
        table.grade = p->grade;
        table.note = p->text;
        table.sources.push_back(source_of(*p));
    }
    for (const Practice& p : catalogue.practices)
        if (p.quantity == "tolerance" && !table.grade.empty()) table.widths.push_back(&p);
    table.finer = practices(catalogue, metal, "tolerance_finer", process);
    if (!table.widths.empty()) table.sources.push_back(source_of(*table.widths.front()));
    return table;
}

double tolerance_width_m(const ToleranceTable& table, double cast_m) {
    if (table.grade.size() < 3) return no_number;
    const auto holds = [&](const Practice& p) { return cast_m > p.over_m && cast_m <= p.up_to_m; };
    int number = std::atoi(table.grade.c_str() + 2); // behind "CT"
    for (const Practice* p : table.finer)
        if (holds(*p)) number -= static_cast<int>(std::lround(p->figure.value_si));
    const std::string grade = "CT" + std::to_string(number);
    for (const Practice* p : table.widths)
        if (p->grade == grade && holds(*p)) return p->figure.value_si;
    return no_number;
}

Result<PiecePattern> pattern_of(const Piece& piece, double stock_m, double contraction, const ToleranceTable& table) {
    if (!(stock_m >= 0 && stock_m <= greatest_stock_m))
        return Problem{Problem::Kind::unreadable, "the machining stock must be from 0 to 50 mm on a face", 0};
    PiecePattern out;
    out.words = piece.words;
    if (!piece.shape) {
        plan_mesh(out, piece, stock_m, contraction, table);
        return out;
    }
    const Result<Shape> cast = with_stock(*piece.shape, stock_m);
    if (!cast) return cast.problem();
    const Result<Solid> solid = measured(*cast);
    if (!solid) return solid.problem();
    out.cast = *solid;
    const auto names = size_names(cast->form);
    for (std::size_t i = 0; i < names.size(); ++i)
        out.dimensions.push_back(
            planned(names[i], is_bore(cast->form, i), piece.shape->size_m[i], cast->size_m[i], contraction, table));
    return out;
}

MouldGrowth mould_growth(const Range& printed, double mould_K) {
    constexpr double turned_K = 543.15, grown_K = 773.15;
    if (printed.empty() || !(mould_K > turned_K)) return {};
    return {mould_K > grown_K ? printed.low_si : 0, printed.high_si};
}

PatternSpan pattern_span(double contraction, double u, double allowance_low, double allowance_high,
                         const MouldGrowth& growth) {
    PatternSpan s;
    s.high = contraction + normal_90 * u - growth.low;
    s.low = contraction - normal_90 * u - growth.high;
    s.decides = "the metal's own contraction, +- " + significant(100 * normal_90 * u, 2) + " %";
    if (growth.any()) {
        s.decides = "how much of the metal's contraction the mould's growth makes up for";
        if (allowance_high > s.high) {
            s.high = allowance_high;
            s.decides += ": nearly all of it as computed, hardly any by the allowances in print";
        }
        s.decides += "; the middle is taken, and one trial casting in your mould settles it";
        return s;
    }
    if (!std::isnan(allowance_low) && allowance_low < s.low) {
        s.low = allowance_low;
        s.decides = "how far mould and core hold the casting back (patterns were made for " +
                    significant(100 * allowance_low, 3) + " to " + significant(100 * allowance_high, 3) +
                    " %): one trial casting in your mould settles it";
    }
    return s;
}

PatternSpan span_after_trials(const PatternSpan& span, const std::vector<ReachedContraction>& reached) {
    double weights = 0, sum = 0;
    for (const ReachedContraction& r : reached) {
        const double w = 1 / (r.standard_uncertainty * r.standard_uncertainty);
        weights += w;
        sum += w * r.strain;
    }
    if (!(weights > 0)) return span;
    const double half = normal_90 / std::sqrt(weights);
    return {sum / weights - half, sum / weights + half,
            "your own " + std::to_string(reached.size()) + " measured casting" + (reached.size() > 1 ? "s" : "")};
}

namespace {

std::vector<ReachedContraction> reached_in(const DimensionPlan& d, const std::vector<OwnLength>& own) {
    std::vector<ReachedContraction> same, alike;
    for (const OwnLength& l : own) {
        if (l.bore != d.bore) continue;
        alike.push_back(l.reached);
        if (l.size == d.name) same.push_back(l.reached);
    }
    return same.empty() ? alike : same;
}

} // namespace

void set_own(std::vector<PiecePattern>& pieces, const PatternSpan& span, const std::vector<OwnLength>& own) {
    for (PiecePattern& piece : pieces)
        for (DimensionPlan& d : piece.dimensions) {
            const std::vector<ReachedContraction> reached = reached_in(d, own);
            if (reached.empty()) continue;
            const PatternSpan s = span_after_trials(span, reached);
            d.pattern_m = d.cast_m * (1 + (s.low + s.high) / 2);
            d.low_m = d.cast_m * (1 + s.low);
            d.high_m = d.cast_m * (1 + s.high);
            d.own = reached.size();
        }
}

void set_patterns(std::vector<PiecePattern>& pieces, double contraction) {
    for (PiecePattern& piece : pieces)
        for (DimensionPlan& d : piece.dimensions) d.pattern_m = d.cast_m * (1 + contraction);
}

void set_spans(std::vector<PiecePattern>& pieces, const PatternSpan& span) {
    for (PiecePattern& piece : pieces)
        for (DimensionPlan& d : piece.dimensions) {
            d.low_m = d.cast_m * (1 + span.low);
            d.high_m = d.cast_m * (1 + span.high);
        }
}

std::vector<std::string> bores_too_small(const std::vector<PiecePattern>& pieces, double clear_m, bool machined) {
    std::vector<std::string> out;
    bool any = false;
    for (const PiecePattern& piece : pieces)
        for (const DimensionPlan& d : piece.dimensions) {
            if (!d.bore) continue;
            any = true;
            const double width = machined || std::isnan(d.tolerance_width_m) ? 0 : d.tolerance_width_m;
            const double least = d.finished_m - width / 2;
            if (least > clear_m) continue;
            out.push_back("The bore of " + piece.words + " may come out at " + trimmed(least * 1000, 4) +
                          " mm and not clear " + trimmed(clear_m * 1000, 4) + " mm: draw it at least " +
                          trimmed((clear_m - least) * 1000, 2) + " mm wider, or machine it (--stock).");
        }
    if (!any) out.push_back("Nothing to clear: the part has no bore, or no pattern could be worked out.");
    return out;
}

} // namespace pourbook::casting
