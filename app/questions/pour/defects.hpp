// What was seen on a casting: what it was, how to tell it from its like, what to change next time, and what this part
// and plan have to say on it. Entries: foundry practice (db/casting/defects.json), look and cause from published
// glossaries where their source says so, the changes common practice.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"
#include "questions/pour/pour.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Defect {
    std::string name; // hot tear
    std::string kind; // gas, shrinkage, filling, crack, mould, melt, size
    std::string seen; // "A ragged crack at a corner ..."
    std::string cause;
    std::string tell;   // from its like
    std::string change; // next time
    std::string words;  // that people use for it
    const Practice* entry = nullptr;
};

Defect defect_from(const Practice& entry);

/// The entries that the words describe, best first: those that hold every word, else the most of them; all without
/// words. Small words (in, my, the) and plurals do not count. Errors: unknown, naming what can be asked.
Result<std::vector<Defect>> defects(const Catalogue& catalogue, const std::string& words);

/// What a plan has computed that bears on a kind of defect, in sentences; may be empty.
std::vector<std::string> bearing_on(const std::string& kind, const PourResult& plan);

} // namespace pourbook
