// The options of a magnet and a tube, shared by drop, drag, infer, sweep and the goals with a fall.
#pragma once

#include "questions/rank/goal_plan.hpp"

#include <CLI/CLI.hpp>

#include <string>

namespace pourbook {

/// Without a tube.
void with_magnet(CLI::App* command, SetupWords& words, bool required = true);
/// `required`: no answer without --magnet and --tube.
void with_setup(CLI::App* command, SetupWords& words, bool required = true);
/// --holding with --mass and --budget, and the set-up of a goal with a fall.
void with_holding(CLI::App* command, GoalWords& goal);
void with_tube_metal(CLI::App* command, std::string& metal, std::string& resistivity);

} // namespace pourbook
