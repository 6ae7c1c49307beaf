#include "questions/metals/value.hpp"

#include "questions/metals/find_metal.hpp"

namespace pourbook {

Result<ValueResult> value(const Catalogue& catalogue, const ValueRequest& request) {
    const Result<const Metal*> metal = find_metal(catalogue, request.metal);
    if (!metal) return metal.problem();
    const Result<const Property*> property = find_property(catalogue, request.property);
    if (!property) return property.problem();
    Result<Evaluated> e = evaluate(catalogue, **metal, request.property, request.conditions);
    if (!e) return e.problem();
    return ValueResult{*metal, *property, std::move(*e), request.conditions};
}

} // namespace pourbook
