// What a pour sheet says on the metal in the mould, line by line: temperatures, freezing, feeding, filling, losses.
#pragma once

#include "answers/pour/sheet_units.hpp"
#include "questions/pour/pour.hpp"

#include <string>
#include <vector>

namespace pourbook {

using Lines = std::vector<std::string>;

Lines temperature_lines(const PourResult& r, const SheetUnits& u);
/// One figure for the heading: "57 s".
std::string freezing_figure(const PourResult& r);
Lines freezing_lines(const PourResult& r, const SheetUnits& u);
std::string feeder_figure(const PourResult& r, const SheetUnits& u);
Lines feeder_lines(const PourResult& r, const SheetUnits& u);
std::string filling_figure(const PourResult& r);
Lines filling_lines(const PourResult& r, const SheetUnits& u);
/// Which end of the span a mould of this process is near.
std::string held_line(const std::string& process);
/// "scale 1.0216"; "by your own castings" where every size is.
std::string pattern_figure(const PourResult& r);
/// What castings of one's own reached; empty where none is taken.
std::string own_lengths_line(const PourResult& r);
/// The yield they had, and the shelf against the charge.
Lines own_charge_lines(const PourResult& r, const SheetUnits& u);
Lines consumable_lines(const PourResult& r, const SheetUnits& u, const std::string& low, const std::string& high);
Lines loss_lines(const PourResult& r, const SheetUnits& u);

} // namespace pourbook
