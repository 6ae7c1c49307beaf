// The tests are written for Catch2 2.13; where the machine has version 3, this header stands in its old place.
#pragma once

#include <catch2/catch_all.hpp>

using Catch::Approx;

namespace Catch::Matchers {
inline auto Contains(const std::string& words) {
    return ContainsSubstring(words);
}
inline auto Contains(std::string& words) {
    return ContainsSubstring(words);
}
inline auto Contains(std::string&& words) {
    return ContainsSubstring(words);
}
inline auto Contains(const char* words) {
    return ContainsSubstring(words);
}
} // namespace Catch::Matchers
