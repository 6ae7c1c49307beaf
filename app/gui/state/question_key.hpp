// A request as a text that differs where its answer may: the key under which the answer is kept.
#pragma once

#include "questions/rank/rank.hpp"

#include <string>
#include <vector>

namespace pourbook {

std::string key_of(const Conditions& conditions);
std::string key_of_words(const std::vector<std::string>& words);

} // namespace pourbook
