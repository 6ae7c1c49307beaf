#include "answers/rank/tradeoff_report.hpp"

#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

Json merit(const Place& p) {
    return {{"median", json_number(p.median)}, {"low90", json_number(p.low90)}, {"high90", json_number(p.high90)}};
}

Json goal(const std::string& label, const std::string& formula, const std::string& unit, bool high) {
    return {{"label", label}, {"formula", formula}, {"unit", unit}, {"best", high ? "high" : "low"}};
}

} // namespace

std::string json_of(const TradeoffResult& r, const Catalogue& catalogue) {
    Json out = {{"first", goal(r.first_label, r.first_formula, r.first_unit, r.first_high)},
                {"second", goal(r.second_label, r.second_formula, r.second_unit, r.second_high)},
                {"temperature_K", r.conditions.temperature_K},
                {"temperature_to_K", json_number(r.to_K)},
                {"condition", r.conditions.condition},
                {"results", Json::array()}};
    for (const TradeoffPoint& p : r.points)
        out["results"].push_back({{"metal", p.metal->slug},
                                  {"on_front", p.on_front},
                                  {"beaten_by", p.beaten_by.empty() ? Json(nullptr) : Json(p.beaten_by)},
                                  {"first", merit(p.first)},
                                  {"second", merit(p.second)},
                                  {"from_memory", p.from_memory}});
    for (const auto& [key, list] : {std::pair{"excluded", &r.excluded}, std::pair{"unrankable", &r.unrankable}}) {
        out[key] = Json::array();
        for (const LeftOut& l : *list) out[key].push_back({{"metal", l.metal->slug}, {"reason", l.reason}});
    }
    out["data_version"] = catalogue.data_version;
    return json_text(out);
}

std::string text_of(const TradeoffResult& r, const Catalogue& catalogue) {
    const auto named = [](const std::string& label, const std::string& formula) {
        return label.empty() ? formula : label;
    };
    std::string out =
        wrapped("No metal beats those on the front in both " + named(r.first_label, r.first_formula) + " and " +
                    named(r.second_label, r.second_formula) + ", " + conditions_text(r.conditions, r.to_K) + ".",
                page_width, "") +
        "\n";
    Table t{{{"metal"},
             {named(r.first_label, r.first_formula), true},
             {"90 %", true},
             {named(r.second_label, r.second_formula), true},
             {"90 %", true},
             {"front"},
             {"mark"}},
            {}};
    const auto interval = [](const Place& p) { return significant(p.low90, 3) + " to " + significant(p.high90, 3); };
    for (const TradeoffPoint& p : r.points)
        t.rows.push_back({p.metal->slug, significant(p.first.median, 3), interval(p.first),
                          significant(p.second.median, 3), interval(p.second),
                          p.on_front ? "on the front" : "beaten by " + p.beaten_by, p.from_memory ? "remembered" : ""});
    return out + as_text(t) + "\n" + std::to_string(r.excluded.size()) + " left out, " +
           std::to_string(r.unrankable.size()) + " can't be ranked (reasons: --json). Data version " +
           catalogue.data_version + "\n";
}

} // namespace pourbook
