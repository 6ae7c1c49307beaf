// The figures of one drop as a person reads them, each with what it means and what it rests on.
#pragma once

#include "questions/drop/against.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct DropFigure {
    std::string id, label, value;
    std::string detail;  // its 90 % interval, or what belongs beside it; may be empty
    std::string meaning; // one or two sentences
};

std::vector<DropFigure> drop_figures(const Catalogue& catalogue, const DropResult& result, UnitSystem units);

/// Figures, sources and assumptions that every figure of the drop rests on, a line each.
std::vector<std::string> drop_grounds(const DropResult& result);

/// Keys of the sources of magnet and metal, each once, the metal's first.
std::vector<std::string> drop_sources(const DropResult& result);

} // namespace pourbook
