#include "answers/pour/pour_report.hpp"

#include <set>

namespace pourbook {
namespace {

class Keys {
public:
    void add(const std::vector<SourceValue>& sources) {
        for (const SourceValue& s : sources) keys_.insert(s.key);
    }
    void add(const std::vector<const Practice*>& entries) {
        for (const Practice* p : entries) keys_.insert(p->citation.source);
    }
    void add(const std::string& key) { keys_.insert(key); }
    std::vector<std::string> all() const { return {keys_.begin(), keys_.end()}; }

private:
    std::set<std::string> keys_;
};

} // namespace

std::vector<std::string> source_keys(const PourResult& r) {
    Keys keys;
    for (const casting::Warning& w : r.cautions) keys.add(w.citation.source);
    if (r.contraction) keys.add(r.contraction->strain.sources);
    if (r.melt_heat)
        for (const auto* part : {&r.melt_heat->solid, &r.melt_heat->fusion, &r.melt_heat->melt})
            keys.add(part->sources);
    if (r.money.price) keys.add(r.money.price->sources);
    for (const auto* t : {&r.density, &r.melt_density, &r.heat.pour, &r.melt_loss, &r.gating, &r.feeding.share})
        keys.add(t->sources);
    for (const auto* range : {&r.mould.range, &r.usual_yield, &r.fill.least_section}) keys.add(range->sources);
    for (const auto* list :
         {&r.allowance.sources, &r.tolerance.sources, &r.feeding.sources, &r.firing.sources, &r.limits.sources})
        keys.add(*list);
    if (r.heat.taken) keys.add(r.heat.taken->source.key);
    for (const casting::PrintedRange& p : r.heat.printed) keys.add(p.source.key);
    if (r.freezing) keys.add(r.freezing->sources);
    if (r.carry) keys.add(r.carry->sources);
    keys.add(r.fill.gating.sources);
    keys.add(r.consumables.sources);
    keys.add(r.additions);
    keys.add(r.after);
    for (const casting::ElementLoss& e : r.element_losses) keys.add(e.source.key);
    for (const auto* list : {&r.deoxidation, &r.gas, &r.shell_steps, &r.burnout, &r.checklist, &r.draft, &r.defects})
        keys.add(*list);
    return keys.all();
}

} // namespace pourbook
