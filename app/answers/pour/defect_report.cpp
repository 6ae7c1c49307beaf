#include "answers/pour/defect_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "questions/say/in_units_of.hpp"

namespace pourbook {

std::string text_of(const std::vector<Defect>& defects, UnitSystem units, const PourResult* plan) {
    std::string out;
    for (const Defect& d : defects) {
        out += wrapped(d.name + ": " + d.seen, 100, "  ");
        out += wrapped("  cause: " + d.cause, 100, "    ");
        out += wrapped("  tell it by: " + d.tell, 100, "    ");
        out += wrapped("  change: " + in_units_of(units, d.change) + " [" + d.entry->citation.source + ", " +
                           how_known_text(d.entry->citation.how_known) + "]",
                       100, "    ");
        if (plan)
            for (const std::string& line : bearing_on(d.kind, *plan))
                out += wrapped("  this part: " + in_units_of(units, line), 100, "    ");
    }
    return out;
}

std::string json_of(const std::vector<Defect>& defects, const PourResult* plan) {
    Json out = Json::array();
    for (const Defect& d : defects) {
        Json one = {{"name", d.name},
                    {"kind", d.kind},
                    {"seen", d.seen},
                    {"cause", d.cause},
                    {"tell", d.tell},
                    {"change", d.change},
                    {"source", d.entry->citation.source},
                    {"locator", d.entry->citation.locator},
                    {"how_known", name_of(d.entry->citation.how_known)}};
        if (plan) one["this_part"] = bearing_on(d.kind, *plan);
        out.push_back(std::move(one));
    }
    return json_text(out);
}

} // namespace pourbook
