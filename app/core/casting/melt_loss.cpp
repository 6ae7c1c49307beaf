#include "core/casting/melt_loss.hpp"

#include <cmath>

namespace pourbook::casting {

MeltLoss melt_loss(const Material& m, double charge_kg) {
    MeltLoss out;
    out.share = traced(range_of(practices(m.catalogue, m.metal, "melt_loss", "")), "usual for " + m.metal.family);
    double by_elements = 0;
    for (const Practice& p : m.catalogue.practices) {
        if (p.quantity != "element_loss") continue;
        const double held = m.metal.content_percent(p.element) / 100;
        if (m.metal.is_element() || !(held > 0) || held * 100 < p.from_wt_percent) continue;
        if (!p.family.empty() && p.family != m.metal.family) continue;
        const Point& f = p.figure;
        ElementLoss e;
        e.element = p.element;
        e.share_low = std::isnan(f.low_si) ? f.value_si : f.low_si;
        e.share_high = std::isnan(f.high_si) ? f.value_si : f.high_si;
        e.low_kg = e.share_low * held * charge_kg;
        e.high_kg = e.share_high * held * charge_kg;
        e.text = p.text;
        e.source = source_of(p);
        by_elements += (e.share_low + e.share_high) / 2 * held;
        out.elements.push_back(std::move(e));
    }
    if (by_elements > out.share.value_si) {
        out.share.value_si = by_elements;
        out.share.how = "what its volatile elements lose";
        for (const ElementLoss& e : out.elements) out.share.sources.push_back(e.source);
    }
    return out;
}

} // namespace pourbook::casting
