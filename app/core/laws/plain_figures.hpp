// The figures of a metal where a single record answers each as it stands: value and uncertainty as evaluate() and
// add_draw_parts() give them, without their stories. Made for very many metals; where more goes into a figure (several
// records, a law, parts that are drawn apart, a casting's state) it says so, and evaluate() must be asked.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PlainFigure {
    double value_si = no_number;
    double relative = 0; // standard uncertainty, of its one cause; signed as in Cause
    HowKnown how_known = HowKnown::read;
    bool stale = false; // a price past its period
};

class PlainFigures {
public:
    /// All must outlive this.
    PlainFigures(const Catalogue& catalogue, const std::vector<std::string>& properties, const Conditions& conditions);

    /// Of each property in their order. False: one of them is not as plain.
    bool read(const Metal& metal, std::vector<PlainFigure>& out) const;

    /// What samples are drawn from: the value with its cause.
    Evaluated with_cause(const Metal& metal, std::size_t property, const PlainFigure& figure) const;

private:
    struct Wanted {
        const Property* recorded = nullptr; // null: the price
        bool reciprocal = false;            // a conductivity, from the resistivity
    };
    bool may_read(const Metal& metal) const;
    bool is_solid(const Metal& metal) const;
    const FlatFigure* flat(const Metal& metal, const Property& property) const;
    bool add_price(const Metal& metal, std::vector<PlainFigure>& out) const;
    bool add_recorded(const Metal& metal, const Wanted& wanted, std::vector<PlainFigure>& out) const;
    static void add(double value_si, double relative, HowKnown how_known, const Wanted& wanted,
                    std::vector<PlainFigure>& out);

    const Catalogue& catalogue_;
    const Conditions& conditions_;
    std::vector<Wanted> wanted_;
    const Property *solidus_ = nullptr, *price_ = nullptr;
    bool usual_ = true;   // the reference condition is asked for
    bool any_may_ = true; // the conditions and properties ask for nothing but what is cited
};

} // namespace pourbook
