// The data folder, read, checked and converted to SI.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Compiled {
    Catalogue catalogue;
    std::vector<std::string> faults; // "file:line: field: problem"; empty in sound data
};

/// Reads properties, references, cautions, prices, goals and every metal below `folder` (db/).
Compiled compile_folder(const std::string& folder);

/// sources.md: each source once, what was taken from it, how it was read.
std::string sources_page(const Catalogue& catalogue);

/// The coverage table that db/README.md shows.
std::string coverage_page(const Catalogue& catalogue);

} // namespace pourbook
