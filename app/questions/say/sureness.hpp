// How sure a value is, in a word a person understands at once, and the reason for it.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>

namespace pourbook {

struct Sureness {
    std::string word;   // firm | fair | hint
    std::string reason; // "two of three figures come from one maker"
};

/// Firm: sources of different makers were read and differ by less than 5 %. Fair: one source, one maker's, or sources
/// that differ by more. A hint: remembered, carried or estimated by a law, or cited for another condition.
/// The limit is common practice, no source: within it nobody would choose another metal.
Sureness sureness_of(const Catalogue& catalogue, const Evaluated& value);

/// Who made a source: its first author or body.
std::string maker_of(const Reference& reference);

} // namespace pourbook
