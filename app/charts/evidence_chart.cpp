#include "charts/evidence_chart.hpp"

#include "charts/place_text.hpp"
#include "core/quantity/constants.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double evidence_row = 20, evidence_dot = 4.5, evidence_names = 0.42;

std::string word_of_evidence(const SourceValue& s) {
    return std::string(s.how_known == HowKnown::memory ? "remembered" : name_of(s.how_known));
}

} // namespace

EvidenceChart evidence_chart(const Catalogue& catalogue, const Property& property, const Evaluated& value,
                             UnitSystem units) {
    const auto shown = [&](double si) { return shown_number(property, si, units); };
    EvidenceChart chart;
    chart.label = label_with_unit(property, units);
    chart.value = shown(value.value_si);
    const double half = normal_90 * value.standard_uncertainty_si;
    const double a = shown(value.value_si - half), b = shown(value.value_si + half);
    chart.low = std::min(a, b);
    chart.high = std::max(a, b);
    for (const SourceValue& s : value.sources)
        if (std::isfinite(s.value_si))
            chart.dots.push_back(
                {s.key, short_source(catalogue, s.key), shown(s.value_si), s.how_known == HowKnown::memory, s.chosen,
                 short_source(catalogue, s.key) + "\n" + s.locator + ": " + s.printed + "\n" + word_of_evidence(s)});
    return chart;
}

double height_of(const EvidenceChart& chart) {
    return evidence_row * static_cast<double>(chart.dots.size()) + 3 * label_line;
}

Scene layout(const EvidenceChart& chart, const Canvas& canvas) {
    Scene scene;
    scene.width = canvas.width;
    scene.height = canvas.height;
    scene.title = chart.label;
    const Palette& colours = canvas.palette;
    Axis axis{chart.low, chart.high};
    for (const EvidenceDot& d : chart.dots) {
        axis.low = std::min(axis.low, d.value);
        axis.high = std::max(axis.high, d.value);
    }
    const double room = std::max(0.06 * (axis.high - axis.low), 1e-9 * std::abs(axis.high) + 1e-300);
    axis.low -= room;
    axis.high += room;
    const double left = canvas.width * evidence_names;
    const Box plot{left, 4, canvas.width - left - 12, evidence_row * static_cast<double>(chart.dots.size())};
    axis.from = plot.x;
    axis.to = plot.right();
    const double low = axis.place(chart.low), high = axis.place(chart.high), at = axis.place(chart.value);
    scene.parts.push_back(
        Rectangle{{low, plot.y, std::max(1.0, high - low), plot.height}, colours.accent.with_alpha(60)});
    scene.parts.push_back(Polyline{{{at, plot.y}, {at, plot.bottom()}}, colours.accent, 1.5});
    add_horizontal_axis(scene, canvas, axis, plot);
    double y = plot.y + evidence_row / 2;
    for (const EvidenceDot& d : chart.dots) {
        const double x = axis.place(d.value);
        scene.parts.push_back(Text{{left - row_gap, y},
                                   shortened(d.name, left - row_gap - 2, TextStyle::label, canvas.measure),
                                   d.chosen ? colours.ink : colours.dim,
                                   Anchor::end});
        scene.parts.push_back(Circle{{x, y}, evidence_dot, colours.ink, d.remembered ? 1.5 : 0.0});
        if (d.chosen) scene.parts.push_back(Circle{{x, y}, evidence_dot + 3, colours.accent, 1.5});
        scene.hits.push_back({{0, y - evidence_row / 2, canvas.width, evidence_row}, d.id, d.hover});
        y += evidence_row;
    }
    scene.parts.push_back(Text{{plot.right(), plot.bottom() + 1.5 * label_line},
                               shortened(chart.label + " · band: 90 %", canvas.width, TextStyle::label, canvas.measure),
                               colours.dim,
                               Anchor::end});
    return scene;
}

} // namespace pourbook
