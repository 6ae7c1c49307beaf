#include "core/casting/hazards.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook::casting {
namespace {

std::string title_of(const Catalogue& catalogue, const Citation& c) {
    const Reference* r = catalogue.reference(c.source);
    if (!r) return c.source;
    return (r->authors.empty() ? "" : r->authors + ", ") + r->title;
}

Problem barred(const Catalogue& catalogue, const std::string& what, const Citation& c, const std::string& remedy) {
    return {Problem::Kind::refused, what + " [" + title_of(catalogue, c) + "]: " + remedy, 0};
}

std::string holding(const Metal& metal, const std::string& element) {
    if (metal.is_element()) return metal.name;
    return metal.name + " (" + element + " " + trimmed(metal.content_percent(element), 3) + " %)";
}

bool holds(const Metal& metal, const std::string& element, double from_percent) {
    return metal.content_percent(element) > 0 && metal.content_percent(element) >= from_percent;
}

} // namespace

Result<bool> may_be_melted(const Catalogue& catalogue, const Metal& metal, bool acknowledged) {
    for (const Practice& p : catalogue.practices)
        if (p.quantity == "refuse_melting" && holds(metal, p.element, p.from_wt_percent))
            return barred(catalogue, holding(metal, p.element) + " is not to be melted at home: " + p.text, p.citation,
                          "leave it to licensed practice");
    std::vector<std::string> may_acknowledge;
    for (const Practice& p : catalogue.practices) {
        if (p.quantity != "acknowledge" || !holds(metal, p.element, p.from_wt_percent)) continue;
        may_acknowledge.push_back(p.element);
        if (!acknowledged)
            return barred(catalogue, holding(metal, p.element) + ": " + p.text, p.citation,
                          "if you are equipped for it, add --acknowledge-hazard");
    }
    for (const Caution* c : catalogue.cautions_for(metal)) {
        const bool acknowledgeable =
            std::find(may_acknowledge.begin(), may_acknowledge.end(), c->element) != may_acknowledge.end();
        if (c->excludes_home_casting && !acknowledgeable)
            return barred(catalogue, holding(metal, c->element) + " is no metal for home casting: " + c->reason,
                          c->citation, "choose another metal, or licensed practice");
    }
    return true;
}

std::vector<Warning> cautions(const Catalogue& catalogue, const Metal& metal, const std::string& process) {
    std::vector<const Practice*> general;
    for (const Practice& p : catalogue.practices)
        if (p.quantity == "process_caution" && (p.process.empty() || p.process == process)) general.push_back(&p);
    std::stable_sort(general.begin(), general.end(),
                     [](const Practice* a, const Practice* b) { return a->grade < b->grade; });
    std::vector<Warning> out;
    const auto add = [&](const Practice* p) { out.push_back({p->text, p->citation}); };
    const std::size_t before_metal = std::min<std::size_t>(2, general.size()); // moisture and charge
    std::for_each(general.begin(), general.begin() + static_cast<std::ptrdiff_t>(before_metal), add);
    for (const Practice& p : catalogue.practices)
        if (p.quantity == "acknowledge" && holds(metal, p.element, p.from_wt_percent)) add(&p);
    for (const Caution* c : catalogue.cautions_for(metal)) {
        if (c->element == "P" && metal.content_percent("Cu") < 50) continue; // phosphor copper goes into copper only
        out.push_back({c->text, c->citation});
    }
    std::for_each(general.begin() + static_cast<std::ptrdiff_t>(before_metal), general.end(), add);
    return out;
}

} // namespace pourbook::casting
