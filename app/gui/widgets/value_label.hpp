// A number as it appears everywhere: rounded to its uncertainty, explained on hover, its source one click away.
#pragma once

#include "gui/widgets/ui.hpp"

namespace pourbook {

struct ValueStyle {
    bool unit = true;
    bool plus_minus = false;
    bool right = false; // right-aligned in its cell
    bool opens = true;  // a click opens the evidence; off where a click picks the row
};

/// A remembered value is set in dim italics with a hollow mark; a missing one reads "no value" and says why on hover.
void value_label(Ui& ui, const std::string& id, const Metal& metal, const Property& property,
                 const Result<Evaluated>& value, ValueStyle style);

/// A source, by author and year, as a small button: hover gives the full reference, a click opens it in Sources.
void source_chip(Ui& ui, const std::string& id, const std::string& key);
/// How much room one takes.
float chip_width(const Ui& ui, const std::string& key);
/// Several, in lines as wide as the window.
void source_chips(Ui& ui, const std::string& id, const std::vector<std::string>& keys);

} // namespace pourbook
