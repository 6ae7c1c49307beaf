// The answer to a question in the person's own words: what was understood, a sentence, the command for the whole.
#pragma once

#include "questions/ask/ask.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

/// The sentence alone; empty where the command alone answers.
std::string sentence_of(const AskResult& result, UnitSystem units);

std::string text_of(const AskResult& result, UnitSystem units);

std::string json_of(const AskResult& result);

} // namespace pourbook
