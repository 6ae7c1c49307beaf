#include "answers/pour/defect_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"

namespace pourbook {

std::string text_of(const std::vector<Defect>& defects) {
    std::string out;
    for (const Defect& d : defects) {
        out += wrapped(d.seen + ": " + d.name, 100, "  ");
        out += wrapped("  change: " + d.change + " [" + d.entry->citation.source + "]", 100, "    ");
    }
    return out;
}

std::string json_of(const std::vector<Defect>& defects) {
    Json out = Json::array();
    for (const Defect& d : defects)
        out.push_back({{"name", d.name},
                       {"seen", d.seen},
                       {"change", d.change},
                       {"source", d.entry->citation.source},
                       {"how_known", name_of(d.entry->citation.how_known)}});
    return json_text(out);
}

} // namespace pourbook
