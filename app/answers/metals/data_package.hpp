// The whole reference as a Frictionless data package: a descriptor and plain CSV tables (RFC 4180), every figure in SI
// with all its digits beside the figure as printed.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct PackageFile {
    std::string name; // within the folder
    std::string bytes;
};

/// datapackage.json, metals.csv, records.csv (a row a figure), properties.csv, sources.csv, prices.csv. Entries of the
/// user's own are left out.
std::vector<PackageFile> data_package(const Catalogue& catalogue);

} // namespace pourbook
