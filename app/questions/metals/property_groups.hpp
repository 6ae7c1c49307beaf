// Properties by what the maker wants of a metal, in the order in which a table of them is read.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PropertyGroup {
    std::string name; // "brakes a magnet"
    std::vector<const Property*> properties;
};

/// Every property of the catalogue once; those of no group last, under "the rest".
std::vector<PropertyGroup> property_groups(const Catalogue& catalogue);

} // namespace pourbook
