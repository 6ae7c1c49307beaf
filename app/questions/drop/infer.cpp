#include "questions/drop/infer.hpp"

#include "core/eddy/turned_ball.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/drop/reference_tube.hpp"
#include "questions/drop/tube_metal.hpp"
#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

namespace pourbook {
namespace {

constexpr double hand_timing_s = 0.15;    // one drop by stopwatch; common practice, no source
constexpr double resistance_doubt = 0.01; // where no tolerance is given
constexpr double disagree_below = 0.05;
constexpr double consistent_from = 0.01;
constexpr double when_named = 100, when_on_the_shelf = 20, when_not_cast_at_home = 0.1; // see InferResult
constexpr double any_other = 0.1;                             // probability beforehand that it is none of the reference
constexpr double ln_conductivities = 5.5, ln_densities = 2.6; // 0.3 to 70 MS/m, 1.7 to 22 g/cm3: where it may then lie
constexpr double least_spread = 0.005;                        // of a metal's value, so that the samples can show it
/// Found most often in workshop melts; common practice, no source.
constexpr const char* usual[] = {"P", "Fe", "Si", "Sn", "Zn", "Ni", "Cu", "Mn", "Mg", "Al", "Pb"};
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
        for (const std::string& word : request_.likely) {
            const Result<const Metal*> metal = find_metal(catalogue_, word);
            if (!metal) return metal.problem();
            named_.push_back(*metal);
        }
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
            if (auto p = calibrate(*out_.from_times)) return *p;
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

    std::optional<Problem> calibrate(eddy::Conductivity& c) {
        if (request_.reference_tube.empty()) return std::nullopt;
        const Result<Calibration> by = calibration_of(catalogue_, request_);
        if (!by) return by.problem();
        for (std::size_t i = 0; i < c.samples_S_m.size(); ++i) c.samples_S_m[i] *= by->factors[i];
        c = eddy::summed_up(c.value_S_m * by->factor, std::move(c.samples_S_m));
        out_.setup.assumptions.insert(out_.setup.assumptions.end(), by->assumptions.begin(), by->assumptions.end());
        return std::nullopt;
    }

    void judge_conductivity() {
        const auto &t = out_.from_times, &r = out_.from_resistance;
        out_.conductivity = t && r ? eddy::combined(*t, *r) : t ? *t : *r;
        if (t && r) out_.agreement = eddy::agreement(*t, *r);
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
        const std::vector<double>& scales = draws_.of("tube.mass");
        for (std::size_t i = 0; i < variations_.size(); ++i)
            densities_.push_back(mass->at(scales[i]) / (variations_[i].wall_area_m2 * variations_[i].tube_length_m));
        return std::nullopt;
    }

    /// How well the samples agree with a metal: mean over them of its density of ln(conductivity), and of the pores
    /// that the tube's density implies (Maxwell: isolated voids). `turned` multiplies the conductivities.
    ConsistentMetal compared(const TubeMetal& tube, double turned) const {
        ConsistentMetal c;
        c.metal = tube.metal;
        c.conductivity_S_m = tube.conductivity_S_m();
        c.relative_uncertainty = tube.log_uncertainty();
        const auto density =
            out_.density_kg_m3 ? tube_density(catalogue_, *tube.metal, sound()) : Result<Evaluated>(Problem{});
        if (density) c.porosity = 1 - *out_.density_kg_m3 / density->value_si;
        const auto& samples = out_.conductivity.samples_S_m;
        const double spread = std::max(c.relative_uncertainty, least_spread);
        for (std::size_t i = 0; i < samples.size(); ++i) {
            double expected = c.conductivity_S_m, likely = 1;
            if (density) {
                const double pores = 1 - densities_[i] / density->value_si,
                             doubt = std::max(density->standard_uncertainty_si / density->value_si, least_spread);
                const double open = std::clamp(pores, 0.0, most_porous);
                expected *= (1 - open) / (1 + open / 2);
                likely = (below(pores / doubt) - below((pores - most_porous) / doubt)) / most_porous;
            }
            const double away = std::log(samples[i] * turned / expected) / spread;
            c.p += likely * std::exp(-away * away / 2) / spread / static_cast<double>(samples.size());
        }
        c.p /= std::sqrt(2 * std::numbers::pi);
        return c;
    }

    /// The metals compared with: castings whose pores, where the tube was weighed, its density tells; the person's own
    /// trials would count the measurement twice.
    Conditions candidate() const {
        Conditions c = request_.conditions;
        c.story = false;
        if (!c.casting) return c;
        c.casting->own_trials = false;
        if (out_.density_kg_m3) c.casting->porosity = PorosityRange{0, 0};
        return c;
    }

    Conditions sound() const {
        Conditions c = request_.conditions;
        c.story = false;
        c.casting.reset();
        return c;
    }

    static double below(double x) { return 0.5 * std::erfc(-x / std::numbers::sqrt2); }

    double likely_beforehand(const Metal& metal) const {
        const auto& shelf = request_.on_the_shelf;
        if (std::find(named_.begin(), named_.end(), &metal) != named_.end()) return when_named;
        if (std::find(shelf.begin(), shelf.end(), metal.slug) != shelf.end()) return when_on_the_shelf;
        const auto cautions = catalogue_.cautions_for(metal);
        return std::any_of(cautions.begin(), cautions.end(), [](const Caution* c) { return c->excludes_home_casting; })
                   ? when_not_cast_at_home
                   : 1;
    }

    struct Compared {
        std::vector<ConsistentMetal> all, likely; // the second of 1 % and more, most likely first
        double something_else = 1;
    };

    Compared compare(double turned) const {
        Compared r;
        for (const Metal& metal : catalogue_.metals)
            if (const Result<TubeMetal> tube = tube_metal(catalogue_, metal, candidate()))
                r.all.push_back(compared(*tube, turned));
        const double any = any_other / ln_conductivities / (densities_.empty() ? 1 : ln_densities);
        double sum = any, beforehand = 0;
        for (const ConsistentMetal& c : r.all) beforehand += likely_beforehand(*c.metal);
        for (ConsistentMetal& c : r.all) sum += c.p *= (1 - any_other) * likely_beforehand(*c.metal) / beforehand;
        for (ConsistentMetal& c : r.all) {
            c.p /= sum;
            if (c.p >= consistent_from) r.likely.push_back(c);
        }
        r.something_else = any / sum;
        std::stable_sort(r.likely.begin(), r.likely.end(), [](const auto& a, const auto& b) { return a.p > b.p; });
        return r;
    }

    void compare() {
        const Compared found = compare(1);
        out_.consistent = found.likely;
        out_.something_else = found.something_else;
        if (out_.from_times && out_.setup.inputs.shape == eddy::Shape::sphere) {
            const double turned = 1 / eddy::across_over_along(out_.setup.inputs.bore());
            out_.across_S_m = out_.conductivity.value_S_m * turned;
            out_.consistent_across = compare(turned).likely;
        }
        if (!out_.consistent.empty()) return;
        const ConsistentMetal *under = nullptr, *above = nullptr;
        for (const ConsistentMetal& c : found.all) {
            const bool lower = c.conductivity_S_m < out_.conductivity.value_S_m;
            const ConsistentMetal*& best = lower ? under : above;
            if (!best || (c.conductivity_S_m > best->conductivity_S_m) == lower) best = &c;
        }
        for (const ConsistentMetal* c : {under, above})
            if (c) out_.nearest.push_back(*c);
    }

    /// The element that the likeliest metal is made of; copper where none is known.
    std::string base() const {
        const auto& list = out_.consistent.empty() ? out_.nearest : out_.consistent;
        if (list.empty()) return "Cu";
        std::string best = "Cu";
        double most = 0;
        for (const auto& part : list.front().metal->composition) {
            const double content = list.front().metal->content_percent(part.element);
            if (content <= most) continue;
            most = content;
            best = part.element;
        }
        return best;
    }

    /// By Matthiessen's rule the addition is the same at any temperature: it is taken here and looked up at 20 degC.
    void explain() {
        out_.impurity_base = base();
        const Metal* host = catalogue_.element(out_.impurity_base);
        Conditions pure = sound();
        pure.condition = "annealed";
        const auto here = host ? evaluate(catalogue_, *host, "resistivity", pure)
                               : Result<Evaluated>(Problem{Problem::Kind::unknown,
                                                           out_.impurity_base + " is not in the reference", 0});
        const auto room = host ? evaluate(catalogue_, *host, "resistivity", Conditions{}) : here;
        if (!here || !room) {
            out_.impurity_note = (here ? room : here).problem().text;
            return;
        }
        const double added = 1 / out_.conductivity.value_S_m - here->value_si;
        Result<std::vector<ImpurityEffect>> found =
            equivalent_impurities(catalogue_, out_.impurity_base, room->value_si + added);
        if (!found) {
            out_.impurity_note = found.problem().text;
            return;
        }
        out_.impurities = std::move(*found);
        std::stable_partition(out_.impurities.begin(), out_.impurities.end(), [](const ImpurityEffect& i) {
            return std::find(std::begin(usual), std::end(usual), i.element) != std::end(usual);
        });
    }

    void advise() {
        auto& advice = out_.advice;
        if (out_.agreement < disagree_below)
            advice.push_back(
                "fall time and resistance disagree (chance " + significant(100 * out_.agreement, 2) +
                " %): measure the magnet's field, the bore and the wall again, and see whether the magnet rubs");
        if (out_.across_S_m) {
            std::string then =
                "a ball is free to turn: had its poles lain across the tube, the conductivity would be " +
                significant(*out_.across_S_m / 1e6, 3) + " MS/m";
            for (std::size_t i = 0; i < std::min<std::size_t>(3, out_.consistent_across.size()); ++i)
                then += (i ? ", " : ", such as ") + out_.consistent_across[i].metal->slug;
            advice.push_back(then + ": mark a pole and film the fall");
        }
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
    std::vector<const Metal*> named_; // as likely
    std::vector<double> densities_;   // of the tube, by sample; empty: not weighed
};

} // namespace

Result<InferResult> infer(const Catalogue& catalogue, const InferRequest& request) {
    return Inference(catalogue, request).run();
}

} // namespace pourbook
