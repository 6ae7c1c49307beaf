// The readers of foreign text under the fuzz run, each with good inputs to start from. Whether an input is accepted is
// the unit tests' business; here a reader must only come back.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace pourbook::fuzz {

struct Reader {
    const char* name;
    std::function<void(const std::string&)> read;
    std::vector<std::string> good;
    bool patches = false; // the input is changes to a workshop's file, four bytes each: slow, a hundredth of the rounds
};

std::vector<Reader> readers();

} // namespace pourbook::fuzz
