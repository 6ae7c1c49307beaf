// The inference as JSON and as text.
#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <span>
#include <sstream>

namespace pourbook {
namespace {

Json metal_of(const ConsistentMetal& c) {
    Json out = {{"metal", c.metal->slug},
                {"p", json_number(c.p)},
                {"conductivity_S_m", json_number(c.conductivity_S_m)},
                {"relative_uncertainty", json_number(c.relative_uncertainty)}};
    if (c.porosity) out["porosity"] = json_number(*c.porosity);
    return out;
}

Json metals_of(const std::vector<ConsistentMetal>& list) {
    Json out = Json::array();
    for (const ConsistentMetal& c : list) out.push_back(metal_of(c));
    return out;
}

Json estimate_of(const std::optional<eddy::Conductivity>& c) {
    if (!c) return nullptr;
    return {{"conductivity_S_m", json_number(c->value_S_m)},
            {"standard_uncertainty", json_number(c->standard_uncertainty_S_m)},
            {"low90_S_m", json_number(c->low90_S_m)},
            {"high90_S_m", json_number(c->high90_S_m)}};
}

Json impurities_of(const InferResult& r) {
    Json out = Json::array();
    for (const ImpurityEffect& i : r.impurities)
        out.push_back({{"element", i.element},
                       {"content_wt_percent", json_number(i.content_wt)},
                       {"low90_wt_percent", json_number(i.low90_wt)},
                       {"high90_wt_percent", json_number(i.high90_wt)}});
    return out;
}

std::string siemens(double s) {
    return significant(s / 1e6, 4) + " MS/m";
}

std::string interval(const eddy::Conductivity& c) {
    return siemens(c.value_S_m) + "  (90 %: " + significant(c.low90_S_m / 1e6, 4) + " to " +
           significant(c.high90_S_m / 1e6, 4) + ")";
}

void write_metals(std::ostream& out, const std::string& title, const std::vector<ConsistentMetal>& list) {
    Table t{{{"metal"}, {"probability", true}, {"MS/m", true}, {"±", true}}, {}};
    const bool weighed = !list.empty() && list.front().porosity;
    if (weighed) t.columns.push_back({"porosity", true});
    for (const ConsistentMetal& c : list) {
        t.rows.push_back({c.metal->slug, significant(100 * c.p, 2) + " %", significant(c.conductivity_S_m / 1e6, 3),
                          significant(100 * c.relative_uncertainty, 2) + " %"});
        if (weighed) t.rows.back().push_back(c.porosity ? significant(100 * *c.porosity, 2) + " %" : "");
    }
    out << "\n" << title << "\n" << as_text(t);
}

void write_impurities(std::ostream& out, const InferResult& r) {
    if (r.impurities.empty()) {
        out << wrapped(r.impurity_base + " with an impurity: " + r.impurity_note, page_width, "    ");
        return;
    }
    out << "\nOr " << r.impurity_base << " with one dissolved impurity, the usual ones first\n";
    Table t{{{"element"}, {"wt%", true}, {"90 % low", true}, {"90 % high", true}}, {}};
    constexpr std::size_t shown = 5; // the rest stands in the JSON
    for (const ImpurityEffect& i : std::span(r.impurities).first(std::min(shown, r.impurities.size())))
        t.rows.push_back(
            {i.element, significant(i.content_wt, 2), significant(i.low90_wt, 2), significant(i.high90_wt, 2)});
    out << as_text(t);
}

} // namespace

std::string json_of(const InferResult& r, const Catalogue& catalogue) {
    Json out = {{"conductivity_S_m", json_number(r.conductivity.value_S_m)},
                {"standard_uncertainty", json_number(r.conductivity.standard_uncertainty_S_m)},
                {"iacs_percent", json_number(r.iacs_percent)},
                {"consistent_metals", metals_of(r.consistent)},
                {"low90_S_m", json_number(r.conductivity.low90_S_m)},
                {"high90_S_m", json_number(r.conductivity.high90_S_m)},
                {"iacs_percent_low90", json_number(r.iacs_low90)},
                {"iacs_percent_high90", json_number(r.iacs_high90)},
                {"temperature_K", r.conditions.temperature_K},
                {"from_times", estimate_of(r.from_times)},
                {"from_resistance", estimate_of(r.from_resistance)},
                {"agreement_p", json_number(r.agreement)},
                {"tube_density_kg_m3", json_number(r.density_kg_m3)},
                {"nearest_metals", metals_of(r.nearest)},
                {"something_else", json_number(r.something_else)},
                {"conductivity_if_across_S_m", r.across_S_m ? json_number(*r.across_S_m) : Json(nullptr)},
                {"metals_if_across", metals_of(r.consistent_across)},
                {"copper_impurities", r.impurity_base == "Cu" ? impurities_of(r) : Json::array()},
                {"impurity_base", r.impurity_base},
                {"impurities", impurities_of(r)},
                {"copper_impurity_note", r.impurity_note.empty() ? Json(nullptr) : Json(r.impurity_note)},
                {"advice", r.advice},
                {"assumptions", r.setup.assumptions},
                {"data_version", catalogue.data_version}};
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string text_of(const InferResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    if (r.from_times) out << "magnet  " << magnet_text(r.setup, units) << "\n";
    out << "tube    " << tube_text(r.setup.inputs, units) << ", at "
        << temperature_words(r.conditions.temperature_K, units) << "\n\n"
        << "conductivity     " << interval(r.conductivity) << "\n"
        << "                 " << significant(r.iacs_percent, 3) << " %IACS  (90 %: " << significant(r.iacs_low90, 3)
        << " to " << significant(r.iacs_high90, 3) << ")\n";
    if (r.from_times && r.from_resistance)
        out << "from the fall    " << interval(*r.from_times) << "\nfrom resistance  " << interval(*r.from_resistance)
            << "\n"
            << "agreement        " << significant(100 * r.agreement, 2) << " % chance of a difference this large\n";
    if (r.density_kg_m3)
        out << "density          " << significant(*r.density_kg_m3 / 1000, 4) << " g/cm³ by weight and size\n";
    if (!r.consistent.empty()) {
        write_metals(out, "Metals that have it, by probability", r.consistent);
        out << "something else    " << significant(100 * r.something_else, 2)
            << " %; all metals of the reference were taken as equally likely beforehand\n";
    }
    if (!r.nearest.empty()) write_metals(out, "No metal of the reference has it; the nearest", r.nearest);
    write_impurities(out, r);
    for (const std::string& line : r.advice) out << wrapped("Check: " + line, page_width, "    ");
    if (r.from_times)
        write_grounds(out, r.setup, nullptr, catalogue);
    else
        for (const std::string& note : r.setup.assumptions) out << wrapped("  " + note, page_width, "    ");
    out << "\nData version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook
