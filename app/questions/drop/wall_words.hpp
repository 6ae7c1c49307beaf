// Tubes of several parts, and slits that are more than a narrow cut, as a person writes them.
//
//   liner       13mm:14mm (inside and outside diameter) or 0.5mm (its wall, close in the bore, in a tapered one too)
//   sleeve      the same outside
//   below       13mm:15mm:0.5m, a tube joined to the lower end
//   lower end   12mm:15mm, where the tube is tapered
//   metals      of each a metal of the reference, a mix, or a resistivity; what is not stated is the tube's own
//   slits       width 0.5mm; length 200mm from the mouth; seam 15uohm.cm (what fills the slit) or 0.2uohm@100mm
//               (measured across that length of it)
//
// Sizes without a tolerance: +-0.05 mm (magnet_words.hpp). A joint between two tubes is taken as no gap; liner and
// sleeve as long as the tube itself.
#pragma once

#include "questions/drop/magnet_words.hpp"
#include "questions/drop/tube_metal.hpp"

namespace pourbook {

struct WallWords {
    std::string liner, liner_metal, sleeve, sleeve_metal, below, below_metal, lower_end;
    std::string slit_width, slit_length, seam;
    bool operator==(const WallWords&) const = default;
};

/// What is put to the tube itself.
struct WallPiece {
    std::string what; // liner | sleeve | tube below
    eddy::WallOutline outline;
    eddy::Uncertain wall_m;
    TubeMetal metal;
};

/// The set-up with these parts in its wall, which are added to `pieces`; to be checked afterwards. Errors: unreadable;
/// refused (parts that do not fit into each other); those of tube_metal.
Result<DropSetup> with_wall(DropSetup setup, const WallWords& words, const TubeMetal& tube, const Catalogue& catalogue,
                            const Conditions& conditions, std::vector<WallPiece>& pieces);

/// What the tube itself and its parts conduct, as that of the tube itself where the parts keep their stated ratio to
/// it: exact for a slow fall. `weights` as WallProfile has them.
std::vector<double> conductivities_together(const TubeMetal& tube, const std::vector<WallPiece>& pieces,
                                            const std::vector<double>& weights, Draws& draws);

} // namespace pourbook
