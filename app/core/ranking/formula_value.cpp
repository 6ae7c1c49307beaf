#include "core/ranking/formula_value.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

bool compared(const std::string& sign, double a, double b) {
    if (sign == "<") return a < b;
    if (sign == "<=") return a <= b;
    if (sign == ">") return a > b;
    if (sign == ">=") return a >= b;
    return (sign == "!=") != (a == b);
}

/// Hands use() the node's arithmetic as a function of its parts.
template <class Use> auto with_call(const std::string& f, Use&& use) {
    if (f == "abs") return use([](double a, double) { return std::abs(a); });
    if (f == "sqrt") return use([](double a, double) { return std::sqrt(a); });
    if (f == "log") return use([](double a, double) { return std::log(a); });
    if (f == "exp") return use([](double a, double) { return std::exp(a); });
    if (f == "min") return use([](double a, double b) { return std::min(a, b); });
    return use([](double a, double b) { return std::max(a, b); });
}

template <class Use> auto with_arithmetic(const FormulaNode& n, Use&& use) {
    switch (n.operation) {
    case Operation::negate:
        return use([](double a, double) { return -a; });
    case Operation::add:
        return use([](double a, double b) { return a + b; });
    case Operation::subtract:
        return use([](double a, double b) { return a - b; });
    case Operation::multiply:
        return use([](double a, double b) { return a * b; });
    case Operation::divide:
        return use([](double a, double b) { return a / b; });
    case Operation::power:
        return use([](double a, double b) { return std::pow(a, b); });
    default:
        return with_call(n.word, use);
    }
}

bool is_number(const FormulaNode& n) {
    return n.operation == Operation::number || n.operation == Operation::word_test;
}

std::string word_of(const Metal& metal, const std::string& field) {
    if (field == "family") return metal.family;
    if (field == "kind") return metal.kind;
    return field == "slug" ? metal.slug : metal.name;
}

} // namespace

double number_of(const FormulaNode& n, const std::vector<double>& values) {
    if (n.operation == Operation::name) return values[n.name];
    if (is_number(n)) return n.number;
    const double a = number_of(n.parts[0], values), b = n.parts.size() > 1 ? number_of(n.parts[1], values) : 0;
    return with_arithmetic(n, [&](auto arithmetic) { return arithmetic(a, b); });
}

namespace {

/// A column as it stands, or one worked out into `own`.
const std::vector<double>& part_of(const FormulaNode& n, const Columns& columns, std::size_t samples,
                                   std::vector<double>& own) {
    if (n.operation == Operation::name) return columns[n.name];
    own = numbers_of(n, columns, samples);
    return own;
}

} // namespace

std::vector<double> numbers_of(const FormulaNode& n, const Columns& columns, std::size_t samples) {
    if (n.operation == Operation::name) return columns[n.name];
    if (is_number(n) || n.constant) return std::vector<double>(samples, n.number);
    std::vector<double> first, second;
    const std::vector<double>& a = part_of(n.parts[0], columns, samples, first);
    const std::vector<double>& b = n.parts.size() > 1 ? part_of(n.parts[1], columns, samples, second) : a;
    std::vector<double>& out = &b == &second ? second : first;
    out.resize(samples);
    return with_arithmetic(n, [&](auto arithmetic) {
        for (std::size_t s = 0; s < samples; ++s) out[s] = arithmetic(a[s], b[s]);
        return std::move(out);
    });
}

bool truth_of(const FormulaNode& n, const std::vector<double>& values, const Metal& metal) {
    const auto part = [&](std::size_t i) { return truth_of(n.parts[i], values, metal); };
    switch (n.operation) {
    case Operation::both:
        return part(0) && part(1);
    case Operation::either:
        return part(0) || part(1);
    case Operation::opposite:
        return !part(0);
    case Operation::word_test:
        return (n.word == "!=") != (as_slug(word_of(metal, n.parts[0].word)) == as_slug(n.right_word));
    default:
        return compared(n.word, number_of(n.parts[0], values), number_of(n.parts[1], values));
    }
}

} // namespace pourbook
