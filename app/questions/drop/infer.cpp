#include "questions/drop/infer.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/drop/tube_metal.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double hand_timing_s = 0.15;    // one drop by stopwatch; common practice, no source
constexpr double resistance_doubt = 0.01; // where no tolerance is given
constexpr double consistent_from = 0.05;
constexpr double most_porous = 0.3;

Result<eddy::FourWire> four_wire(const InferRequest& request, DropSetup& setup) {
    static const Dimension ohm = parse_unit("ohm")->dimension;
    if (request.span.empty()) return unreadable("--resistance needs --span, the distance between the two voltage taps");
    Result<eddy::Uncertain> r = uncertain_from(request.resistance, ohm, "--resistance");
    if (!r) return r.problem();
    Result<eddy::Uncertain> span = uncertain_from(request.span, base_dimension(Dimension::metre), "--span");
    if (!span) return span.problem();
    if (r->spread == 0) {
        *r = {r->value, resistance_doubt * r->value, false};
        setup.assumptions.push_back("resistance given without a tolerance: 1 % assumed");
    }
    if (span->spread == 0) *span = {span->value, 0.5e-3, true};
    if (span->value > setup.inputs.tube_length_m.value)
        return refused("the span between the taps is longer than the tube");
    return eddy::FourWire{*r, *span};
}

class Inference {
public:
    Inference(const Catalogue& catalogue, const InferRequest& request)
        : catalogue_(catalogue), request_(request), draws_(request.samples, request.seed) {}

    Result<InferResult> run() {
        if (request_.times_s.empty() && request_.resistance.empty())
            return unreadable("something measured is needed: --time T[,T...] or --resistance R --span L");
        out_.conditions = request_.conditions;
        Result<DropSetup> setup =
            request_.times_s.empty() ? tube_setup(request_.setup) : drop_setup(catalogue_, request_.setup);
        if (!setup) return setup.problem();
        out_.setup = std::move(*setup);
        if (auto p = measure()) return *p;
        judge_conductivity();
        if (auto p = weigh()) return *p;
        compare();
        explain();
        advise();
        return std::move(out_);
    }

private:
    std::optional<Problem> measure() {
        variations_ = eddy::tube_variations(out_.setup.inputs, draws_);
        if (!request_.times_s.empty()) {
            const eddy::DropModel model(out_.setup.inputs);
            variations_ = model.variations(draws_);
            eddy::TimedDrops drops{request_.times_s, request_.time_reading_s};
            if (drops.reading_s == 0 && drops.times_s.size() == 1) {
                drops.reading_s = hand_timing_s;
                out_.setup.assumptions.push_back(
                    "a single drop: timed by hand to 0.15 s (assumed); repeat it at least three times");
            }
            Result<eddy::Conductivity> c = eddy::conductivity_from_times(model, drops, variations_, draws_);
            if (!c) return c.problem();
            const auto settled = eddy::fall(model.setup(c->value_S_m)).terminal_speed_m_s;
            if (auto fault = low_speed_fault(model, c->value_S_m, settled)) return *fault;
            out_.from_times = std::move(*c);
        }
        if (request_.resistance.empty()) return std::nullopt;
        const Result<eddy::FourWire> wire = four_wire(request_, out_.setup);
        if (!wire) return wire.problem();
        Result<eddy::Conductivity> c = eddy::conductivity_from_resistance(
            *wire, eddy::nominal_wall_area_m2(out_.setup.inputs), variations_, draws_);
        if (!c) return c.problem();
        out_.from_resistance = std::move(*c);
        return std::nullopt;
    }

    static double relative(const eddy::Conductivity& c) { return c.standard_uncertainty_S_m / c.value_S_m; }

    void judge_conductivity() {
        const auto &t = out_.from_times, &r = out_.from_resistance;
        out_.conductivity = t && r ? eddy::combined(*t, *r) : t ? *t : *r;
        if (t && r)
            out_.agreement = eddy::chance_of_difference(t->value_S_m / r->value_S_m, relative(*t), relative(*r));
        out_.iacs_percent = 100 * out_.conductivity.value_S_m / iacs_S_m;
        out_.iacs_low90 = 100 * out_.conductivity.low90_S_m / iacs_S_m;
        out_.iacs_high90 = 100 * out_.conductivity.high90_S_m / iacs_S_m;
    }

    std::optional<Problem> weigh() {
        if (request_.tube_mass.empty()) return std::nullopt;
        const Result<eddy::Uncertain> mass =
            uncertain_from(request_.tube_mass, base_dimension(Dimension::kilogram), "--tube-mass");
        if (!mass) return mass.problem();
        if (!(mass->value > 0))
            return unreadable("--tube-mass '" + request_.tube_mass + "': a mass above zero is expected");
        out_.density_kg_m3 =
            mass->value / (eddy::nominal_wall_area_m2(out_.setup.inputs) * out_.setup.inputs.tube_length_m.value);
        std::vector<double> samples;
        for (const eddy::Variation& v : variations_)
            samples.push_back(std::log(mass->value / (v.wall_area_m2 * v.tube_length_m)));
        density_doubt_ = (quantile(samples, 0.84134) - quantile(samples, 0.15866)) / 2;
        return std::nullopt;
    }

    /// Conductivity of the metal with the pores that the tube's density implies (Maxwell: isolated voids), and the
    /// chance of it.
    ConsistentMetal compared(const TubeMetal& tube) const {
        ConsistentMetal c;
        c.metal = tube.metal;
        c.conductivity_S_m = tube.conductivity_S_m();
        c.relative_uncertainty = tube.log_uncertainty();
        double expected = c.conductivity_S_m, chance = 1;
        const auto density = out_.density_kg_m3 ? tube_density(catalogue_, *tube.metal, request_.conditions)
                                                : Result<Evaluated>(Problem{});
        if (density) {
            const double pores = 1 - *out_.density_kg_m3 / density->value_si,
                         doubt = std::hypot(density_doubt_, density->standard_uncertainty_si / density->value_si);
            c.porosity = pores;
            if (pores < 0 || pores > most_porous)
                chance = std::erfc((pores < 0 ? -pores : pores - most_porous) / doubt / std::sqrt(2.0));
            const double open = std::clamp(pores, 0.0, most_porous);
            expected *= (1 - open) / (1 + open / 2);
        }
        c.p = chance * eddy::chance_of_difference(out_.conductivity.value_S_m / expected, relative(out_.conductivity),
                                                  c.relative_uncertainty);
        return c;
    }

    void compare() {
        std::vector<ConsistentMetal> all;
        for (const Metal& metal : catalogue_.metals)
            if (const Result<TubeMetal> tube = tube_metal(catalogue_, metal, request_.conditions))
                all.push_back(compared(*tube));
        for (const ConsistentMetal& c : all)
            if (c.p >= consistent_from) out_.consistent.push_back(c);
        std::stable_sort(out_.consistent.begin(), out_.consistent.end(),
                         [](const auto& a, const auto& b) { return a.p > b.p; });
        if (!out_.consistent.empty()) return;
        const ConsistentMetal *below = nullptr, *above = nullptr;
        for (const ConsistentMetal& c : all) {
            const bool lower = c.conductivity_S_m < out_.conductivity.value_S_m;
            const ConsistentMetal*& best = lower ? below : above;
            if (!best || (c.conductivity_S_m > best->conductivity_S_m) == lower) best = &c;
        }
        for (const ConsistentMetal* c : {below, above})
            if (c) out_.nearest.push_back(*c);
    }

    /// By Matthiessen's rule the addition is the same at any temperature: it is taken here and looked up at 20 degC.
    void explain() {
        const Metal* copper = catalogue_.element("Cu");
        Conditions pure = request_.conditions;
        pure.condition = "annealed";
        const auto here = copper
                              ? evaluate(catalogue_, *copper, "resistivity", pure)
                              : Result<Evaluated>(Problem{Problem::Kind::unknown, "copper is not in the reference", 0});
        const auto room = copper ? evaluate(catalogue_, *copper, "resistivity", Conditions{}) : here;
        if (!here || !room) {
            out_.impurity_note = (here ? room : here).problem().text;
            return;
        }
        const double added = 1 / out_.conductivity.value_S_m - here->value_si;
        Result<std::vector<ImpurityEffect>> found = equivalent_impurities(catalogue_, "Cu", room->value_si + added);
        if (found)
            out_.impurities = std::move(*found);
        else
            out_.impurity_note = found.problem().text;
    }

    void advise() {
        auto& advice = out_.advice;
        if (out_.agreement < consistent_from)
            advice.push_back(
                "fall time and resistance disagree (chance " + significant(100 * out_.agreement, 2) +
                " %): measure the magnet's field, the bore and the wall again, and see whether the magnet rubs");
        if (!out_.consistent.empty()) return;
        advice.push_back("no metal of the reference explains this conductivity: check the unit of the time, the tube's "
                         "bore, wall and temperature, and the magnet's remanence (field on its axis)");
        const bool high = std::all_of(out_.nearest.begin(), out_.nearest.end(),
                                      [&](const auto& c) { return c.conductivity_S_m < out_.conductivity.value_S_m; });
        advice.push_back(high ? "it is above every metal's: a rubbing or tilted magnet falls too slowly, and so does "
                                "one with a stronger grade than stated"
                              : "a casting may be porous, cracked or alloyed: weigh it and give --tube-mass, or "
                                "measure its resistance");
    }

    const Catalogue& catalogue_;
    const InferRequest& request_;
    Draws draws_;
    InferResult out_;
    std::vector<eddy::Variation> variations_;
    double density_doubt_ = 0;
};

} // namespace

Result<InferResult> infer(const Catalogue& catalogue, const InferRequest& request) {
    return Inference(catalogue, request).run();
}

} // namespace pourbook
