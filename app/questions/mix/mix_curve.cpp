#include "questions/mix/mix_curve.hpp"

#include "core/alloys/resistivity.hpp"
#include "core/evaluate/evaluate.hpp"

#include "questions/mix/mix_metal.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double enough_wt = 99.5;

MixCurvePoint point_at(const Catalogue& c, const MixCurveRequest& request, double wt_b,
                       std::vector<std::string>& sources) {
    MixCurvePoint p;
    p.wt_b = wt_b;
    std::vector<Share> shares = {{request.a, 100 - wt_b, 0}, {request.b, wt_b, 0}};
    const Result<Composition> composition = composition_of(c.alloys, std::move(shares));
    if (!composition) return p;
    const Result<ResistivityEstimate> r = estimate_resistivity({c, *composition, request.treatment});
    if (!r) return p;
    for (const Citation& s : r->estimate.sources)
        if (std::find(sources.begin(), sources.end(), s.source) == sources.end()) sources.push_back(s.source);
    p.conductivity_si = 1 / r->estimate.value_si;
    p.low90_si = 1 / r->estimate.high90_si;
    p.high90_si = 1 / r->estimate.low90_si;
    return p;
}

} // namespace

Result<MixCurve> mix_curve(const Catalogue& c, const MixCurveRequest& request) {
    for (const std::string& symbol : {request.a, request.b})
        if (!c.alloys.mass(symbol))
            return Problem{Problem::Kind::unknown, "unknown element '" + symbol + "': write a chemical symbol", 0};
    MixCurve out{request.a, request.b, request.treatment, nullptr, {}, {}, {}};
    out.diagram = c.alloys.diagram(request.a, request.b);
    const int steps = std::max(request.steps, 1);
    for (int i = 0; i <= steps; ++i) out.points.push_back(point_at(c, request, 100.0 * i / steps, out.sources));
    for (const Metal& m : c.metals) {
        if (names_mix(m.slug)) continue; // an estimate is no measurement
        const double a = m.content_percent(request.a), b = m.content_percent(request.b);
        if (a + b < enough_wt) continue;
        Conditions cited;
        cited.cited_only = true;
        const Result<Evaluated> e = evaluate(c, m, "conductivity", cited);
        if (e) out.measured.push_back({&m, 100 * b / (a + b), e->value_si, e->standard_uncertainty_si, e->condition});
    }
    return out;
}

} // namespace pourbook
