#include "questions/drop/sweep.hpp"

#include "core/eddy/fall_times.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "questions/drop/fall_time.hpp"
#include "questions/drop/low_speed.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

namespace pourbook {
namespace {

constexpr double endless = 200; // bore radii; the rest of the drag is below 1e-6

std::vector<double> spaced(const SweepRequest& r) {
    const bool by_ratio = r.over == SweepOver::wall || r.over == SweepOver::budget;
    std::vector<double> x;
    for (int i = 0; i < r.steps; ++i) {
        const double t = r.steps == 1 ? 0 : static_cast<double>(i) / (r.steps - 1);
        x.push_back(by_ratio ? r.from_si * std::pow(r.to_si / r.from_si, t) : r.from_si + (r.to_si - r.from_si) * t);
    }
    return x;
}

double low_speed_drag(const eddy::DropInputs& inputs, double outside_radius_m) {
    const eddy::Magnet magnet = inputs.magnet();
    return eddy::TubeDrag::low_speed_of(magnet, {inputs.bore_radius_m.value, outside_radius_m});
}

/// What the tube is made of in one line of the sweep.
struct Stuff {
    std::string name;
    const Metal* metal = nullptr;
    double price_usd_kg = no_number;
};

class Sweeping {
public:
    Sweeping(const Catalogue& catalogue, const SweepRequest& request, DropSetup setup)
        : catalogue_(catalogue), request_(request) {
        out_.setup = std::move(setup);
        out_.over = request.over;
        out_.conditions = request.conditions;
        if (request.hold != SweepHold::nothing)
            out_.held = request.hold == SweepHold::mass ? "the same mass" : "the same money";
    }

    std::optional<Problem> name_metals() {
        if (request_.metals.empty() == request_.resistivity.empty())
            return unreadable("the tube needs --metal METAL[,METAL...] or --resistivity R");
        if (!request_.resistivity.empty()) stuff_.push_back({request_.resistivity, nullptr, no_number});
        for (const std::string& word : request_.metals) {
            const Result<const Metal*> metal = find_metal(catalogue_, word);
            if (!metal) return metal.problem();
            Conditions room = request_.conditions; // a price is cited at room temperature
            room.temperature_K = room_temperature_K;
            const auto price = evaluate(catalogue_, **metal, "price", room);
            stuff_.push_back({(*metal)->slug, *metal, price ? price->value_si : no_number});
        }
        if (request_.over == SweepOver::temperature && !request_.resistivity.empty())
            return unreadable("a stated resistivity does not change with temperature: sweep a --metal");
        if (request_.hold != SweepHold::nothing && !request_.resistivity.empty())
            return unreadable("--hold needs a --metal with a density");
        if (request_.over == SweepOver::budget && !request_.resistivity.empty())
            return unreadable("a budget needs a --metal with a price");
        return std::nullopt;
    }

    SweepResult run() {
        for (const Stuff& s : stuff_) out_.lines.push_back({s.name, s.metal, {}});
        for (const double x : spaced(request_))
            for (std::size_t i = 0; i < stuff_.size(); ++i) out_.lines[i].points.push_back(at(x, stuff_[i]));
        out_.wall_for_half_m = wall_for_share(out_.setup.inputs, 0.5);
        out_.wall_for_90_percent_m = wall_for_share(out_.setup.inputs, 0.9);
        return std::move(out_);
    }

private:
    /// The set-up at x; a wall's own tolerance stays what it was.
    Result<eddy::DropInputs> inputs_at(double x, const Stuff& stuff, const Conditions& conditions) const {
        eddy::DropInputs i = out_.setup.inputs;
        const double wall = i.outside_radius_m.value - i.bore_radius_m.value;
        if (request_.over == SweepOver::wall) i.outside_radius_m.value = i.bore_radius_m.value + x;
        if (request_.over == SweepOver::bore) {
            i.bore_radius_m.value = x / 2;
            i.outside_radius_m.value = x / 2 + wall;
        }
        if (request_.over == SweepOver::length) i.tube_length_m.value = x;
        if (request_.hold != SweepHold::nothing)
            if (auto fault = hold_amount(i, stuff, conditions)) return *fault;
        if (request_.over == SweepOver::budget) {
            if (std::isnan(stuff.price_usd_kg)) return no_value("no price of " + stuff.name + " is cited");
            const auto density = tube_density(catalogue_, *stuff.metal, conditions);
            if (!density) return density.problem();
            const double area = x / stuff.price_usd_kg / (density->value_si * i.tube_length_m.value);
            i.outside_radius_m = {std::sqrt(i.bore_radius_m.value * i.bore_radius_m.value + area / std::numbers::pi),
                                  0};
            i.wall_area_held = true; // by what is paid, whatever the bore
        }
        const Result<eddy::DropInputs> sound = eddy::checked(i);
        if (!sound || request_.over != SweepOver::bore) return sound;
        return eddy::with_riding(*sound);
    }

    /// The wall that the held amount of metal leaves at this bore and length.
    std::optional<Problem> hold_amount(eddy::DropInputs& i, const Stuff& stuff, const Conditions& conditions) const {
        const auto density = tube_density(catalogue_, *stuff.metal, conditions);
        if (!density) return density.problem();
        if (request_.hold == SweepHold::budget && std::isnan(stuff.price_usd_kg))
            return no_value("no price of " + stuff.name + " is cited");
        const eddy::DropInputs& stated = out_.setup.inputs;
        double kg = request_.held_si.value_or(density->value_si * eddy::nominal_wall_area_m2(stated) *
                                              stated.tube_length_m.value);
        if (request_.hold == SweepHold::budget) kg /= stuff.price_usd_kg;
        const double area = kg / (density->value_si * i.tube_length_m.value), bore = i.bore_radius_m.value;
        i.outside_radius_m = {std::sqrt(bore * bore + area / std::numbers::pi), 0};
        i.wall_area_held = true;
        return std::nullopt;
    }

    /// One model for a geometry serves every metal.
    const eddy::DropModel& model_of(const eddy::DropInputs& inputs) {
        const std::tuple key{inputs.bore_radius_m.value, inputs.outside_radius_m.value, inputs.tube_length_m.value};
        auto found = models_.find(key);
        if (found == models_.end()) found = models_.try_emplace(key, inputs).first;
        return found->second;
    }

    SweepPoint at(double x, const Stuff& stuff) {
        SweepPoint p;
        p.x_si = x;
        Conditions conditions = request_.conditions;
        if (request_.over == SweepOver::temperature) conditions.temperature_K = x;
        const Result<TubeMetal> tube = stuff.metal ? tube_metal(catalogue_, *stuff.metal, conditions)
                                                   : tube_metal(catalogue_, "", request_.resistivity, conditions);
        const Result<eddy::DropInputs> inputs = inputs_at(x, stuff, conditions);
        if (!tube || !inputs) {
            p.problem = (tube ? inputs.problem() : tube.problem()).text;
            return p;
        }
        const eddy::DropModel& model = model_of(*inputs);
        out_.magnet_mass_kg = model.mass_kg();
        for (const SourceValue& source : tube->value.sources)
            if (source.chosen) add_source(source.key);
        p.wall_m = inputs->outside_radius_m.value - inputs->bore_radius_m.value;
        time_fall(p, model, *tube);
        if (!stuff.metal) return p;
        if (const auto density = tube_density(catalogue_, *stuff.metal, conditions))
            p.tube_mass_kg = density->value_si * model.nominal().wall_area_m2 * model.nominal().tube_length_m;
        p.cost_usd = p.tube_mass_kg * stuff.price_usd_kg;
        return p;
    }

    void add_source(const std::string& key) {
        auto& keys = out_.metal_sources;
        if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
    }

    void time_fall(SweepPoint& p, const eddy::DropModel& model, const TubeMetal& tube) {
        const eddy::Fall nominal = model.fall(model.setup(tube.conductivity_S_m()));
        if (const auto fault = low_speed_fault(model, tube.conductivity_S_m(), nominal.terminal_speed_m_s)) {
            p.problem = fault->text;
            return;
        }
        if (!nominal.fault.empty()) {
            p.problem = nominal.fault;
            return;
        }
        p.time_s = nominal.time_s;
        p.terminal_speed_m_s = nominal.terminal_speed_m_s.value_or(no_number);
        Draws draws(request_.samples, request_.seed);
        const auto variations = model.variations(draws);
        const auto conductivities = tube.conductivities(draws);
        std::vector<double> times = eddy::fall_times_s(model, conductivities, variations);
        if (times.empty()) return;
        p.low90_s = std::min(quantile(times, 0.05), p.time_s);
        p.high90_s = std::max(quantile(times, 0.95), p.time_s);
    }

    const Catalogue& catalogue_;
    const SweepRequest& request_;
    SweepResult out_;
    std::vector<Stuff> stuff_;
    std::map<std::tuple<double, double, double>, eddy::DropModel> models_; // by bore, outside and length
};

} // namespace

const char* name_of(SweepOver over) {
    switch (over) {
    case SweepOver::wall:
        return "wall";
    case SweepOver::bore:
        return "bore";
    case SweepOver::length:
        return "length";
    case SweepOver::temperature:
        return "temperature";
    default:
        return "budget";
    }
}

double wall_for_share(const eddy::DropInputs& inputs, double share) {
    const double a = inputs.bore_radius_m.value, whole = low_speed_drag(inputs, a * endless);
    double low = std::log(1e-4), high = std::log(endless - 1);
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (low_speed_drag(inputs, a * (1 + std::exp(middle))) < share * whole ? low : high) = middle;
    }
    return a * std::exp((low + high) / 2);
}

std::string usual_range(const Catalogue& catalogue, SweepOver over) {
    switch (over) {
    case SweepOver::wall:
        return "0.5mm:15mm";
    case SweepOver::bore:
        return "16mm:40mm";
    case SweepOver::length:
        return "100mm:1000mm";
    case SweepOver::temperature:
        return "77K:400K";
    default:
        return round_amount(catalogue, 1) + ":" + round_amount(catalogue, 50);
    }
}

Result<SweepRequest> with_range(const Catalogue& catalogue, SweepRequest r, const std::string& over,
                                const std::string& range) {
    constexpr std::array all = {SweepOver::wall, SweepOver::bore, SweepOver::length, SweepOver::temperature,
                                SweepOver::budget};
    const auto at = std::find_if(all.begin(), all.end(), [&](SweepOver o) { return over == name_of(o); });
    if (at == all.end())
        return unreadable("--over '" + over + "': wall, bore, length, temperature or budget is expected");
    r.over = *at;
    const std::size_t colon = range.find(':');
    const Problem expected{
        Problem::Kind::unreadable,
        "--over " + over + " '" + range + "': FROM:TO is expected, such as " + usual_range(catalogue, r.over), 0};
    if (colon == std::string::npos) return expected;
    const Dimension dimension = base_dimension(r.over == SweepOver::temperature ? Dimension::kelvin : Dimension::metre);
    const auto read = [&](const std::string& word) {
        return r.over == SweepOver::budget ? usd_from(catalogue, word, "--over " + over)
                                           : parse_si(word, dimension, over);
    };
    std::vector<std::string> ends = {range.substr(0, colon), range.substr(colon + 1)};
    const bool a_length = r.over == SweepOver::wall || r.over == SweepOver::bore || r.over == SweepOver::length;
    if (a_length && !bare_numbers_are_si()) {
        const auto lengths = with_shared_unit(ends, ":");
        if (!lengths) return unreadable("--over " + over + " '" + range + "': " + lengths.problem().text);
        ends = *lengths;
    }
    const Result<double> from = read(ends[0]), to = read(ends[1]);
    for (const Result<double>* end : {&from, &to})
        if (!*end)
            return r.over == SweepOver::budget ? end->problem()
                                               : unreadable(expected.text + " (" + end->problem().text + ")");
    r.from_si = *from;
    r.to_si = *to;
    return r;
}

Result<SweepResult> sweep(const Catalogue& catalogue, const SweepRequest& request) {
    if (!(request.from_si > 0 && request.to_si > request.from_si))
        return unreadable("--over: FROM:TO must rise from above zero");
    const bool holds = request.hold != SweepHold::nothing;
    if (holds && request.over != SweepOver::length && request.over != SweepOver::bore)
        return unreadable("--hold goes with --over length or bore");
    if (request.hold == SweepHold::budget && !request.held_si)
        return unreadable("--hold budget: how much: --budget " + usual_budget(catalogue));
    if (request.held_si && !holds) return unreadable("--mass and --budget go with --hold mass or --hold budget");
    if (request.steps < 2 || request.steps > 200) return unreadable("--steps: from 2 to 200");
    Result<DropSetup> setup = drop_setup(catalogue, request.setup);
    if (!setup) return setup.problem();
    Sweeping sweeping(catalogue, request, std::move(*setup));
    if (auto problem = sweeping.name_metals()) return *problem;
    return sweeping.run();
}

} // namespace pourbook
