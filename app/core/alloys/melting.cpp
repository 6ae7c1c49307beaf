#include "core/alloys/melting.hpp"

#include "core/alloys/dissolved.hpp"
#include "core/alloys/error_table.hpp"
#include "core/alloys/near_melting.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double most_further_wt = 12, trace_wt = 0.01;

double axis_wt(const Diagram& d, const std::string& host, double solute_wt, double host_wt) {
    const double wt = 100 * solute_wt / (solute_wt + host_wt);
    return d.a == host ? wt : 100 - wt;
}

void cite_diagram(Estimate& e, const Diagram& d) {
    for (const DiagramField& f : d.fields)
        if (f.left == "liquid" || f.right == "liquid") cite(e, f.citation);
}

Result<MeltingEstimate> pure_metal(const AlloySetting& s, const std::string& symbol) {
    const Metal* metal = s.catalogue.element(symbol);
    if (!metal) return no_rule("pure " + symbol + " is not in the reference");
    const Result<Evaluated> t = evaluate(s.catalogue, *metal, "liquidus", {});
    if (!t) return t.problem();
    MeltingEstimate out;
    for (Estimate* e : {&out.solidus, &out.liquidus}) {
        e->value_si = t->value_si;
        e->standard_uncertainty_si = t->standard_uncertainty_si;
        e->low90_si = t->value_si - 1.645 * t->standard_uncertainty_si;
        e->high90_si = t->value_si + 1.645 * t->standard_uncertainty_si;
        e->rule = "melting point of the pure metal";
        cite(*e, {t->sources.front().key, t->sources.front().locator, t->how_known, ""});
    }
    out.first_solid = "(" + symbol + ")";
    return out;
}

/// The main binary, then the further solutes.
class Melting {
public:
    explicit Melting(const AlloySetting& s) : setting_(s) {}

    Result<MeltingEstimate> run() {
        const auto& shares = setting_.composition.shares();
        host_ = shares.front();
        if (shares.size() == 1 || host_.wt_percent > 100 - trace_wt) return pure_metal(setting_, host_.element);
        if (const auto fault = choose_main()) return *fault;
        const Result<MeltingRange> range = melting_range(*out_.diagram, out_.axis_wt);
        if (!range) return range.problem();
        out_.first_solid = range->first_solid;
        liquidus_K_ = range->liquidus_K;
        solidus_K_ = range->solidus_K;
        cite_diagram(out_.liquidus, *out_.diagram);
        say("binary " + out_.diagram->a + "-" + out_.diagram->b + " at " + trimmed(out_.axis_wt, 4) + " % " +
            out_.diagram->b + ": " + trimmed(solidus_K_ - 273.15, 4) + " to " + trimmed(liquidus_K_ - 273.15, 4) +
            " degC");
        for (const Share& s : shares)
            if (s.element != host_.element && s.element != main_)
                if (const auto fault = further(s)) return *fault;
        const Result<Scheil> freezing = scheil(*out_.diagram, out_.axis_wt);
        if (freezing) out_.freezing = *freezing;
        finish();
        return std::move(out_);
    }

private:
    void say(const std::string& text) { out_.liquidus.trail.push_back(text); }

    std::optional<Problem> choose_main() {
        const auto& shares = setting_.composition.shares();
        main_ = shares[1].element;
        out_.diagram = setting_.data().diagram(host_.element, main_);
        if (!out_.diagram) return no_rule("no " + host_.element + "-" + main_ + " diagram is stored");
        out_.axis_wt = axis_wt(*out_.diagram, host_.element, shares[1].wt_percent, host_.wt_percent);
        double others = 0;
        for (std::size_t i = 2; i < shares.size(); ++i) others += shares[i].wt_percent;
        if (others > most_further_wt)
            return no_rule("more than 12 % of further elements beside " + host_.element + " and " + main_);
        return std::nullopt;
    }

    std::optional<Problem> further(const Share& s) {
        several_ = true;
        const Diagram* d = setting_.data().diagram(host_.element, s.element);
        if (!d && s.wt_percent >= traces_wt)
            return no_rule("no " + host_.element + "-" + s.element + " diagram is stored");
        if (!d) {
            say(s.element + " " + trimmed(s.wt_percent, 3) + " %: no diagram is stored; left out");
            return std::nullopt;
        }
        if (out_.first_solid.find(host_.element) == std::string::npos) {
            say(s.element + " is left out: " + out_.first_solid + " freezes first");
            return std::nullopt;
        }
        const Result<MeltingRange> pure_host = melting_range(*d, d->a == host_.element ? 0 : 100);
        const Result<MeltingRange> with = melting_range(*d, axis_wt(*d, host_.element, s.wt_percent, host_.wt_percent));
        if (!pure_host || !with) return no_rule("the " + d->a + "-" + d->b + " diagram is not drawn there");
        const double off = pure_host->liquidus_K - with->liquidus_K;
        liquidus_K_ -= off;
        solidus_off_K_ += off;
        lowest_K_ = std::min(lowest_K_, with->solidus_K);
        solidus_sum_K_ += pure_host->solidus_K - with->solidus_K;
        cite_diagram(out_.liquidus, *d);
        say(s.element + " " + trimmed(s.wt_percent, 3) + " %: " + trimmed(off, 3) + " K off the liquidus");
        return std::nullopt;
    }

    /// The lowest of: both solidus effects added (single phase), and the main binary's floor less the dilute
    /// depression.
    void finish() {
        const double floor_K = out_.diagram ? lowest_liquid_K() : 0;
        double solidus = solidus_K_ - solidus_sum_K_;
        if (several_) solidus = std::max(solidus, std::min({floor_K, lowest_K_, solidus_K_}) - solidus_off_K_);
        out_.liquidus.value_si = liquidus_K_;
        out_.solidus = out_.liquidus;
        out_.solidus.value_si = std::min(solidus, liquidus_K_);
        const std::string how =
            several_ ? "binary diagram of the two main elements, effects of the others added" : "binary diagram";
        out_.liquidus.rule = out_.solidus.rule = how;
        out_.liquidus.range = several_ ? "further elements up to 12 wt%, the host freezing first" : "as drawn";
        out_.solidus.range = out_.liquidus.range;
        set_error(out_.liquidus, several_ ? ErrorClass::liquidus_sum : ErrorClass::liquidus_binary);
        set_error(out_.solidus, several_ ? ErrorClass::solidus_sum : ErrorClass::solidus_binary);
    }

    double lowest_liquid_K() const {
        double lowest = 1e9;
        for (const DiagramField& f : out_.diagram->fields)
            if (f.left == "liquid" || f.right == "liquid")
                if (f.left == out_.first_solid || f.right == out_.first_solid) lowest = std::min(lowest, f.lowest_K());
        return lowest;
    }

    const AlloySetting& setting_;
    MeltingEstimate out_;
    Share host_;
    std::string main_;
    bool several_ = false;
    double liquidus_K_ = 0, solidus_K_ = 0, solidus_sum_K_ = 0, solidus_off_K_ = 0, lowest_K_ = 1e9;
};

} // namespace

Result<MeltingEstimate> estimate_melting(const AlloySetting& setting) {
    auto of_binaries = Melting(setting).run();
    if (of_binaries || setting.composition.shares().size() < 3) return of_binaries;
    auto nearby = melting_from_neighbours(setting);
    return nearby ? nearby : of_binaries;
}

} // namespace pourbook
