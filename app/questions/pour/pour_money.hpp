// What the metal of a plan costs, with its interval and the oldest price that entered.
#pragma once

#include "questions/pour/pour.hpp"

namespace pourbook {

PourMoney pour_money(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions,
                     const casting::Charge& charge);

} // namespace pourbook
