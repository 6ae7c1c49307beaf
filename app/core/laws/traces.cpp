#include "core/laws/traces.hpp"

#include "core/casting/practice.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr const char* any_feedstock = "not stated";
constexpr double unalloyed_wt = 99; // from here on a metal's figures are of purer metal than one melts

bool unalloyed(const Metal& metal) {
    return metal.is_element() || std::any_of(metal.composition.begin(), metal.composition.end(),
                                             [](const Portion& p) { return p.wt_percent >= unalloyed_wt; });
}

Trace trace_by(const Practice& p) {
    return {p.element, p.material != "precipitated", 100 * p.figure.low_si, 100 * p.figure.high_si, &p};
}

CastPorosity share_by(const Catalogue& catalogue, const Metal& metal, const char* quantity) {
    const auto entries = casting::practices(catalogue, metal, quantity, "");
    if (entries.empty()) return {};
    const Practice& p = *entries.front();
    return {{p.figure.low_si, p.figure.high_si}, &p};
}

} // namespace

std::vector<Trace> traces_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state) {
    std::vector<Trace> out;
    for (const ContentRange& c : state.contents) out.push_back({c.element, true, c.low_wt, c.high_wt, nullptr});
    if (!out.empty() || (state.feedstock.empty() && !unalloyed(metal))) return out;
    const std::string feedstock = state.feedstock.empty() ? any_feedstock : state.feedstock;
    for (const Practice* p : casting::of_grade(casting::practices(catalogue, metal, "casting_content", ""), feedstock))
        if (metal.is_element() || metal.content_percent(p->element) <= 0) out.push_back(trace_by(*p));
    return out;
}

CastPorosity porosity_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state) {
    if (state.porosity) return {*state.porosity, nullptr};
    if (state.own_trials)
        if (const CastPorosity own = share_by(catalogue, metal, "own_porosity"); own.practice) return own;
    return share_by(catalogue, metal, "casting_porosity");
}

CastPorosity oxide_of(const Catalogue& catalogue, const Metal& metal, const CastingState& state) {
    if (!state.contents.empty() || (state.feedstock.empty() && !unalloyed(metal))) return {};
    return share_by(catalogue, metal, "casting_oxide");
}

} // namespace pourbook
