#include "answers/rank/versus_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"

namespace pourbook {
namespace {

Json side(const VersusSide& s, const Catalogue& catalogue) {
    Json out = {{"metal", s.metal->slug},
                {"merit", json_number(s.merit)},
                {"worst_at_K", json_number(s.at_K)},
                {"from_memory", s.from_memory},
                {"inputs", json_inputs(s.inputs, catalogue)}};
    if (!s.barred.empty()) out["caution"] = s.barred;
    return out;
}

} // namespace

std::string json_of(const VersusResult& r, const Catalogue& catalogue) {
    return json_text({{"winner", r.tie ? Json(nullptr) : Json(r.better.metal->slug)},
                      {"ratio_median", r.ratio_median},
                      {"ratio_low90", r.ratio_low90},
                      {"ratio_high90", r.ratio_high90},
                      {"p_winner", r.p_winner},
                      {"deciding", r.deciding},
                      {"reason", r.reason},
                      {"sentence", r.sentence},
                      {"goal", r.goal.empty() ? Json(nullptr) : Json(r.goal)},
                      {"formula", r.formula},
                      {"unit", r.unit},
                      {"temperature_K", r.conditions.temperature_K},
                      {"temperature_to_K", json_number(r.to_K)},
                      {"condition", r.conditions.condition},
                      {"better", side(r.better, catalogue)},
                      {"worse", side(r.worse, catalogue)},
                      {"sources", r.sources},
                      {"data_version", catalogue.data_version}});
}

std::string text_of(const VersusResult& r, const Catalogue& catalogue) {
    std::string out = wrapped(r.sentence, page_width, "");
    for (const VersusSide* s : {&r.better, &r.worse})
        if (!s->barred.empty()) out += wrapped(s->metal->name + ": " + s->barred, page_width, "  ");
    for (const std::string& key : r.sources)
        if (const Reference* reference = catalogue.reference(key))
            out += wrapped("  [" + key + "] " + reference->full(), page_width, "      ");
    return out + "Data version " + catalogue.data_version + "\n";
}

} // namespace pourbook
