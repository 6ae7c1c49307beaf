// What was taken from each source: the way back from a reference to its figures.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <unordered_map>
#include <vector>

namespace pourbook {

struct Taken {
    std::string slug;    // of the metal; empty for a caution
    std::string metal;   // its name, or the element of a caution
    std::string what;    // property label, "composition", "price" or "caution"
    std::string printed; // the figure as printed, with its unit
    std::string locator;
    std::string through;
    HowKnown how_known = HowKnown::read;
    Use use = Use::alternate;
};

class SourceIndex {
public:
    explicit SourceIndex(const Catalogue& catalogue);
    const std::vector<Taken>& taken_from(const std::string& key) const;

private:
    void add_practice(const Catalogue& catalogue); // what belongs to no single metal: practice, magnets, diagrams ...

    std::unordered_map<std::string, std::vector<Taken>> taken_;
};

} // namespace pourbook
