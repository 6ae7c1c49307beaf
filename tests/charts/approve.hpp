// A text against its approved copy in tests/charts/approved. POURBOOK_APPROVE=1 in the environment approves what is
// there.
#pragma once

#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

namespace pourbook::testing {

inline void approve(const std::string& name, const std::string& text) {
    const std::string file = std::string(POURBOOK_DB) + "/../tests/charts/approved/" + name + ".txt";
    if (std::getenv("POURBOOK_APPROVE")) std::ofstream(file) << text;
    std::ostringstream approved;
    approved << std::ifstream(file).rdbuf();
    INFO("to approve after looking: POURBOOK_APPROVE=1, then read the difference of " << file);
    CHECK(text == approved.str());
}

} // namespace pourbook::testing
