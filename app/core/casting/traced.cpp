#include "core/casting/traced.hpp"

#include <algorithm>

namespace pourbook::casting {

Traced traced(const Evaluated& e) {
    Traced t;
    t.value_si = e.value_si;
    t.standard_uncertainty_si = e.standard_uncertainty_si;
    t.how_known = e.how_known;
    if (!e.trail.empty()) t.how = e.trail.front();
    std::copy_if(e.sources.begin(), e.sources.end(), std::back_inserter(t.sources),
                 [](const SourceValue& s) { return s.chosen; });
    return t;
}

void add_sources(Traced& to, const Traced& from) {
    for (const SourceValue& s : from.sources) {
        const bool known = std::any_of(to.sources.begin(), to.sources.end(), [&](const SourceValue& o) {
            return o.record_id == s.record_id && o.key == s.key && o.locator == s.locator;
        });
        if (!known) to.sources.push_back(s);
    }
    if (from.how_known == HowKnown::memory || to.how_known == HowKnown::read) to.how_known = from.how_known;
}

} // namespace pourbook::casting
