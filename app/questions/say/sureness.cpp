#include "questions/say/sureness.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace pourbook {
namespace {

constexpr double agreeing = 0.05;

struct Read {
    std::size_t figures = 0;
    std::map<std::string, std::size_t> by_maker;
    double low = no_number, high = no_number;

    double apart() const { return (high - low) / std::max(std::abs(low), std::abs(high)); }
};

Read read_figures(const Catalogue& catalogue, const Evaluated& value) {
    Read read;
    for (const SourceValue& s : value.sources) {
        if (s.how_known == HowKnown::memory) continue;
        ++read.figures;
        const Reference* reference = catalogue.reference(s.key);
        ++read.by_maker[reference ? maker_of(*reference) : s.key];
        read.low = std::fmin(read.low, s.value_si);
        read.high = std::fmax(read.high, s.value_si);
    }
    return read;
}

std::string makers_text(const Read& read) {
    const auto most = std::max_element(read.by_maker.begin(), read.by_maker.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    if (most->second == read.figures && read.figures > 1)
        return "all " + std::to_string(read.figures) + " figures come from one maker, " + most->first;
    if (most->second > 1)
        return std::to_string(most->second) + " of " + std::to_string(read.figures) + " figures come from one maker, " +
               most->first;
    return std::to_string(read.figures) + " sources";
}

} // namespace

std::string maker_of(const Reference& reference) {
    const std::string& all = reference.authors;
    const std::size_t end = std::min({all.find(','), all.find(';'), all.find(" and ")});
    return all.empty() ? reference.key : all.substr(0, end);
}

Sureness sureness_of(const Catalogue& catalogue, const Evaluated& value) {
    if (value.basis != Basis::cited)
        return {"hint", "no source says it here: " + std::string(name_of(value.basis)) +
                            (value.law.empty() ? "" : " by " + value.law)};
    if (value.how_known == HowKnown::memory) return {"hint", "remembered, not read in a text"};
    if (!value.condition_matches) return {"hint", "cited for another condition: " + value.condition};
    const Read read = read_figures(catalogue, value);
    if (read.figures == 0) return {"fair", std::string(name_of(value.how_known))};
    if (read.figures == 1)
        return {"fair", value.uncertainty_assumed ? "one source, which states no uncertainty" : "one source"};
    const double apart = read.apart();
    if (std::isfinite(apart) && apart > agreeing)
        return {"fair", makers_text(read) + ", and they differ by " + significant(100 * apart, 2) + " %"};
    return {read.by_maker.size() > 1 ? "firm" : "fair",
            makers_text(read) + (read.by_maker.size() > 1 ? ", and they agree" : "")};
}

} // namespace pourbook
