#include "questions/metals/sheet.hpp"

#include "questions/metals/find_metal.hpp"

#include <set>

namespace pourbook {

Result<SheetResult> sheet(const Catalogue& catalogue, const SheetRequest& request) {
    const Result<const Metal*> metal = find_metal(catalogue, request.metal);
    if (!metal) return metal.problem();
    SheetResult result;
    result.metal = *metal;
    result.conditions = request.conditions;
    result.cautions = catalogue.cautions_for(**metal);
    std::set<std::string> keys;
    for (const Property& p : catalogue.properties) {
        result.rows.push_back({&p, evaluate(catalogue, **metal, p.id, request.conditions)});
        if (const auto& value = result.rows.back().value)
            for (const SourceValue& s : value->sources) keys.insert(s.key);
    }
    for (const Record& r : (*metal)->records) keys.insert(r.citation.source);
    for (const Caution* c : result.cautions) keys.insert(c->citation.source);
    keys.insert((*metal)->composition_citation.source);
    for (const std::string& key : keys)
        if (const Reference* reference = catalogue.reference(key)) result.references.push_back(reference);
    return result;
}

} // namespace pourbook
