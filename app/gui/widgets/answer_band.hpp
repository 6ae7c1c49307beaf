// The answer of a view in one large sentence, how sure it is, and the ways to take it along.
#pragma once

#include "core/quantity/format.hpp"
#include "gui/widgets/ui.hpp"

#include <string>

namespace pourbook {

struct Answer {
    std::string sentence;    // whole; the band shows the first sentence of it
    double sure = no_number; // chance that what it says first is so; NaN: none is known
    std::string state = {};  // whose figures: "casting", "handbook metal"; empty where that is no question
};

/// Up to the end of the first sentence.
std::string first_sentence(const std::string& words);

void answer_band(Ui& ui, const Answer& answer);

} // namespace pourbook
