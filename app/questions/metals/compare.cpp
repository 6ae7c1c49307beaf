#include "questions/metals/compare.hpp"

#include "questions/metals/find_metal.hpp"

#include <algorithm>

namespace pourbook {
namespace {

Result<std::vector<const Metal*>> metals_of(const Catalogue& catalogue, const std::vector<std::string>& words) {
    std::vector<const Metal*> out;
    if (words.empty())
        for (const Metal& m : catalogue.metals) out.push_back(&m);
    for (const std::string& word : words) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        if (std::find(out.begin(), out.end(), *metal) == out.end()) out.push_back(*metal);
    }
    return out;
}

} // namespace

Result<CompareResult> compare(const Catalogue& catalogue, const CompareRequest& request) {
    CompareResult result;
    result.conditions = request.conditions;
    for (const std::string& id : request.properties) {
        const Result<const Property*> property = find_property(catalogue, id);
        if (!property) return property.problem();
        result.properties.push_back(*property);
    }
    const Result<std::vector<const Metal*>> metals = metals_of(catalogue, request.metals);
    if (!metals) return metals.problem();
    for (const Metal* metal : *metals) {
        result.rows.push_back({metal, {}});
        for (const Property* p : result.properties)
            result.rows.back().cells.push_back(evaluate(catalogue, *metal, p->id, request.conditions));
    }
    return result;
}

} // namespace pourbook
