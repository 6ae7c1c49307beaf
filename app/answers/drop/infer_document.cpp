#include "answers/drop/drop_documents.hpp"
#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// For people in another unit than for programs.
DataCell shown_and_told(double shown, int figures, double told) {
    DataCell cell = DataCell::figure(shown, std::isfinite(shown) ? significant(shown, figures) : "");
    cell.value = number_or_null(told);
    return cell;
}

DataTable metals_table(const std::string& title, const std::string& id, const std::vector<ConsistentMetal>& list,
                       unsigned shown_in) {
    DataTable t{title,
                {{"metal", "metal"},
                 {"p", "probability", "", true},
                 {"conductivity_S_m", "MS/m", "", true},
                 {"relative_uncertainty", "±", "", true}},
                {},
                shown_in,
                id};
    const bool weighed = !list.empty() && list.front().porosity;
    if (weighed) t.columns.push_back({"porosity", "porosity", "", true});
    for (const ConsistentMetal& c : list) {
        const auto percent = [](double share) {
            return DataCell::both(significant(100 * share, 2) + " %", number_or_null(share));
        };
        t.rows.push_back({DataCell::words(c.metal->slug), percent(c.p),
                          shown_and_told(c.conductivity_S_m / 1e6, 3, c.conductivity_S_m),
                          percent(c.relative_uncertainty)});
        if (weighed) t.rows.back().push_back(c.porosity ? percent(*c.porosity) : DataCell{});
    }
    return t;
}

DataTable impurities_table(const InferResult& r, const std::string& id, unsigned shown_in) {
    constexpr std::size_t told = 5;
    DataTable t{"Or " + r.impurity_base + " with one dissolved impurity, the usual ones first",
                {{"element", "element"},
                 {"content_wt_percent", "wt%", "", true},
                 {"low90_wt_percent", "90 % low", "", true},
                 {"high90_wt_percent", "90 % high", "", true}},
                {},
                shown_in,
                id};
    t.most = told;
    for (const ImpurityEffect& i : r.impurities)
        t.rows.push_back({DataCell::words(i.element), shown_and_told(i.content_wt, 2, i.content_wt),
                          shown_and_told(i.low90_wt, 2, i.low90_wt), shown_and_told(i.high90_wt, 2, i.high90_wt)});
    return t;
}

std::string siemens(const eddy::Conductivity& c) {
    return significant(c.value_S_m / 1e6, 4) + " MS/m  (" +
           interval_text(significant(c.low90_S_m / 1e6, 4), significant(c.high90_S_m / 1e6, 4)) + ")";
}

void tell_estimate(Document& out, const std::string& id, const std::optional<eddy::Conductivity>& c) {
    if (!c) return out.tell(id, {});
    out.tell(id + ".conductivity_S_m", number_or_null(c->value_S_m));
    out.tell(id + ".standard_uncertainty", number_or_null(c->standard_uncertainty_S_m));
    out.tell(id + ".low90_S_m", number_or_null(c->low90_S_m));
    out.tell(id + ".high90_S_m", number_or_null(c->high90_S_m));
}

void add_conductivity(Document& out, const InferResult& r, UnitSystem units) {
    out.add_pairs("Conductivity");
    out.pair("conductivity", siemens(r.conductivity), "conductivity_S_m", number_or_null(r.conductivity.value_S_m));
    out.tell("standard_uncertainty", number_or_null(r.conductivity.standard_uncertainty_S_m));
    out.tell("low90_S_m", number_or_null(r.conductivity.low90_S_m));
    out.tell("high90_S_m", number_or_null(r.conductivity.high90_S_m));
    out.pair("",
             significant(r.iacs_percent, 3) + " %IACS  (" +
                 interval_text(significant(r.iacs_low90, 3), significant(r.iacs_high90, 3)) + ")",
             "iacs_percent", number_or_null(r.iacs_percent));
    out.tell("iacs_percent_low90", number_or_null(r.iacs_low90));
    out.tell("iacs_percent_high90", number_or_null(r.iacs_high90));
    if (r.from_times && r.from_resistance) {
        out.pair("from the fall", siemens(*r.from_times));
        out.pair("from resistance", siemens(*r.from_resistance));
        out.pair("agreement", significant(100 * r.agreement, 2) + " % chance of a difference this large");
    }
    tell_estimate(out, "from_times", r.from_times);
    tell_estimate(out, "from_resistance", r.from_resistance);
    out.tell("agreement_p", number_or_null(r.agreement));
    if (r.density_kg_m3) out.pair("density", density_text(*r.density_kg_m3, units, 4) + " by weight and size");
    out.tell("tube_density_kg_m3", number_or_null(r.density_kg_m3));
    out.tell("temperature_K", r.conditions.temperature_K);
    out.tell("conductivity_if_across_S_m", number_or_null(r.across_S_m));
}

void add_metals(Document& out, const InferResult& r) {
    out.parts.push_back(
        metals_table("Metals that have it, by probability", "consistent_metals", r.consistent, in::all));
    if (!r.consistent.empty())
        out.say("something else    " + significant(100 * r.something_else, 2) +
                    " %; all metals of the reference were taken as equally likely beforehand",
                in::text);
    out.tell("something_else", number_or_null(r.something_else));
    out.parts.push_back(
        metals_table("No metal of the reference has it; the nearest", "nearest_metals", r.nearest, in::all));
    out.parts.push_back(metals_table("If its poles lay across", "metals_if_across", r.consistent_across, in::program));
}

void add_impurities(Document& out, const InferResult& r) {
    out.parts.push_back(impurities_table(r, "impurities", in::all));
    if (r.impurities.empty()) out.say(r.impurity_base + " with an impurity: " + r.impurity_note, in::text, "    ");
    DataTable copper = impurities_table(r, "copper_impurities", in::program);
    if (r.impurity_base != "Cu") copper.rows.clear();
    out.parts.push_back(std::move(copper));
    out.tell("impurity_base", r.impurity_base);
    out.tell("copper_impurity_note", r.impurity_note.empty() ? Value() : Value(r.impurity_note));
}

} // namespace

Document document_of(const InferResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    Document out = start_document("What a measured tube conducts", setting);
    out.add_pairs("Set-up");
    if (r.from_times) out.pair("magnet", magnet_text(r.setup, units));
    out.pair("tube", tube_text(r.setup.inputs, units) + ", at " + temperature_text(r.conditions.temperature_K, units));
    add_conductivity(out, r, units);
    add_metals(out, r);
    add_impurities(out, r);
    for (const std::string& line : r.advice) out.say("Check: " + for_reader(units, line), in::text | in::file, "    ");
    out.tell("advice", r.advice);
    out.tell("assumptions", r.setup.assumptions);
    if (r.from_times)
        add_grounds(out, r.setup, nullptr, setting);
    else
        add_list(out, "Assumed and taken", r.setup.assumptions, units);
    for (const CitedFigure& f : r.setup.sources) add_source(out, setting.catalogue, f.citation.source);
    end_with_version(out);
    return out;
}

} // namespace pourbook
