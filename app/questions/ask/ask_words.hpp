// The words under which people ask for a property or a goal.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>

namespace pourbook {

/// Id of the property a question speaks of, in small letters and with single blanks; empty where it names none.
/// `element`: a pure metal, which has one melting point instead of solidus and liquidus.
std::string property_asked(const Catalogue& catalogue, const std::string& question, bool element);

/// Whether the least of a property is asked for: lowest, lightest, cheapest.
bool asks_for_least(const std::string& question);

/// Id of the named goal; empty where it speaks of none.
std::string goal_asked(const Catalogue& catalogue, const std::string& question);

/// Whether the words stand in the text as whole words.
bool speaks_of(const std::string& text, const std::string& words);

} // namespace pourbook
