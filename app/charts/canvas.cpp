#include "charts/canvas.hpp"

#include "charts/place_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double figure_gap = 6; // between figures and plot

int ticks_across(const Canvas& canvas, const Axis& axis, double width) {
    const double widest = std::max(
        canvas.measure.width(tick_text(axis.low, axis.log ? axis.low : (axis.high - axis.low) / 10), TextStyle::label),
        canvas.measure.width(tick_text(axis.high, axis.log ? axis.high : (axis.high - axis.low) / 10),
                             TextStyle::label));
    return std::clamp(static_cast<int>(width / (widest + 28)), 1, 10);
}

int ticks_up(double height) {
    return std::clamp(static_cast<int>(height / 44), 2, 10);
}

/// Names of the sources, each once: two keys may share a short name.
std::vector<std::string> source_names(const Origin& origin, const Canvas& canvas) {
    std::vector<std::string> names;
    for (const std::string& key : origin.sources) {
        const std::string name = canvas.source_name ? canvas.source_name(key) : key;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return names;
}

std::string origin_text(const std::vector<std::string>& names, std::size_t shown, const std::string& rest) {
    std::string text = "Sources: ";
    for (std::size_t i = 0; i < shown; ++i) text += (i ? ", " : "") + names[i];
    if (names.empty()) text += "none";
    if (shown < names.size()) text += " and " + std::to_string(names.size() - shown) + " more";
    return text + rest;
}

} // namespace

double add_head(Scene& scene, const Canvas& canvas, const std::string& title, const std::string& subtitle) {
    scene.title = canvas.title.empty() ? title : canvas.title;
    const double width = canvas.width - 2 * chart_margin;
    double y = chart_margin;
    const auto add = [&](const std::string& text, TextStyle style, Colour colour) {
        if (text.empty()) return;
        for (const std::string& part : wrapped(text, width, style, canvas.measure)) {
            scene.parts.push_back(Text{{chart_margin, y + line_height(style) / 2}, part, colour, Anchor::start, style});
            y += line_height(style);
        }
    };
    add(scene.title, TextStyle::title, canvas.palette.ink);
    add(subtitle, TextStyle::label, canvas.palette.dim);
    return y + 4;
}

double add_origin(Scene& scene, const Canvas& canvas, const Origin& origin) {
    constexpr double small = 360; // a picture that low needs its room for the plot
    const std::size_t most_lines = canvas.height < small ? 1 : 3;
    scene.origin = origin;
    const std::vector<std::string> names = source_names(origin, canvas);
    std::string rest = origin.conditions.empty() ? "" : " · " + origin.conditions;
    rest += " · data " + origin.data_version + (canvas.date.empty() ? "" : " · " + canvas.date);
    std::size_t shown = names.size();
    const double width = canvas.width - 2 * chart_margin;
    std::vector<std::string> lines = wrapped(origin_text(names, shown, rest), width, TextStyle::label, canvas.measure);
    while (lines.size() > most_lines && shown > 1)
        lines = wrapped(origin_text(names, --shown, rest), width, TextStyle::label, canvas.measure);
    const double top = canvas.height - chart_margin - label_line * static_cast<double>(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i)
        scene.parts.push_back(
            Text{{chart_margin, top + label_line * (static_cast<double>(i) + 0.5)}, lines[i], canvas.palette.dim});
    return top - 4;
}

void add_horizontal_axis(Scene& scene, const Canvas& canvas, const Axis& axis, const Box& plot) {
    for (const Tick& t : ticks(axis, ticks_across(canvas, axis, plot.width))) {
        const double x = axis.place(t.value);
        scene.parts.push_back(Polyline{{{x, plot.y}, {x, plot.bottom()}}, canvas.palette.line});
        Text text{{x, plot.bottom() + label_line / 2 + 2}, t.text, canvas.palette.dim, Anchor::middle};
        const Box box = text_box(text, canvas.measure);
        if (box.right() > canvas.width - 2) text.at.x -= box.right() - canvas.width + 2;
        scene.parts.push_back(text);
    }
}

void add_vertical_axis(Scene& scene, const Canvas& canvas, const Axis& axis, const Box& plot) {
    for (const Tick& t : ticks(axis, ticks_up(plot.height))) {
        const double y = axis.place(t.value);
        scene.parts.push_back(Polyline{{{plot.x, y}, {plot.right(), y}}, canvas.palette.line});
        scene.parts.push_back(Text{{plot.x - figure_gap, y}, t.text, canvas.palette.dim, Anchor::end});
    }
}

double width_of_figures(const Canvas& canvas, const Axis& axis, double height) {
    double widest = 0;
    for (const Tick& t : ticks(axis, ticks_up(height)))
        widest = std::max(widest, canvas.measure.width(t.text, TextStyle::label));
    return widest + figure_gap;
}

double add_notes(Scene& scene, const Canvas& canvas, const std::vector<std::string>& notes, double bottom) {
    constexpr double note_upright = 350, step = label_line; // points, below which a note has two lines
    std::vector<std::string> lines;
    for (const std::string& note : notes)
        for (std::string& line : fitted_lines(note, canvas.width - 2 * chart_margin,
                                              canvas.width < note_upright ? 2 : 1, TextStyle::label, canvas.measure))
            lines.push_back(std::move(line));
    double y = bottom - step * static_cast<double>(lines.size());
    const double top = y - 2;
    for (std::string& line : lines) {
        scene.parts.push_back(Text{{chart_margin, y + step / 2}, std::move(line), canvas.palette.dim});
        y += step;
    }
    return top;
}

void take_range(Axis& axis, const std::optional<std::pair<double, double>>& asked) {
    if (!asked || !(asked->first < asked->second) || (axis.log && asked->first <= 0)) return;
    axis.low = asked->first;
    axis.high = asked->second;
}

void span(Axis& x, Axis& y, const Box& plot) {
    x.from = plot.x;
    x.to = plot.right();
    y.from = plot.bottom();
    y.to = plot.y;
}

} // namespace pourbook
