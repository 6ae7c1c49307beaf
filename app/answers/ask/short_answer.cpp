#include "answers/ask/short_answer.hpp"

#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/hazard_mark.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string metal_caution(const Catalogue& catalogue, const std::vector<const Metal*>& metals) {
    std::string out;
    for (const Metal* metal : metals)
        if (metal)
            if (const std::string mark = hazard_mark(catalogue, *metal); !mark.empty())
                out += (out.empty() ? "Caution: " : "; ") + metal->slug + ", " + mark + ": `pourbook sheet " +
                       metal->slug + "`";
    return out.empty() ? out : wrapped(out, page_width, "    ");
}

std::string magnet_caution(const Catalogue& catalogue) {
    const std::vector<const MagnetFigure*> all = magnet_cautions(catalogue);
    if (all.empty()) return {};
    const std::string& text = all.front()->text;
    return wrapped("Caution: " + text.substr(0, text.find(". ")), page_width, "    ");
}

std::string tabbed(const std::vector<std::string>& cells) {
    return joined(cells, "\t") + "\n";
}

std::string digits(double x) {
    return std::isfinite(x) ? trimmed(x, 8) : "";
}

} // namespace

std::string sentence_of(const std::vector<ValueResult>& values, UnitSystem units) {
    std::string out;
    const Metal* metal = nullptr;
    for (const ValueResult& v : values) {
        out += (out.empty() ? "" : "; ") + (v.metal == metal ? "" : v.metal->name + ": ") + v.property->label + " " +
               shown_with_level(*v.property, v.value, units);
        metal = v.metal;
    }
    return out.empty() ? out : out + ".";
}

std::string sentence_of(const RankResult& r) {
    if (r.ranked.empty()) return "No metal can be ranked.";
    std::string out = "First is " + r.ranked.front().metal->name;
    const double p = r.ranked.front().place.p_first;
    if (std::isfinite(p)) out += " (" + significant(100 * p, 2) + " % likely)";
    const bool asked_for_few = r.ranked.size() < r.ranked_in_all; // by --top
    const std::size_t told = asked_for_few ? r.ranked.size() : std::min<std::size_t>(r.ranked.size(), 5);
    for (std::size_t i = 1; i < told; ++i) out += (i == 1 ? ", then " : ", ") + r.ranked[i].metal->name;
    return out + (told < r.ranked.size() ? " and " + std::to_string(r.ranked.size() - told) + " more." : ".");
}

std::string sentence_of(const DropResult& r) {
    return "The magnet falls " + significant(r.fall.time_s, 3) + " s through " +
           (r.tube.metal ? r.tube.metal->name : "the stated conductivity") +
           " (90 %: " + significant(r.fall_time_low90_s, 3) + " to " + significant(r.fall_time_high90_s, 3) +
           " s; without a tube " + significant(r.free_fall_time_s, 3) + " s).";
}

std::string short_answer(const ValueResult& r, const Catalogue& catalogue, UnitSystem units) {
    return wrapped(sentence_of(std::vector<ValueResult>{r}, units), page_width, "") +
           metal_caution(catalogue, {r.metal});
}

std::string short_answer(const RankResult& r, const Catalogue& catalogue, UnitSystem) {
    std::vector<const Metal*> first;
    if (!r.ranked.empty()) first.push_back(r.ranked.front().metal);
    return wrapped(sentence_of(r), page_width, "") + metal_caution(catalogue, first);
}

std::string short_answer(const VersusResult& r, const Catalogue& catalogue, UnitSystem) {
    return wrapped(r.sentence, page_width, "") + metal_caution(catalogue, {r.better.metal, r.worse.metal});
}

std::string short_answer(const DropResult& r, const Catalogue& catalogue, UnitSystem) {
    return wrapped(sentence_of(r), page_width, "") + magnet_caution(catalogue) +
           metal_caution(catalogue, {r.tube.metal});
}

std::string plain_answer(const ValueResult& r, UnitSystem units) {
    if (r.property->is_text) return r.value.text + "\n";
    return tabbed({digits(shown_number(*r.property, r.value.value_si, units)),
                   digits(shown_uncertainty(*r.property, r.value.value_si, r.value.standard_uncertainty_si, units)),
                   shown_unit(*r.property, units)});
}

std::string plain_answer(const RankResult& r, UnitSystem) {
    std::string out;
    for (const RankedMetal& m : r.ranked)
        out += tabbed({m.metal->slug, digits(m.place.median), digits(m.place.low90), digits(m.place.high90)});
    return out;
}

std::string plain_answer(const VersusResult& r, UnitSystem) {
    return tabbed({digits(r.ratio_median), digits(r.ratio_low90), digits(r.ratio_high90), digits(r.p_winner),
                   r.better.metal->slug});
}

std::string plain_answer(const DropResult& r, UnitSystem) {
    return tabbed({digits(r.fall.time_s), digits(r.fall_time_low90_s), digits(r.fall_time_high90_s)});
}

} // namespace pourbook
