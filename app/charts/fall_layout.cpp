#include "charts/drop_charts.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double fall_tallest = 84, fall_lowest = 18, tallest_bar = 22; // of a row, half of a bar
constexpr double diamond = 5;
constexpr double fall_narrow = 500;  // points, below which the foot has two lines
constexpr double fall_upright = 350; // below which a name stands above its bar

class FallLayout {
public:
    FallLayout(const FallChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const double top = add_head(scene_, canvas_, chart_.title, chart_.subtitle);
        const double bottom = add_origin(scene_, canvas_, chart_.origin);
        if (chart_.rows.empty()) return std::move(scene_);
        place_plot(top, bottom);
        add_horizontal_axis(scene_, canvas_, axis_, plot_);
        for (std::size_t i = 0; i < shown_; ++i) add_row(i);
        add_foot();
        return std::move(scene_);
    }

private:
    bool any_measured() const {
        return std::any_of(chart_.rows.begin(), chart_.rows.end(),
                           [](const FallRow& r) { return !r.measured_s.empty(); });
    }

    void fit_axis() {
        double smallest = INFINITY;
        axis_ = {0, 0};
        for (const FallRow& row : chart_.rows) {
            if (!row.problem.empty()) continue;
            axis_.high = std::max(axis_.high, row.high_s);
            smallest = std::min(smallest, row.low_s);
            for (const double t : row.measured_s) axis_.high = std::max(axis_.high, t);
        }
        if (axis_.high == 0) axis_.high = smallest = 1;
        axis_.log = axis_.high > log_beyond * smallest;
        if (axis_.log) axis_.low = smallest / 2;
        round_out(axis_);
    }

    void place_plot(double top, double bottom) {
        fit_axis();
        double names = 0, values = 0;
        for (const FallRow& row : chart_.rows) {
            names = std::max(names, canvas_.measure.width(row.name, TextStyle::label));
            values = std::max(values, canvas_.measure.width(row.value, TextStyle::label));
        }
        names = above_ ? 0 : std::min(names + 18, canvas_.width * 0.4); // with the metal's mark
        const double left = chart_margin + names + row_gap, right = canvas_.width - chart_margin - values - 2 * row_gap;
        foot_lines_ = canvas_.width < fall_narrow ? 2 : 1;
        const double room = bottom - top - (1 + static_cast<double>(foot_lines_)) * label_line - 8;
        row_height_ = std::clamp(room / static_cast<double>(chart_.rows.size()),
                                 fall_lowest + (above_ ? label_line : 0), fall_tallest);
        shown_ = std::min(chart_.rows.size(), static_cast<std::size_t>(std::max(1.0, room / row_height_)));
        plot_ = {left, top, std::max(40.0, right - left), static_cast<double>(shown_) * row_height_};
        axis_.from = plot_.x;
        axis_.to = plot_.right();
    }

    double place(double value) const { return axis_.place(std::clamp(value, axis_.low, axis_.high)); }

    void add_row(std::size_t i) {
        const FallRow& row = chart_.rows[i];
        const double row_top = plot_.y + static_cast<double>(i) * row_height_;
        const double y = row_top + row_height_ / 2 + (above_ ? label_line / 2 : 0); // of the bar
        const std::size_t slot = canvas_.slot(row.id, row.slot);
        const Colour colour = colours_.of_slot(slot);
        add_name(row, slot, y);
        scene_.hits.push_back({{0, row_top, canvas_.width, row_height_}, row.id, row.hover});
        if (row.problem.empty()) return add_bar(row, y, colour);
        scene_.parts.push_back(
            Text{{plot_.x + 6, y},
                 shortened(row.problem, canvas_.width - plot_.x - chart_margin - 6, TextStyle::label, canvas_.measure),
                 colours_.warning});
    }

    void add_name(const FallRow& row, std::size_t slot, double y) {
        const Colour ink = row.problem.empty() ? colours_.ink : colours_.dim, colour = colours_.of_slot(slot);
        if (above_) {
            const double line = y - bar_half() - label_line / 2 - 2, room = canvas_.width - 2 * chart_margin - 14;
            add_marker(scene_, slot, {chart_margin + 4, line}, 4, colour);
            scene_.parts.push_back(
                Text{{chart_margin + 14, line}, shortened(row.name, room, TextStyle::label, canvas_.measure), ink});
            return;
        }
        const double room = plot_.x - row_gap - 16 - chart_margin;
        const auto most = static_cast<std::size_t>(row_height_ / label_line);
        const auto lines = fitted_lines(row.name, room, most, TextStyle::label, canvas_.measure);
        double line_y = y - label_line * static_cast<double>(lines.size() - 1) / 2;
        for (const std::string& line : lines) {
            scene_.parts.push_back(Text{{plot_.x - row_gap - 14, line_y}, line, ink, Anchor::end});
            line_y += label_line;
        }
        add_marker(scene_, slot, {plot_.x - row_gap, y}, 4, colour);
    }

    double bar_half() const { return std::min(0.3 * (row_height_ - (above_ ? label_line : 0)), tallest_bar); }

    void add_bar(const FallRow& row, double y, Colour colour) {
        const double half = bar_half(), end = place(row.time_s);
        const double low = place(row.low_s), high = place(row.high_s);
        scene_.parts.push_back(Rectangle{{plot_.x, y - half, end - plot_.x, 2 * half}, colour.with_alpha(110)});
        scene_.parts.push_back(Polyline{{{low, y}, {high, y}}, colours_.ink, 2});
        for (const double x : {low, high})
            scene_.parts.push_back(Polyline{{{x, y - half}, {x, y + half}}, colours_.ink, 2});
        double right = high;
        for (const double t : row.measured_s) {
            add_diamond(place(t), y);
            right = std::max(right, place(t) + diamond);
        }
        scene_.parts.push_back(Text{{right + row_gap, y}, row.value, colours_.ink});
    }

    void add_diamond(double x, double y) {
        scene_.parts.push_back(Polygon{
            {{x, y - diamond - 1}, {x + diamond + 1, y}, {x, y + diamond + 1}, {x - diamond - 1, y}}, colours_.ground});
        scene_.parts.push_back(
            Polygon{{{x, y - diamond}, {x + diamond, y}, {x, y + diamond}, {x - diamond, y}}, colours_.accent});
    }

    void add_foot() {
        double y = plot_.bottom() + 1.5 * label_line + 4;
        std::string text = "fall time, s · bar to the nominal time, whiskers: 90 % interval";
        if (shown_ < chart_.rows.size()) text += " · and " + std::to_string(chart_.rows.size() - shown_) + " more";
        const double room = canvas_.width - 2 * chart_margin - (any_measured() ? 90 : 0);
        for (const std::string& line : fitted_lines(text, room, foot_lines_, TextStyle::label, canvas_.measure)) {
            scene_.parts.push_back(Text{{chart_margin, y}, line, colours_.dim});
            y += label_line;
        }
        y -= label_line;
        if (!any_measured()) return;
        const std::string measured = "measured";
        const double x = canvas_.width - chart_margin - canvas_.measure.width(measured, TextStyle::label);
        add_diamond(x - 10, y);
        scene_.parts.push_back(Text{{x, y}, measured, colours_.ink});
    }

    const FallChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    Box plot_;
    Axis axis_;
    double row_height_ = fall_tallest;
    std::size_t shown_ = 0, foot_lines_ = 1;
    bool above_ = canvas_.width < fall_upright; // names stand above their bars
};

} // namespace

Scene layout(const FallChart& chart, const Canvas& canvas) {
    return FallLayout(chart, canvas).run();
}

} // namespace pourbook
