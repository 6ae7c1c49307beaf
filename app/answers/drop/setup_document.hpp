// What every answer about magnet and tube says of them: the set-up, what was assumed, sources, cautions.
#pragma once

#include "answers/writers/documents.hpp"
#include "questions/drop/eddy_words.hpp"

namespace pourbook {

/// "magnet", "tube" and "metal", as people read them.
void add_setup(Document& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
               UnitSystem units);
/// Magnet, tube, state, assumptions, sources and cautions for programs.
void tell_setup(Document& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
                const Catalogue& catalogue);
/// Every source of magnet and tube, for programs, and in `sources`.
void tell_sources(Document& out, const DropSetup& setup, const TubeMetal& tube, const Catalogue& catalogue);

/// A sentence that was said in SI: for the workshop in its units, else as it stands.
std::string for_reader(UnitSystem units, const std::string& sentence);
/// For people, in their units: a list, such as "Left out".
void add_list(Document& out, const std::string& title, const std::vector<std::string>& lines, UnitSystem units);
/// Assumptions, sources with full references, cautions for strong magnets.
void add_grounds(Document& out, const DropSetup& setup, const TubeMetal* tube, const DocumentSetting& setting);
/// "Data version ...", the last line on a terminal.
void end_with_version(Document& out);

} // namespace pourbook
