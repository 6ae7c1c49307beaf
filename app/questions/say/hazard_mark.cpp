#include "questions/say/hazard_mark.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double of_the_base = 50; // per cent: what every melt of copper, aluminium or iron asks for is on its sheet

} // namespace

std::vector<std::string> hazard_elements(const Catalogue& catalogue, const Metal& metal) {
    std::vector<std::string> elements;
    for (const Caution* c : catalogue.cautions_for(metal))
        if ((c->excludes_home_casting || c->from_wt_percent < of_the_base) &&
            std::find(elements.begin(), elements.end(), c->element) == elements.end())
            elements.push_back(c->element);
    return elements;
}

std::string hazard_mark(const Catalogue& catalogue, const Metal& metal) {
    const std::vector<std::string> elements = hazard_elements(catalogue, metal);
    return elements.empty() ? "" : "hazard: " + joined(elements);
}

} // namespace pourbook
