// Composition of an alloy by mass and by atoms.
// Atomic per cent: n_i = w_i / M_i, x_i = n_i / sum n (M: standard atomic weights, db/atomic_masses.json).
// Fineness is parts of fine metal per thousand by mass, karat parts of 24.
#pragma once

#include "core/materials/alloy_data.hpp"
#include "core/result.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct Share {
    std::string element;
    double wt_percent = 0;
    double at_percent = 0;
};

class Composition {
public:
    const std::vector<Share>& shares() const { return shares_; } // largest mass first
    double wt(const std::string& element) const;                 // per cent; 0 if absent
    double at(const std::string& element) const;
    /// The element with the most atoms: the host of a solid solution.
    const std::string& host() const { return host_; }
    double fineness(const std::string& element) const { return 10 * wt(element); }
    double karat() const { return 0.24 * wt("Au"); }

private:
    friend Result<Composition> composition_of(const AlloyData&, std::vector<Share>, bool);
    std::vector<Share> shares_;
    std::string host_;
};

/// From per cent by mass (or by atoms). The sum must lie between 99.9 and 100.1 and is scaled to 100; one element alone
/// without a figure (0) is 100 %. Errors: unknown element, negative figure, a sum outside those limits.
Result<Composition> composition_of(const AlloyData& data, std::vector<Share> shares, bool atomic = false);

/// The composition with small contents added, in per cent by mass of the whole; the rest keeps its proportions.
/// Errors: as above; additions that leave nothing of the rest.
Result<Composition> with_additions(const AlloyData& data, const Composition& base, const std::vector<Share>& additions);

} // namespace pourbook
