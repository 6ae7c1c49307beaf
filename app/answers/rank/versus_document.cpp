#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

DataCell ratio(double x) {
    return DataCell::figure(x, significant(x, 3));
}

} // namespace

Document document_of(const VersusResult& r, const DocumentSetting& setting) {
    Document out =
        start_document(r.better.metal->name + " against " + r.worse.metal->name, r.conditions, setting, r.to_K);
    out.conditions.insert(out.conditions.end(), {{"goal", r.label.empty() ? r.formula : r.label},
                                                 {"formula", r.formula},
                                                 {"best", r.best_high ? "high" : "low"}});
    out.notes.push_back(r.sentence);
    DataTable answer{
        "Answer",
        {{"winner", "better"},
         {"ratio_median", "ratio", "", true},
         {"ratio_low90", "ratio, 90 % low", "", true},
         {"ratio_high90", "ratio, 90 % high", "", true},
         {"p_winner", "chance of being better", "%", true},
         {"reason", "why"}},
        {{DataCell::words(r.tie ? "not told apart" : r.better.metal->slug), ratio(r.ratio_median), ratio(r.ratio_low90),
          ratio(r.ratio_high90), DataCell::figure(100 * r.p_winner, significant(100 * r.p_winner, 3)),
          DataCell::words(r.reason)}}};
    DataTable values{"Values", {}, {}};
    add_metal_columns(values);
    const auto inputs = input_properties(r.better.inputs, setting.catalogue);
    for (const Property* p : inputs) values.columns.push_back(column_of(*p, setting.units));
    for (const VersusSide* side : {&r.better, &r.worse}) {
        values.rows.emplace_back();
        add_metal_cells(values.rows.back(), *side->metal);
        add_input_cells(values.rows.back(), inputs, side->inputs, setting.units);
        if (!side->barred.empty()) out.notes.push_back(side->metal->name + ": " + side->barred);
    }
    out.parts = {std::move(answer), std::move(values)};
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
