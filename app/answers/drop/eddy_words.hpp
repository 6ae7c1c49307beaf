// What the texts about magnets and tubes share.
#pragma once

#include "questions/drop/eddy_words.hpp"

#include <ostream>
#include <string>

namespace pourbook {

/// Assumptions, sources with full references, cautions for strong magnets.
void write_grounds(std::ostream& out, const DropSetup& setup, const TubeMetal* tube, const Catalogue& catalogue);

} // namespace pourbook
