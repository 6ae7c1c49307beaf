// The figures that stand alone, flat in memory, by metal and property: what very many metals are ranked by.
// A metal's figures lie side by side and hold numbers only, so that a ranking reads no record, no text and no map.
#pragma once

#include "core/materials/record.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace pourbook {

class Catalogue;

/// What the only record that speaks of a property says of the solid metal at its own temperature and in the metal's
/// reference condition, or what is paid for it.
struct FlatFigure {
    double value_si = no_number;
    double relative = 0;              // standard uncertainty
    double temperature_K = no_number; // NaN: holds at any
    std::uint16_t property = 0;       // place in the dictionary
    bool stale = false;               // a price past its period
    HowKnown how_known = HowKnown::read;
};

class FlatFigures {
public:
    /// Null: the property of the metal has no such figure. Both are places in the catalogue.
    const FlatFigure* find(std::size_t metal, std::size_t property) const {
        for (std::uint32_t i = first_[metal]; i < first_[metal + 1]; ++i)
            if (figures_[i].property == property) return &figures_[i];
        return nullptr;
    }
    void add(const FlatFigure& figure) { figures_.push_back(figure); }
    /// What was added since the last call is the next metal's.
    void end_metal() { first_.push_back(static_cast<std::uint32_t>(figures_.size())); }

private:
    std::vector<std::uint32_t> first_{0}; // of each metal, and the end
    std::vector<FlatFigure> figures_;
};

/// Of every metal. Worked out in core/evaluate, which knows what a record says.
FlatFigures flat_figures(const Catalogue& catalogue);

} // namespace pourbook
