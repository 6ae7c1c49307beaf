#include "questions/rank/settle.hpp"

#include "core/evaluate/sampled.hpp"
#include "questions/say/casting_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

void add(std::map<std::string, double>& slope, const Merit& merit, const std::vector<RankInput>& inputs, double sign) {
    const std::vector<double> s = sensitivities(merit, inputs);
    for (std::size_t i = 0; i < inputs.size(); ++i)
        for (const Cause& c : weighted_causes(inputs[i].value)) slope[c.key] += sign * s[i] * log_spread(c.relative);
}

} // namespace

std::map<std::string, double> ratio_variance(const Merit& merit, const std::vector<RankInput>& a,
                                             const std::vector<RankInput>& b) {
    std::map<std::string, double> slope;
    add(slope, merit, a, 1);
    add(slope, merit, b, -1);
    for (auto& [cause, value] : slope) value *= value;
    return slope;
}

std::string plain_cause(const Catalogue& catalogue, const std::string& cause) {
    const auto name = [&](const std::string& slug) {
        const Metal* metal = catalogue.metal(slug);
        return metal ? metal->name : slug;
    };
    const std::size_t dot = cause.find('.');
    const std::string front = cause.substr(0, dot), back = cause.substr(dot + 1);
    if (front == "price") return "the price of " + name(back);
    if (front == "form") { // "retail.copper": of a family
        const std::size_t next = back.find('.');
        return "what " + back.substr(0, next) + " adds to the exchange price (family: " + back.substr(next + 1) + ")";
    }
    if (front == "increment") // "increment.Cu.P"
        return "what " + element_word(catalogue, back.substr(back.find('.') + 1)) + " adds to the resistivity of " +
               element_word(catalogue, back.substr(0, back.find('.')));
    if (back.starts_with("content.")) {
        const std::string rest = back.substr(back.find('.') + 1);
        return "the " + element_word(catalogue, rest.substr(0, rest.find('.'))) + " left in " + name(front);
    }
    std::string property = back;
    std::replace(property.begin(), property.end(), '_', ' ');
    return "the " + property + " of " + name(front);
}

} // namespace pourbook
