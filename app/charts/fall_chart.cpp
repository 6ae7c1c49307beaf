#include "charts/drop_charts.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/drop/drop_figures.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::string seconds(double s, double low, double high) {
    return rounded_to(s, (high - low) / 4, 3) + " s";
}

std::string hover_of(const DropOfMetal& d, UnitSystem units) {
    const DropResult& r = *d.result;
    std::string text = metal_text(r.tube, r.conditions, units) + "\nfalls " +
                       seconds(r.fall.time_s, r.fall_time_low90_s, r.fall_time_high90_s) + ", 90 % interval " +
                       significant(r.fall_time_low90_s, 3) + " to " + significant(r.fall_time_high90_s, 3) + " s";
    if (r.settles) text += "\nterminal speed " + speed_text(*r.fall.terminal_speed_m_s, units);
    text += "\n" + r.regime;
    for (const SourceValue& s : r.tube.value.sources)
        if (s.chosen) text += "\nresistivity: " + s.key + ", " + s.locator + " (" + name_of(s.how_known) + ")";
    return text;
}

FallRow row_of(const DropOfMetal& d, std::size_t slot, UnitSystem units, const MeasuredFalls& measured) {
    FallRow row;
    row.id = d.metal->slug;
    row.name = d.metal->name;
    row.slot = slot;
    if (!d.result) {
        row.problem = d.result.problem().text;
        row.hover = row.name + "\n" + row.problem;
        return row;
    }
    row.time_s = d.result->fall.time_s;
    row.low_s = d.result->fall_time_low90_s;
    row.high_s = d.result->fall_time_high90_s;
    row.value = seconds(row.time_s, row.low_s, row.high_s);
    row.hover = hover_of(d, units);
    if (const auto at = measured.find(row.id); at != measured.end()) row.measured_s = at->second;
    for (const double t : row.measured_s) row.hover += "\nmeasured: " + significant(t, 3) + " s";
    return row;
}

} // namespace

Origin origin_of(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops) {
    Origin origin;
    for (const DropOfMetal& d : drops) {
        if (!d.result) continue;
        origin.conditions = "at " + celsius_text(d.result->conditions.temperature_K); // the same for all
        if (d.metal) origin.conditions += ", " + state_text(d.result->conditions);
        for (const std::string& key : drop_sources(*d.result))
            if (std::find(origin.sources.begin(), origin.sources.end(), key) == origin.sources.end())
                origin.sources.push_back(key);
    }
    origin.data_version = catalogue.data_version;
    return origin;
}

FallChart fall_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units,
                     const MeasuredFalls& measured) {
    FallChart chart;
    chart.title = "Time to fall through the tube";
    for (std::size_t i = 0; i < drops.size(); ++i) {
        chart.rows.push_back(row_of(drops[i], i, units, measured));
        if (!drops[i].result) continue;
        const DropResult& r = *drops[i].result;
        chart.free_fall_s = r.free_fall_time_s;
        chart.subtitle = magnet_text(r.setup, units) + "; " + tube_text(r.setup.inputs, units) + "; without a tube " +
                         significant(r.free_fall_time_s, 2) + " s";
    }
    chart.origin = origin_of(catalogue, drops);
    return chart;
}

} // namespace pourbook
