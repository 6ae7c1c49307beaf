#include "charts/rank_chart.hpp"

#include "core/quantity/format.hpp"
#include "questions/say/share.hpp"
#include "questions/say/shown_merit.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr std::size_t most_rows = 500;

/// How the merit is drawn: in a property's unit, a fall in seconds, or as a multiple of the best.
struct MeritScale {
    ShownMerit shown; // as it is told
    double best;      // NaN: drawn as it is told

    double drawn(double si) const { return std::isnan(best) ? shown.number(si) : si / best; }
};

std::string hover_of(const RankedMetal& r, const RankRow& row, const RankResult& result, const ShownMerit& shown) {
    const Place& p = r.place;
    const auto figure = [](double x) { return pretty_number(significant(x, 4)); };
    const double median = shown.number(p.median), a = shown.number(p.low90), b = shown.number(p.high90);
    const std::string unit = pretty_unit(shown.unit());
    std::string text = row.name + "\nrank " + std::to_string(p.rank);
    if (result.samples)
        text += " (" + std::to_string(p.rank_low) + " to " + std::to_string(p.rank_high) + "), first in " +
                share_text(p.p_first) + " of the draws\nmedian " + figure(median) + ", 90 % interval " +
                figure(std::min(a, b)) + " to " + figure(std::max(a, b));
    else
        text += "\n" + figure(median);
    if (!unit.empty()) text += " " + unit;
    if (row.remembered) text += "\nrests on a remembered value";
    return text;
}

RankRow row_of(const RankedMetal& r, const RankResult& result, const MeritScale& merit) {
    const Place& p = r.place;
    RankRow row;
    row.id = r.metal->slug;
    row.name = r.metal->name;
    row.median = merit.drawn(p.median);
    row.remembered = r.from_memory;
    const double a = merit.drawn(p.low90), b = merit.drawn(p.high90);
    row.rank = p.rank;
    row.low = result.samples ? std::min(a, b) : row.median;
    row.high = result.samples ? std::max(a, b) : row.median;
    row.value = pretty_number(rounded_to(row.median, (row.high - row.low) / 2, 4));
    row.hover = hover_of(r, row, result, merit.shown);
    for (const RankInput& input : r.inputs)
        if (!input.value.sources.empty()) row.sources.push_back(input.value.sources.front().key);
    return row;
}

} // namespace

RankChart rank_chart(const Catalogue& catalogue, const RankResult& result, UnitSystem units,
                     const std::vector<std::string>& pinned) {
    RankChart chart;
    chart.title = result.label.empty() ? result.formula : result.label;
    chart.origin = {{},
                    catalogue.data_version,
                    conditions_text(result.conditions, result.to_K) + rate_text({catalogue.property(result.formula)})};
    if (result.ranked.empty()) return chart;
    const RankedMetal& best = result.ranked.front();
    const bool seconds = result.formula == fall_time_name;
    const Property* property = catalogue.property(result.formula);
    const MeritScale merit{{catalogue, result.formula, result.unit, units},
                           property || seconds ? no_number : best.place.median};
    chart.axis_label = property  ? label_with_unit(*property, units)
                       : seconds ? "fall time, s"
                                 : result.formula + ", relative to " + best.metal->name;
    const std::size_t rows = std::min(most_rows, result.ranked.size());
    chart.varied = result.samples > 0;
    for (const RankedMetal& r : result.ranked) {
        const auto pin = std::find(pinned.begin(), pinned.end(), r.metal->slug);
        if (chart.rows.size() >= rows && pin == pinned.end()) continue;
        RankRow row = row_of(r, result, merit);
        row.pinned = pin != pinned.end();
        row.slot = static_cast<std::size_t>(pin - pinned.begin());
        const auto& tied = best.place.tied_with;
        row.tied_with_best = std::find(tied.begin(), tied.end(), row.id) != tied.end();
        chart.rows.push_back(std::move(row));
    }
    chart.beyond = result.ranked.size() - chart.rows.size();
    return chart;
}

} // namespace pourbook
