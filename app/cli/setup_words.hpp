// The options of a magnet and a tube, shared by drop, drag, infer and sweep.
#pragma once

#include "usecases/magnet_words.hpp"

#include <CLI/CLI.hpp>

#include <string>

namespace pourbook {

void with_setup(CLI::App* command, SetupWords& words);
void with_tube_metal(CLI::App* command, std::string& metal, std::string& resistivity);

} // namespace pourbook
