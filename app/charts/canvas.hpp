// What a layout needs besides the chart: room, colours and the width of letters; and the parts all charts share.
#pragma once

#include "charts/axis.hpp"
#include "charts/palette.hpp"
#include "charts/scene.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace pourbook {

/// Which mark (colour and shape, charts/marker.hpp) a metal has, by its slug.
using Marks = std::map<std::string, std::size_t>;

/// What is asked to be seen of a plot, in the units shown; nothing: all of it. The vertical range follows the
/// horizontal one unless it is asked for too.
struct PlotRange {
    std::optional<std::pair<double, double>> x, y;
    bool operator==(const PlotRange&) const = default;
};

struct Canvas {
    double width = 600, height = 400; // points
    const Palette& palette;
    const TextMeasure& measure;
    std::string date = {};                                           // of a picture that leaves the program
    std::function<std::string(const std::string&)> source_name = {}; // of a key; empty: the key itself
    const Marks* marks = nullptr;                                    // the person's

    PlotRange range = {};
    std::string title = {}; // in place of the picture's own

    /// The metal's own mark, else that of its place in the chart.
    std::size_t slot(const std::string& id, std::size_t place) const {
        const auto at = marks ? marks->find(id) : Marks::const_iterator();
        return marks && at != marks->end() ? at->second : place;
    }
};

constexpr double chart_margin = 10;
constexpr double row_gap = 8; // between a row's name, its bar and its figure

/// Title and subtitle at the top; returns the y below them.
double add_head(Scene& scene, const Canvas& canvas, const std::string& title, const std::string& subtitle);

/// Sources, conditions and data version at the bottom, at most three lines; returns the y above them.
double add_origin(Scene& scene, const Canvas& canvas, const Origin& origin);

/// Remarks above `bottom`, a line each, dim; returns the y above them.
double add_notes(Scene& scene, const Canvas& canvas, const std::vector<std::string>& notes, double bottom);

/// The axis with the range asked for, where it is one.
void take_range(Axis& axis, const std::optional<std::pair<double, double>>& asked);

/// The axes run along the edges of the plot, upwards and to the right.
void span(Axis& x, Axis& y, const Box& plot);

/// Grid lines and figures of a horizontal axis, below `plot`.
void add_horizontal_axis(Scene& scene, const Canvas& canvas, const Axis& axis, const Box& plot);
/// The same of a vertical one, left of `plot`.
void add_vertical_axis(Scene& scene, const Canvas& canvas, const Axis& axis, const Box& plot);
/// Room the figures of a vertical axis need.
double width_of_figures(const Canvas& canvas, const Axis& axis, double height);

} // namespace pourbook
