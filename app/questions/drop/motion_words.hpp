// Where the timing of a fall begins and ends, as a person writes it.
#pragma once

#include "questions/drop/magnet_words.hpp"

namespace pourbook {

/// --release centre | face | a height of the magnet's centre above the mouth; --stop centre | out | the height of the
/// tube's lower end above the floor. Errors: unreadable; refused where the timing would end before it begins.
Result<DropSetup> with_timing(DropSetup setup, const SetupWords& words);

} // namespace pourbook
