// One field for every quantity: the number, its unit at the right edge (a click changes it), in grey how the text is
// read, sums worked out; arrow keys, or the wheel while it is edited, nudge the last figure. Only a text that can be
// read is kept, on Return or on leaving the field; the fault is shown by fault_line() below it.
#pragma once

#include "gui/widgets/ui.hpp"

#include <functional>
#include <string>

namespace pourbook {

struct QuantityLook {
    std::string unit; // shown where nothing is stated: "mm"
    std::string hint; // what holds where nothing is stated
    float width = 0;  // of field and unit together, pixels
};

/// `fault` gives why a text (with its unit) can't be kept, empty where it can. Returns true when a new value was kept.
bool quantity_field(Ui& ui, const std::string& id, std::string& kept, const QuantityLook& look,
                    const std::function<std::string(const std::string&)>& fault);

} // namespace pourbook
