#include "usecases/merit.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {

std::vector<double> nominal(const std::vector<RankInput>& inputs) {
    std::vector<double> out;
    for (const RankInput& i : inputs) out.push_back(i.value.value_si);
    return out;
}

bool any_from_memory(const std::vector<RankInput>& inputs) {
    return std::any_of(inputs.begin(), inputs.end(),
                       [](const RankInput& i) { return i.value.how_known == HowKnown::memory; });
}

Inputs look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& properties,
               const Conditions& conditions) {
    Inputs out;
    for (const std::string& property : properties) {
        const Result<Evaluated> e = evaluate(catalogue, metal, property, conditions);
        if (e) {
            out.values.push_back({property, *e});
            continue;
        }
        out.missing.push_back(property);
        out.reason += (out.reason.empty() ? "" : "; ") + e.problem().text;
    }
    return out;
}

bool Merit::uses(const std::string& property) const {
    return std::find(properties().begin(), properties().end(), property) != properties().end();
}

std::vector<double> Merit::samples(const std::vector<RankInput>& inputs, Draws& draws) const {
    return formula_.values(drawn(inputs, draws), draws.samples());
}

Columns drawn(const std::vector<RankInput>& inputs, Draws& draws) {
    Columns out;
    std::vector<double> exponent;
    for (const RankInput& input : inputs) {
        exponent.assign(draws.samples(), 0);
        for (const Cause& cause : input.value.causes) {
            const std::vector<double>& column = draws.of(cause.key);
            const double spread = log_spread(cause.relative);
            for (std::size_t s = 0; s < exponent.size(); ++s) exponent[s] += spread * column[s];
        }
        for (double& x : exponent) x = input.value.value_si * std::exp(x);
        out.push_back(exponent);
    }
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
