#include "charts/scatter_chart.hpp"

#include "core/quantity/constants.hpp"

#include <algorithm>

namespace pourbook {
namespace {

PointReach reach(const Property& property, const Evaluated& e, UnitSystem units) {
    const double half = normal_90 * e.standard_uncertainty_si;
    const double a = shown_number(property, e.value_si - half, units),
                 b = shown_number(property, e.value_si + half, units);
    return {shown_number(property, e.value_si, units), std::min(a, b), std::max(a, b)};
}

void add_source(std::vector<std::string>& keys, const Evaluated& e) {
    if (e.sources.empty()) return;
    const std::string& key = e.sources.front().key;
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
}

} // namespace

Result<PointChart> scatter_chart(const Catalogue& catalogue, const CompareResult& result, UnitSystem units,
                                 const std::vector<std::string>& pinned) {
    const Property &along = *result.properties.at(0), &up = *result.properties.at(1);
    for (const Property* p : {&along, &up})
        if (p->is_text)
            return Problem{Problem::Kind::unreadable, "'" + p->id + "' is told in words: a chart needs numbers", 0};
    PointChart chart;
    chart.title = shown_label(up, units) + " against " + shown_label(along, units);
    chart.x_label = label_with_unit(along, units);
    chart.y_label = label_with_unit(up, units);
    chart.origin.conditions = conditions_text(result.conditions) + rate_text({&along, &up});
    chart.origin.data_version = catalogue.data_version;
    std::size_t missing = 0;
    for (const ComparedMetal& row : result.rows) {
        const Result<Evaluated>&x = row.cells[0], &y = row.cells[1];
        if (!x || !y) {
            ++missing;
            continue;
        }
        const std::string& slug = row.metal->slug;
        const auto pin = std::find(pinned.begin(), pinned.end(), slug);
        chart.points.push_back({slug, row.metal->name, reach(along, *x, units), reach(up, *y, units),
                                row.metal->name + "\n" + along.label + ": " + shown_full(along, *x, units) + "\n" +
                                    up.label + ": " + shown_full(up, *y, units),
                                false, x->how_known == HowKnown::memory || y->how_known == HowKnown::memory,
                                pin != pinned.end(), static_cast<std::size_t>(pin - pinned.begin())});
        add_source(chart.origin.sources, *x);
        add_source(chart.origin.sources, *y);
    }
    std::stable_partition(chart.points.begin(), chart.points.end(), [](const PointMark& p) { return p.pinned; });
    if (missing > 0)
        chart.notes.push_back(std::to_string(missing) + (missing == 1 ? " metal lacks" : " metals lack") +
                              " one of the two values");
    return chart;
}

} // namespace pourbook
