// Increment of a solute read from a published resistivity table of the binary system.
// Range: between the table's points, and from its end to the pure metal where that gap is at most 25 wt%. Up to 10 wt%
// beyond the last point counted from the host: Nordheim's C x (1 - x) through that point.
#pragma once

#include "core/alloys/estimate.hpp"

namespace pourbook {

struct TableIncrement {
    double increment_si = 0;
    const Citation* citation = nullptr;
};

/// Increment over the pure host (of resistivity host_si) at the solute's atomic fraction. None outside the range.
std::optional<TableIncrement> table_increment(const AlloySetting& setting, const std::string& host,
                                              const std::string& solute, double atomic_fraction, double host_si);

} // namespace pourbook
