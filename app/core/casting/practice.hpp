// Looking up foundry practice (db/casting) for a metal and a process.
#pragma once

#include "core/casting/traced.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook::casting {

/// Entries of a quantity that fit: for the metal itself if there are any, else for its family, else for all metals;
/// entries of another process are left out. The process "" asks for entries of no process only.
std::vector<const Practice*> practices(const Catalogue& catalogue, const Metal& metal, const std::string& quantity,
                                       const std::string& process);

/// Those of a material ("graphite"), or of a grade ("heavy").
std::vector<const Practice*> of_material(std::vector<const Practice*> all, const std::string& material);
std::vector<const Practice*> of_grade(std::vector<const Practice*> all, const std::string& grade);

struct Range {
    double low_si = no_number;
    double high_si = no_number;
    std::vector<SourceValue> sources;

    bool empty() const { return sources.empty(); }
    double middle() const { return (low_si + high_si) / 2; }
};

/// From the lowest to the highest figure of the entries.
Range range_of(const std::vector<const Practice*>& entries);

/// The middle of the range with its half-width as limits (standard uncertainty half-width / sqrt 3).
Traced traced(const Range& range, const std::string& how);

SourceValue source_of(const Practice& practice);

} // namespace pourbook::casting
