// What the hover over a number says: how sure, under which condition, from where, who disagrees, and the way from print
// to here.
#pragma once

#include "charts/words.hpp"
#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Explained {
    std::string head;               // the value with its uncertainty, or "no value"
    std::vector<std::string> facts; // uncertainty, temperature, condition, how it is known
    std::vector<std::string> sources;
    std::vector<std::string> trail;
    std::string text() const; // all lines, the head first
};

Explained explain(const Catalogue& catalogue, const Metal& metal, const Property& property,
                  const Result<Evaluated>& value, UnitSystem units);

/// A source in full, with its kind, grade and where it was read.
std::string reference_text(const Reference& reference);
/// "B: handbook or sheet that agrees with a second source".
std::string reliability_text(const std::string& grade);

} // namespace pourbook
