// What was taken from each source: the way back from a reference to its figures.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <unordered_map>
#include <vector>

namespace pourbook {

struct Taken {
    std::string slug;    // of the metal; empty for a caution
    std::string metal;   // its name, or the element of a caution
    std::string what;    // property label, "composition", "price" or "caution"
    std::string printed; // the figure as printed, with its unit
    std::string locator = {};
    std::string through = {};
    HowKnown how_known = HowKnown::read;
    Use use = Use::alternate;
};

/// Counts at once; what one source gave is gathered when it is asked for, and kept until another is.
class SourceIndex {
public:
    /// The catalogue must outlive this.
    explicit SourceIndex(const Catalogue& catalogue);
    std::size_t count(const std::string& key) const;
    const std::vector<Taken>& taken_from(const std::string& key); // valid until the next call

private:
    const Catalogue& catalogue_;
    std::unordered_map<std::string, std::size_t> count_; // by key of the source
    std::string key_;
    std::vector<Taken> taken_;
};

} // namespace pourbook
