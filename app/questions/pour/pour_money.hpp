// What the metal of a plan costs, with its interval and the oldest price that entered.
#pragma once

#include "questions/pour/pour.hpp"

namespace pourbook {

/// By what the person paid for lots of the metal, the mean by mass, else by the price of the metal.
PourMoney pour_money(const Catalogue& catalogue, const Metal& metal, const PourRequest& request,
                     const casting::Charge& charge);

} // namespace pourbook
