// The reference with the workshop's own metals, values, prices and goals in it, made once, so that every question after
// it is answered as before and names the user's own figures as such.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"
#include "core/workshop/data.hpp"
#include "core/workshop/workshop.hpp"

namespace pourbook {

/// Everything that shapes an answer; own metals and their values only where they are needed, for there may be very
/// many. A kind that can't be read (a damaged row) is left out and told in `fault` and `left_out`.
enum class OwnMetalsToo { yes, no };
WorkshopData read_workshop(Workshop& workshop, OwnMetalsToo own_metals = OwnMetalsToo::yes);

/// What the person's trials say of castings takes a computation for each: left out where no casting is asked for.
enum class OwnCastingsToo { yes, no };

struct WithWorkshop {
    Catalogue catalogue;
    std::vector<std::string> remarks; // "left out: own price of copper: no rate ...", each whole
};

/// Own prices come before the reference's sets; a price in another currency needs a rate of exchange, else it is left
/// out and said.
WithWorkshop with_workshop(Catalogue reference, const WorkshopData& data,
                           OwnCastingsToo own_castings = OwnCastingsToo::yes);

/// The metals on the shelf, in the order of the lots, each once.
std::vector<std::string> metals_on_the_shelf(const WorkshopData& data);

/// The catalogue with the prices paid for the lots (of several lots of a metal, the mean by mass) before all others.
Catalogue with_lot_prices(Catalogue catalogue, const WorkshopData& data);

} // namespace pourbook
