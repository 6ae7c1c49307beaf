#include "questions/drop/design.hpp"

#include "core/casting/hazards.hpp"
#include "core/eddy/tube_design.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/cold_cautions.hpp"
#include "questions/drop/drop_command.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/drop/tube_charge.hpp"
#include "questions/metals/find_metal.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double tenth_m = 1e-4, millimetre_m = 1e-3;
constexpr double bores_of_wall = 1; // the thickest wall, in bores: 96 % of what an endless one would brake

double up_to(double x, double step) {
    return std::ceil(x / step - 1e-6) / std::round(1 / step);
}
double down_to(double x, double step) {
    return std::floor(x / step + 1e-6) / std::round(1 / step);
}

std::string drawn_mm(double m) {
    return trimmed(m * 1000, 7) + "mm";
}

/// What has to be molten over the tube: by mass, and by volume, cold.
struct PourRatio {
    double mass = 1.8, volume = 1.9; // until the pour is planned
};

/// A metal with what the search needs of it.
struct TubeStuff {
    const Metal* metal = nullptr;
    double conductivity_S_m = 0, density_kg_m3 = 0, price_usd_kg = no_number;
};

/// One found, before it is drawn.
struct FoundTube {
    TubeStuff stuff;
    eddy::TubeFound tube;

    double usd() const { return tube.mass_kg * stuff.price_usd_kg; }
};

class Designing {
public:
    Designing(const Catalogue& catalogue, const DesignRequest& request) : catalogue_(catalogue), in_(request) {
        out_.request = request;
    }

    Result<DesignResult> run() {
        if (auto fault = prepare()) return *fault;
        std::vector<FoundTube> found;
        for (const TubeStuff& s : stuff_)
            if (const auto tube = search(s, limits(s, {})))
                found.push_back({s, *tube});
            else
                out_.impossible.push_back({s.metal->slug, s.metal->name, why_not(s)});
        std::stable_sort(found.begin(), found.end(),
                         [&](const FoundTube& a, const FoundTube& b) { return better(a, b); });
        for (const FoundTube& f : found) draw(f);
        if (out_.tubes.empty()) return none();
        std::stable_sort(out_.tubes.begin(), out_.tubes.end(), [&](const DesignedTube& a, const DesignedTube& b) {
            return better(as_found(a), as_found(b));
        });
        make_front();
        say();
        return std::move(out_);
    }

private:
    std::optional<Problem> prepare() {
        if (!in_.time_s && !in_.mass_kg && !in_.budget_usd)
            return unreadable("design: what is wished? --time 5s, --mass 3kg (metal in hand) or --budget 40USD");
        const Result<DropSetup> magnet = magnet_setup(catalogue_, in_.setup);
        if (!magnet) return magnet.problem();
        out_.bore_m = up_to(2 * (magnet->inputs.outer_radius_m.value + in_.clear_m), tenth_m);
        if (auto fault = choose_walls()) return fault;
        Result<DropSetup> setup = drop_setup(catalogue_, words(out_.least_wall_m, in_.longest_m));
        if (!setup) return setup.problem();
        out_.setup = std::move(*setup);
        family_.emplace(out_.setup.inputs);
        return gather();
    }

    std::optional<Problem> choose_walls() {
        casting::Range least;
        if (const Metal* any = catalogue_.metals.empty() ? nullptr : &catalogue_.metals.front())
            least = casting::range_of(casting::practices(catalogue_, *any, "least_section", in_.process));
        if (!in_.least_wall_m && least.empty())
            return unreadable("--least-wall: no least section is cited for " + in_.process +
                              ": state one, such as 3mm");
        out_.least_wall_m = up_to(in_.least_wall_m.value_or(least.high_si), tenth_m);
        out_.most_wall_m = std::max(down_to(bores_of_wall * out_.bore_m, tenth_m), out_.least_wall_m);
        if (!in_.least_wall_m)
            out_.assumptions.push_back("walls of " + drawn_mm(out_.least_wall_m) +
                                       " and more: the printed least section of a " + in_.process +
                                       " mould; --least-wall states another");
        if (!in_.longest_stated)
            out_.assumptions.push_back("tubes up to 1 m: --longest states what kiln and printer take");
        return std::nullopt;
    }

    SetupWords words(double wall_m, double length_m) const {
        SetupWords w = in_.setup;
        w.tube = drawn_mm(out_.bore_m) + ":" + drawn_mm(out_.bore_m + 2 * wall_m) + ":" + drawn_mm(length_m);
        return w;
    }

    void leave_out(const Metal& metal, std::string reason) {
        if (!in_.metals.empty()) out_.impossible.push_back({metal.slug, metal.name, std::move(reason)});
    }

    /// The metals asked for, or all that may be melted at home and make a tube.
    std::optional<Problem> gather() {
        std::vector<const Metal*> metals;
        for (const std::string& word : in_.metals) {
            const Result<const Metal*> metal = find_metal(catalogue_, word);
            if (!metal) return metal.problem();
            metals.push_back(*metal);
        }
        if (in_.metals.empty())
            for (const Metal& metal : catalogue_.metals) metals.push_back(&metal);
        for (const Metal* metal : metals) add(*metal);
        return std::nullopt;
    }

    void add(const Metal& metal) {
        const bool asked_for = !in_.metals.empty();
        if (const auto may = casting::may_be_melted(catalogue_, metal, asked_for); !may)
            return leave_out(metal, may.problem().text);
        const Result<TubeMetal> tube = tube_metal(catalogue_, metal, in_.conditions);
        if (!tube) return leave_out(metal, tube.problem().text);
        const Result<Evaluated> density = tube_density(catalogue_, metal, in_.conditions);
        if (!density) return leave_out(metal, density.problem().text);
        Conditions room = in_.conditions;
        room.temperature_K = room_temperature_K;
        const Result<Evaluated> price = evaluate(catalogue_, metal, "price", room);
        if (!price && in_.budget_usd) return leave_out(metal, price.problem().text);
        stuff_.push_back({&metal, tube->conductivity_S_m(), density->value_si, price ? price->value_si : no_number});
    }

    /// Of the tube, where the charge is so many times as much.
    eddy::TubeLimits limits(const TubeStuff& s, const PourRatio& ratio) const {
        double most = INFINITY;
        const auto at_most = [&](double kg) { most = std::min(most, kg); };
        if (in_.mass_kg) at_most(*in_.mass_kg / ratio.mass);
        at_most(workshop_limit(s, ratio));
        if (in_.budget_usd) at_most(*in_.budget_usd / s.price_usd_kg);
        return {out_.least_wall_m, out_.most_wall_m, shortest_m(), in_.longest_m, most};
    }

    /// Below this the ends are the whole tube.
    double shortest_m() const { return std::min(std::max(out_.bore_m, 5e-3), in_.longest_m); }

    eddy::TubeSearch searching(const TubeStuff& s) const {
        return {*family_, out_.bore_m / 2, s.conductivity_S_m, s.density_kg_m3};
    }

    std::optional<eddy::TubeFound> search(const TubeStuff& s, const eddy::TubeLimits& l) const {
        return in_.time_s ? searching(s).lightest(*in_.time_s, l) : searching(s).slowest(l);
    }

    std::string why_not(const TubeStuff& s) const {
        const eddy::TubeLimits l = limits(s, {});
        const auto slowest = searching(s).slowest(l);
        if (!slowest)
            return "too little metal for the shortest tube of " + drawn_mm(out_.least_wall_m) + " wall (" +
                   mass_text(l.most_mass_kg, UnitSystem::shown) + " are left for the tube)";
        return "falls at most " + significant(slowest->time_s, 3) + " s within the limits (wall " +
               drawn_mm(down_to(slowest->wall_m, tenth_m)) + ", length " +
               drawn_mm(down_to(slowest->length_m, millimetre_m)) + ")";
    }

    static FoundTube as_found(const DesignedTube& d) {
        return {{d.metal, 0, 0, d.drop.cost_usd / d.drop.tube_mass_kg},
                {d.wall_m, d.length_m, d.drop.fall.time_s, d.drop.tube_mass_kg}};
    }

    /// A wanted time: the cheaper, then the lighter; else the slower.
    bool better(const FoundTube& a, const FoundTube& b) const {
        if (!in_.time_s) return a.tube.time_s > b.tube.time_s;
        const bool priced = std::isfinite(a.usd());
        if (priced != std::isfinite(b.usd())) return priced;
        return priced ? a.usd() < b.usd() : a.tube.mass_kg < b.tube.mass_kg;
    }

    void draw(const FoundTube& f) {
        if (out_.tubes.size() >= in_.top) {
            ++out_.more;
            return;
        }
        Result<DesignedTube> drawn = drawn_within(f.stuff, f.tube);
        if (drawn)
            out_.tubes.push_back(std::move(*drawn));
        else
            out_.impossible.push_back({f.stuff.metal->slug, f.stuff.metal->name, drawn.problem().text});
    }

    bool charge_limited() const { return in_.mass_kg || in_.lift_kg || in_.crucible_m3; }

    std::optional<Problem> over_limit(const DesignedTube& d) const {
        constexpr double slack = 1 + 1e-9;
        const auto says = [](const std::string& what) { return Problem{Problem::Kind::refused, what, 0}; };
        if (!charge_limited()) return std::nullopt;
        if (!d.no_pour.empty()) return says("no charge is known: " + d.no_pour);
        const std::string charge = "the charge of " + mass_text(d.charge_kg, UnitSystem::shown);
        if (in_.mass_kg && d.charge_kg > *in_.mass_kg * slack) return says(charge + " is more than there is");
        if (in_.lift_kg && d.charge_kg > *in_.lift_kg * slack) return says(charge + " is more than one person lifts");
        if (in_.crucible_m3 && d.melt_m3 > *in_.crucible_m3 * slack)
            return says("the crucible holds too little for a melt of " + significant(d.melt_m3 * 1e6, 3) + " cm3");
        return std::nullopt;
    }

    /// Drawn; where the planned charge is above a limit, once more with the charge known.
    Result<DesignedTube> drawn_within(const TubeStuff& s, eddy::TubeFound tube) {
        std::optional<Problem> fault;
        for (int turn = 0; turn < 4; ++turn) {
            Result<DesignedTube> d = in_.time_s ? drawn_for_time(s, tube) : drawn(s, tube);
            if (!d) return d;
            fault = over_limit(*d);
            const bool first = turn == 0 && !in_.time_s && charge_limited(); // the ratios were guesses
            if (!fault && !first) return d;
            if (in_.time_s || !d->no_pour.empty()) break; // it is the lightest already
            const double room = 1 + 0.005 * turn;
            const PourRatio known = ratio(*d);
            const auto next = search(s, limits(s, {known.mass * room, known.volume * room}));
            if (!next) break;
            tube = *next;
        }
        return fault ? *fault : Problem{Problem::Kind::refused, "no tube stays within the limits", 0};
    }

    static PourRatio ratio(const DesignedTube& d) {
        return {d.charge_kg / d.drop.tube_mass_kg, d.melt_m3 / (d.drop.model->nominal().wall_area_m2 * d.length_m)};
    }

    /// The wall in tenths and the length in millimetres, not above what was found.
    Result<DesignedTube> drawn(const TubeStuff& s, const eddy::TubeFound& tube) {
        eddy::TubeLimits l = limits(s, {});
        const double wall = std::max(down_to(tube.wall_m, tenth_m), l.least_wall_m);
        const double length = std::min(tube.mass_kg / searching(s).mass_kg(wall, 1), l.longest_m);
        return made(s, wall, std::max(down_to(length, millimetre_m), millimetre_m));
    }

    /// The wall rounded up, and as long as the time needs.
    Result<DesignedTube> drawn_for_time(const TubeStuff& s, const eddy::TubeFound& tube) {
        constexpr double near = 1e-4;
        eddy::TubeLimits l = limits(s, {});
        l.most_mass_kg = INFINITY;
        l.least_wall_m = l.most_wall_m = up_to(tube.wall_m, tenth_m);
        const auto at_wall = searching(s).lightest(*in_.time_s, l);
        double wall = l.least_wall_m, length = up_to(at_wall ? at_wall->length_m : l.longest_m, millimetre_m);
        for (int turn = 0;; ++turn) {
            if (length > l.longest_m * (1 + 1e-9)) {
                wall += tenth_m;
                length = down_to(l.longest_m, millimetre_m);
            }
            Result<DesignedTube> d = made(s, wall, length);
            if (!d || turn == 3) return d;
            const double short_of = *in_.time_s - d->drop.fall.time_s;
            if (short_of <= near * *in_.time_s) return d;
            length += up_to(short_of / *in_.time_s * length, millimetre_m);
        }
    }

    Result<DesignedTube> made(const TubeStuff& s, double wall_m, double length_m) {
        DesignedTube d;
        d.metal = s.metal;
        d.bore_m = out_.bore_m;
        d.wall_m = wall_m;
        d.length_m = length_m;
        DropRequest request{words(wall_m, length_m), s.metal->slug, "", in_.conditions, in_.samples, in_.seed};
        d.tube = request.setup.tube;
        Result<DropResult> falls = pourbook::drop(catalogue_, request);
        if (!falls) return falls.problem();
        d.drop = std::move(*falls);
        const Result<TubeCharge> charge =
            tube_charge(catalogue_, *s.metal, d.bore_m, d.bore_m + 2 * wall_m, length_m, in_.process);
        if (charge) {
            d.charge_kg = charge->charge_kg;
            d.melt_m3 = charge->melt_m3;
        } else {
            d.no_pour = charge.problem().text;
        }
        return d;
    }

    /// For a row of amounts of money, the slowest tube of all metals; those that are slower than all cheaper ones.
    void make_front() {
        constexpr int amounts = 9, rows = 5;
        constexpr double wide = 16; // from the dearest amount to the cheapest
        const double middle = in_.budget_usd.value_or(out_.tubes.front().drop.cost_usd);
        if (!std::isfinite(middle)) return;
        std::vector<FoundTube> front;
        for (int i = 0; i < amounts; ++i) {
            const double usd = middle * std::pow(wide, i / (amounts - 1.0) - 0.5);
            std::optional<FoundTube> best;
            for (const TubeStuff& s : stuff_) {
                if (!std::isfinite(s.price_usd_kg)) continue;
                eddy::TubeLimits l = limits(s, {});
                l.most_mass_kg = usd / s.price_usd_kg;
                l.most_mass_kg = std::min(l.most_mass_kg, workshop_limit(s, {}));
                const auto tube = searching(s).slowest(l);
                if (tube && (!best || tube->time_s > best->tube.time_s)) best = FoundTube{s, *tube};
            }
            if (best && (front.empty() || best->tube.time_s > front.back().tube.time_s * 1.02)) front.push_back(*best);
        }
        const std::size_t step = std::max<std::size_t>(1, (front.size() + rows - 1) / rows);
        for (std::size_t i = 0; i < front.size(); i += step)
            if (Result<DesignedTube> d = drawn(front[i].stuff, front[i].tube); d && !over_limit_but_mass(*d))
                if (out_.front.empty() || d->drop.fall.time_s > out_.front.back().drop.fall.time_s)
                    out_.front.push_back(std::move(*d));
    }

    double workshop_limit(const TubeStuff& s, const PourRatio& ratio) const {
        double most = INFINITY;
        if (in_.lift_kg) most = std::min(most, *in_.lift_kg / ratio.mass);
        if (in_.crucible_m3) most = std::min(most, *in_.crucible_m3 * s.density_kg_m3 / ratio.volume);
        return most;
    }

    bool over_limit_but_mass(const DesignedTube& d) const {
        return (in_.lift_kg && d.charge_kg > *in_.lift_kg) || (in_.crucible_m3 && d.melt_m3 > *in_.crucible_m3);
    }

    Problem none() const {
        std::string text = "no metal makes such a tube";
        for (std::size_t i = 0; i < std::min<std::size_t>(out_.impossible.size(), 3); ++i)
            text += (i ? "; " : ": ") + out_.impossible[i].name + ": " + out_.impossible[i].reason;
        return {Problem::Kind::refused, text, 0};
    }

    void say() {
        for (auto* list : {&out_.tubes, &out_.front})
            for (DesignedTube& d : *list) {
                d.drop_command = drop_command(words(d.wall_m, d.length_m), *d.metal, in_.conditions);
                d.pour_command = "pourbook pour " + d.metal->slug + " --part tube:" + d.tube + " --clear " +
                                 drawn_mm(2 * out_.setup.inputs.outer_radius_m.value) +
                                 (in_.process == "shell" ? "" : " --process " + in_.process);
            }
        out_.assumptions.push_back("the bore clears the magnet by " + drawn_mm(in_.clear_m) +
                                   " on each side: a wider one brakes less; --clear states another gap");
        out_.assumptions.push_back(
            "times are on the axis and from rest, centre to centre; cost: the metal of the tube, "
            "without making and loss");
        for (const std::string& a : out_.setup.assumptions) out_.assumptions.push_back(a);
        out_.cautions = out_.setup.cautions;
        if (in_.conditions.temperature_K < cold_bath_below_K)
            for (const MagnetFigure* c : cold_cautions(catalogue_)) out_.cautions.push_back(c->text);
        for (const MagnetFigure* c : magnet_cautions(catalogue_)) out_.cautions.push_back("Strong magnets: " + c->text);
    }

    const Catalogue& catalogue_;
    const DesignRequest& in_;
    DesignResult out_;
    std::optional<eddy::WallFamily> family_;
    std::vector<TubeStuff> stuff_;
};

} // namespace

Result<DesignResult> design(const Catalogue& catalogue, const DesignRequest& request) {
    return Designing(catalogue, request).run();
}

} // namespace pourbook
