// What was seen on a casting, what it was, and what to change next time: foundry practice (db/casting), common practice
// of the trade unless its source says otherwise.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Defect {
    std::string name;   // gas, shrinkage, cold run, moisture, oxygen
    std::string seen;   // "Round smooth holes, everywhere"
    std::string change; // "Drier charge and mould, faster melt ..."
    const Practice* entry = nullptr;
};

/// Those in whose name or look every word occurs; all without words. Errors: unknown, naming what can be asked.
Result<std::vector<Defect>> defects(const Catalogue& catalogue, const std::string& words);

} // namespace pourbook
