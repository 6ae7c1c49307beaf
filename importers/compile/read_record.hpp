// One record of a metal's file.
#pragma once

#include "importers/compile/fields.hpp"

#include "core/materials/catalogue.hpp"

namespace pourbook {

/// Throws InputError: missing citation, unknown property or source, wrong unit, figure outside the plausible range ...
Record read_record(const std::string& file, const std::string& place, const JsonNode& node,
                   const Catalogue& dictionary);

/// source, locator, how_known, through; the source must be in the references.
Citation read_citation(Fields& fields, const Catalogue& dictionary);

} // namespace pourbook
