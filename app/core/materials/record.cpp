#include "core/materials/record.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace pourbook {
namespace {

template <class E, std::size_t N> using Names = std::array<std::pair<E, const char*>, N>;

constexpr Names<Phase, 3> phases = {{{Phase::any, "any"}, {Phase::solid, "solid"}, {Phase::liquid, "liquid"}}};
constexpr Names<HowKnown, 5> hows = {{{HowKnown::read, "read"},
                                      {HowKnown::common_practice, "common practice"},
                                      {HowKnown::memory, "memory"},
                                      {HowKnown::computed, "computed"},
                                      {HowKnown::own, "own"}}};
constexpr Names<Use, 4> uses = {{{Use::alternate, "alternate"},
                                 {Use::preferred, "preferred"},
                                 {Use::disputed, "disputed"},
                                 {Use::superseded, "superseded"}}};

template <class E, std::size_t N> const char* name_in(const Names<E, N>& names, E wanted) {
    for (const auto& [value, name] : names)
        if (value == wanted) return name;
    return "";
}

template <class E, std::size_t N> std::optional<E> value_in(const Names<E, N>& names, const std::string& wanted) {
    for (const auto& [value, name] : names)
        if (name == wanted) return value;
    return std::nullopt;
}

} // namespace

double Polynomial::at(double temperature_K) const {
    double sum = 0;
    for (auto c = coefficient_si.rbegin(); c != coefficient_si.rend(); ++c) sum = sum * (temperature_K - offset_K) + *c;
    return sum;
}

double Record::lowest_K() const {
    if (equation) return equation->low_K;
    return points.empty() ? no_number : points.front().temperature_K;
}

double Record::highest_K() const {
    if (equation) return equation->high_K;
    return points.empty() ? no_number : points.back().temperature_K;
}

const char* name_of(Phase phase) {
    return name_in(phases, phase);
}
const char* name_of(HowKnown how) {
    return name_in(hows, how);
}
const char* name_of(Use use) {
    return name_in(uses, use);
}
std::optional<Phase> phase_named(const std::string& name) {
    return value_in(phases, name);
}
std::optional<HowKnown> how_known_named(const std::string& name) {
    return value_in(hows, name);
}
std::optional<Use> use_named(const std::string& name) {
    return value_in(uses, name);
}

} // namespace pourbook
