#include "answers/drop/eddy_words.hpp"

#include "answers/parts/table.hpp"

#include <set>

namespace pourbook {
namespace {

void write_line(std::ostream& out, const std::string& text) {
    out << wrapped("  " + text, page_width, "      ");
}

} // namespace

void write_grounds(std::ostream& out, const DropSetup& setup, const TubeMetal* tube, const Catalogue& catalogue) {
    std::vector<std::string> notes = setup.assumptions;
    if (tube) {
        notes.insert(notes.end(), tube->notes.begin(), tube->notes.end());
        if (tube->metal) notes.insert(notes.end(), tube->value.trail.begin(), tube->value.trail.end());
    }
    if (!notes.empty()) out << "\nAssumed and taken\n";
    for (const std::string& note : notes) write_line(out, note);
    std::set<std::string> keys;
    out << "\nSources\n";
    for (const CitedFigure& f : setup.sources) {
        const std::string how =
            f.citation.how_known == HowKnown::read ? "" : std::string(", ") + name_of(f.citation.how_known);
        write_line(out, f.what + " [" + f.citation.source + ", " + f.citation.locator + how + "]");
        keys.insert(f.citation.source);
    }
    if (tube && tube->metal)
        for (const SourceValue& s : tube->value.sources)
            if (s.chosen) keys.insert(s.key);
    for (const std::string& key : keys)
        if (const Reference* r = catalogue.reference(key)) write_line(out, "[" + key + "] " + r->full());
    const auto cautions = magnet_cautions(catalogue);
    if (!cautions.empty()) out << "\nStrong magnets\n";
    for (const MagnetFigure* c : cautions) write_line(out, c->text + " [" + c->citation.source + "]");
}

} // namespace pourbook
