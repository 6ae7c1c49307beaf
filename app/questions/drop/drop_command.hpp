// A set-up as the command that asks for it.
#pragma once

#include "questions/drop/magnet_words.hpp"

#include <string>

namespace pourbook {

/// "pourbook drop --magnet ... --tube ... --metal ...", with what is not usual of the conditions.
std::string drop_command(const SetupWords& words, const Metal& metal, const Conditions& conditions);

} // namespace pourbook
