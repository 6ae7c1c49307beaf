// Sentences that the command line says too, as the window says them: signs of print, and no options.
#pragma once

#include <string>

namespace pourbook {

/// Without the hint at `--as handbook` (here a switch at the top) and with an option's name as the field's:
/// "--magnet-mass" becomes "magnet mass".
std::string in_window(const std::string& words);

} // namespace pourbook
