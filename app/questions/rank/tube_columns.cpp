#include "questions/rank/tube_columns.hpp"

#include "questions/drop/eddy_words.hpp"
#include "questions/say/shown_money.hpp"

namespace pourbook {

std::vector<TubeColumn> tube_columns(const Catalogue& catalogue, UnitSystem units) {
    const NamedUnit length = length_unit(units), mass = mass_unit(units);
    const ShownCurrency money = shown_currency(catalogue, units);
    return {{"wall", "wall, " + length.name, Holding::size, &RankedTube::wall_m, length.si},
            {"mass", "tube, " + mass.name, Holding::mass, &RankedTube::mass_kg, mass.si},
            {"cost", money.name, Holding::budget, &RankedTube::cost_usd, money.usd}};
}

} // namespace pourbook
