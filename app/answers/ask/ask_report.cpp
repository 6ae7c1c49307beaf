#include "answers/ask/ask_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

std::string value_sentence(const std::vector<ValueResult>& values, UnitSystem units) {
    std::string out;
    const Metal* metal = nullptr;
    for (const ValueResult& v : values) {
        out += (out.empty() ? "" : "; ") + (v.metal == metal ? "" : v.metal->name + ": ") + v.property->label + " " +
               shown_full(*v.property, v.value, units);
        metal = v.metal;
    }
    return out.empty() ? out : out + ".";
}

std::string rank_sentence(const RankResult& r) {
    if (r.ranked.empty()) return "No metal can be ranked.";
    std::string out = "First is " + r.ranked.front().metal->name;
    const double p = r.ranked.front().place.p_first;
    if (std::isfinite(p)) out += " (first in " + significant(100 * p, 2) + " % of the draws)";
    for (std::size_t i = 1; i < r.ranked.size(); ++i) out += (i == 1 ? ", then " : ", ") + r.ranked[i].metal->name;
    return out + ".";
}

std::string drop_sentence(const DropResult& r) {
    return "The magnet falls " + significant(r.fall.time_s, 3) + " s through " +
           (r.tube.metal ? r.tube.metal->name : "the stated conductivity") +
           " (90 %: " + significant(r.fall_time_low90_s, 3) + " to " + significant(r.fall_time_high90_s, 3) +
           " s; without a tube " + significant(r.free_fall_time_s, 3) + " s).";
}

std::string defect_sentence(const std::vector<Defect>& defects) {
    std::string out;
    for (const Defect& d : defects) out += (out.empty() ? "" : " ") + d.name + ": " + d.seen + ". " + d.change;
    return out;
}

} // namespace

std::string sentence_of(const AskResult& r, UnitSystem units) {
    if (r.versus) return r.versus->sentence;
    if (r.rank) return rank_sentence(*r.rank);
    if (r.drop) return drop_sentence(*r.drop);
    if (!r.defects.empty()) return defect_sentence(r.defects);
    return value_sentence(r.values, units);
}

std::string text_of(const AskResult& r, UnitSystem units) {
    std::string out;
    const std::string sentence = sentence_of(r, units);
    if (!sentence.empty()) out += wrapped(sentence, page_width, "");
    if (!r.fault.empty()) out += wrapped((sentence.empty() ? "No answer: " : "Also: ") + r.fault, page_width, "");
    for (const std::string& caution : r.cautions) out += wrapped("Caution: " + caution, page_width, "    ");
    out += wrapped("Understood: " + joined(r.read.taken, "; "), page_width, "    ");
    return out + "The whole: " + command_line(r.read) + "\n";
}

std::string json_of(const AskResult& r) {
    return json_text({{"understood", r.read.taken},
                      {"missing", r.read.missing},
                      {"answer", sentence_of(r, UnitSystem::shown)},
                      {"fault", r.fault.empty() ? Json(nullptr) : Json(r.fault)},
                      {"cautions", r.cautions},
                      {"command", r.read.command()},
                      {"command_line", command_line(r.read)}});
}

} // namespace pourbook
