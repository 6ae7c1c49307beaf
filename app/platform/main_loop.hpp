// Who calls whom: a program of its own draws frame after frame until it ends; a page is called by its browser and must
// return each time, so that what the frames need lies on the heap and not on a stack.
#pragma once

#include <functional>

namespace pourbook::platform {

/// Calls `frame` again and again until it answers false, then `after`, whose answer is the exit code. A page returns at
/// once with 0 and is called by its browser from then on.
int repeat(std::function<bool()> frame, std::function<int()> after);

} // namespace pourbook::platform
