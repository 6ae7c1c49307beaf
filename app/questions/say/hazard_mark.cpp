#include "questions/say/hazard_mark.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {

std::vector<std::string> hazard_elements(const Catalogue& catalogue, const Metal& metal) {
    std::vector<std::string> elements;
    for (const Caution* c : catalogue.cautions_for(metal))
        if (std::find(elements.begin(), elements.end(), c->element) == elements.end()) elements.push_back(c->element);
    return elements;
}

std::string hazard_mark(const Catalogue& catalogue, const Metal& metal) {
    const std::vector<std::string> elements = hazard_elements(catalogue, metal);
    return elements.empty() ? "" : "hazard: " + joined(elements);
}

} // namespace pourbook
