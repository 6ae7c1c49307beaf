#include "usecases/merit.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {

std::vector<double> Inputs::nominal() const {
    std::vector<double> out;
    for (const RankInput& i : values) out.push_back(i.value.value_si);
    return out;
}

bool Inputs::from_memory() const {
    return std::any_of(values.begin(), values.end(),
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

std::vector<double> sampled(const Formula& formula, const std::vector<RankInput>& inputs, Draws& draws) {
    std::vector<std::vector<std::pair<const std::vector<double>*, double>>> causes(inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i)
        for (const Cause& c : inputs[i].value.causes) causes[i].emplace_back(&draws.of(c.key), c.relative);
    std::vector<double> out(draws.samples()), values(inputs.size());
    for (std::size_t s = 0; s < out.size(); ++s) {
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            double exponent = 0;
            for (const auto& [column, relative] : causes[i]) exponent += relative * (*column)[s];
            values[i] = inputs[i].value.value_si * std::exp(exponent);
        }
        out[s] = formula.value(values);
    }
    return out;
}

std::vector<double> sensitivities(const Formula& formula, const std::vector<RankInput>& inputs) {
    constexpr double step = 1e-4;
    std::vector<double> out, values;
    for (const RankInput& i : inputs) values.push_back(i.value.value_si);
    const double here = formula.value(values);
    for (std::size_t i = 0; i < values.size(); ++i) {
        std::vector<double> up = values, down = values;
        up[i] *= 1 + step;
        down[i] *= 1 - step;
        out.push_back((formula.value(up) - formula.value(down)) / (2 * step * here));
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
