#include "questions/drop/cold_cautions.hpp"

namespace pourbook {

std::vector<const MagnetFigure*> cold_cautions(const Catalogue& catalogue) {
    std::vector<const MagnetFigure*> out;
    for (const MagnetFigure& f : catalogue.magnet_figures)
        if (f.quantity == "caution" && f.subject == "cold baths") out.push_back(&f);
    return out;
}

} // namespace pourbook
