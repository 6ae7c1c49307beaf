#include "questions/rank/merit.hpp"

#include "core/evaluate/sampled.hpp"
#include "core/laws/draw_parts.hpp"
#include "questions/drop/tube_metal.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace pourbook {
namespace {

void add(Inputs& inputs, const std::string& property, Result<Evaluated> value) {
    if (value) {
        inputs.values.push_back({property, std::move(*value)});
        return;
    }
    inputs.missing.push_back(property);
    inputs.reason += (inputs.reason.empty() ? "" : "; ") + value.problem().text;
}

template <class T> std::vector<T> picked(const std::vector<T>& from, const std::vector<std::size_t>& slots) {
    std::vector<T> out;
    for (const std::size_t slot : slots) out.push_back(from[slot]);
    return out;
}

std::size_t place_of(const std::vector<RankInput>& inputs, const char* property) {
    const auto at =
        std::find_if(inputs.begin(), inputs.end(), [&](const RankInput& i) { return i.property == property; });
    return static_cast<std::size_t>(at - inputs.begin());
}

/// The liquidus is the solidus plus a gap that is never negative; none where both are one melting point.
void draw_together(const std::vector<RankInput>& inputs, Columns& columns) {
    const std::size_t solidus = place_of(inputs, "solidus"), liquidus = place_of(inputs, "liquidus");
    if (solidus == inputs.size() || liquidus == inputs.size()) return;
    const bool one_point = inputs[solidus].value.value_si == inputs[liquidus].value.value_si;
    for (std::size_t s = 0; s < columns[liquidus].size(); ++s) {
        const double gap = one_point ? 0 : std::abs(columns[liquidus][s] - columns[solidus][s]);
        columns[liquidus][s] = columns[solidus][s] + gap;
    }
}

} // namespace

std::vector<double> nominal(const std::vector<RankInput>& inputs) {
    std::vector<double> out;
    for (const RankInput& i : inputs) out.push_back(i.value.value_si);
    return out;
}

bool any_from_memory(const std::vector<RankInput>& inputs) {
    return std::any_of(inputs.begin(), inputs.end(),
                       [](const RankInput& i) { return i.value.how_known == HowKnown::memory; });
}

bool any_stale(const std::vector<RankInput>& inputs) {
    return std::any_of(inputs.begin(), inputs.end(), [](const RankInput& i) { return i.value.stale; });
}

Inputs look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& properties,
               const Conditions& conditions) {
    Inputs out;
    for (const std::string& property : properties) add(out, property, evaluate(catalogue, metal, property, conditions));
    return out;
}

Merit::Merit(Formula formula, std::shared_ptr<const FallTime> fall)
    : formula_(std::move(formula)), fall_(std::move(fall)) {
    constexpr std::size_t the_fall = std::numeric_limits<std::size_t>::max();
    for (const std::string& name : formula_.names())
        names_.push_back(fall_ && name == fall_time_name ? the_fall : slot_of(name));
    if (!fall_) return;
    for (const std::string& property : fall_->properties()) fall_inputs_.push_back(slot_of(property));
}

std::size_t Merit::slot_of(const std::string& property) {
    const auto known = std::find(properties_.begin(), properties_.end(), property);
    const auto slot = static_cast<std::size_t>(known - properties_.begin());
    if (known == properties_.end()) properties_.push_back(property);
    return slot;
}

bool Merit::uses(const std::string& property) const {
    return std::find(properties_.begin(), properties_.end(), property) != properties_.end();
}

Inputs Merit::inputs(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) const {
    Inputs out;
    for (const std::string& property : properties_) add(out, property, input(catalogue, metal, property, conditions));
    return out;
}

Result<Evaluated> Merit::input(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                               const Conditions& conditions) const {
    const bool of_tube = fall_ && property == "density"; // which changes too little with temperature to refuse it
    Result<Evaluated> value =
        of_tube ? tube_density(catalogue, metal, conditions) : evaluate(catalogue, metal, property, conditions);
    if (value) add_draw_parts(*value, catalogue, metal, property, conditions);
    return value;
}

std::string Merit::refusal(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) const {
    if (!fall_) return {};
    const Result<TubeMetal> tube = tube_metal(catalogue, metal, conditions);
    return !tube && tube.problem().kind == Problem::Kind::refused ? tube.problem().text : std::string();
}

std::string Merit::fault(const std::vector<double>& values) const {
    return fall_ ? fall_->fault(picked(values, fall_inputs_)) : std::string();
}

double Merit::value(const std::vector<double>& values) const {
    if (!fall_) return formula_.value(values); // a formula's names are the properties, in its order
    std::vector<double> named;
    for (const std::size_t slot : names_)
        named.push_back(slot < values.size() ? values[slot] : fall_->value(picked(values, fall_inputs_)));
    return formula_.value(named);
}

std::vector<double> Merit::samples(const std::vector<RankInput>& inputs, Draws& draws) const {
    Columns columns = drawn(inputs, draws);
    if (!fall_) return formula_.values(columns, draws.samples());
    Columns named;
    for (const std::size_t slot : names_)
        named.push_back(slot < columns.size() ? columns[slot]
                                              : fall_->samples(picked(columns, fall_inputs_),
                                                               picked(nominal(inputs), fall_inputs_), draws));
    return formula_.values(named, draws.samples());
}

double Merit::wall_area_m2(const std::vector<double>& values) const {
    return fall_->wall_area_m2(picked(values, fall_inputs_));
}

Columns drawn(const std::vector<RankInput>& inputs, Draws& draws) {
    Columns out;
    for (const RankInput& input : inputs) out.push_back(sampled(input.value, draws));
    draw_together(inputs, out);
    return out;
}

std::vector<double> sensitivities(const Merit& merit, const std::vector<RankInput>& inputs) {
    constexpr double step = 1e-4;
    const std::vector<double> values = nominal(inputs);
    const double here = merit.value(values);
    std::vector<double> out;
    for (std::size_t i = 0; i < values.size(); ++i) {
        std::vector<double> up = values, down = values;
        up[i] *= 1 + step;
        down[i] *= 1 - step;
        out.push_back((merit.value(up) - merit.value(down)) / (2 * step * here));
    }
    return out;
}

Problem placed(const std::string& what, const std::string& text, Problem problem) {
    constexpr std::size_t most = 80;
    const std::string shown = text.size() > most ? text.substr(0, most - 3) + "..." : text;
    problem.text = what + " '" + shown + "', column " + std::to_string(problem.column) + ": " + problem.text;
    return problem;
}

} // namespace pourbook
