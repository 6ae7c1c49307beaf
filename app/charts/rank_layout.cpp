#include "charts/rank_chart.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double rank_row = 24, rank_tallest = 60;
constexpr double rank_upright = 350; // points, below which a name stands above its bar
constexpr double dot = 4.5;
constexpr double pin_room = 13; // between a name and its bar

class RankLayout {
public:
    RankLayout(const RankChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const double top = add_head(scene_, canvas_, chart_.title,
                                    chart_.rows.empty() ? "nothing to rank"
                                    : chart_.varied     ? "median and 90 % interval, best on top"
                                                        : "figures as cited, without their uncertainty, best on top");
        // The caption depends on the rows shown and takes room from them: reserve its most, then place it.
        constexpr double caption_most = 3 * label_line + 4 + chart_margin;
        const double foot = (legend_lines() + 2) * label_line + 10; // figures, axis label, legend
        const double room = canvas_.height - caption_most - foot - top;
        const double least = above_ ? 2 * label_line + 4 : rank_row;
        choose(static_cast<std::size_t>(std::max(1.0, room / least)));
        row_height_ = std::clamp(room / static_cast<double>(std::max<std::size_t>(shown_.size(), 1)), least,
                                 unshown() > 0 ? least : rank_tallest);
        add_origin(scene_, canvas_, origin());
        if (chart_.rows.empty()) return std::move(scene_);
        place_plot(top);
        add_horizontal_axis(scene_, canvas_, axis_, plot_);
        for (std::size_t i = 0; i < shown_.size(); ++i) add_row(i);
        add_bracket();
        add_foot();
        return std::move(scene_);
    }

private:
    /// The first of the order; in the last places what is pinned further down.
    void choose(std::size_t places) {
        const auto pinned_after = [&](std::size_t first) {
            std::vector<const RankRow*> out;
            for (std::size_t i = first; i < chart_.rows.size(); ++i)
                if (chart_.rows[i].pinned) out.push_back(&chart_.rows[i]);
            return out;
        };
        top_ = std::min(chart_.rows.size(), places - std::min(pinned_after(places).size(), places / 2));
        for (std::size_t i = 0; i < top_; ++i) shown_.push_back(&chart_.rows[i]);
        for (const RankRow* row : pinned_after(top_))
            if (shown_.size() < places) shown_.push_back(row);
    }

    /// What stands apart from the top says its rank.
    std::string name_text(std::size_t i) const {
        return (i < top_ ? "" : std::to_string(shown_[i]->rank) + ".  ") + shown_[i]->name;
    }

    Origin origin() const {
        Origin out = chart_.origin;
        std::vector<std::string>& keys = out.sources;
        for (const RankRow* row : shown_)
            for (const std::string& key : row->sources)
                if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
        return out;
    }

    bool any(bool RankRow::*what) const {
        return std::any_of(chart_.rows.begin(), chart_.rows.end(), [&](const RankRow& r) { return r.*what; });
    }

    static bool is_best(const RankRow& row) { return row.rank == 1; }

    std::string value_text(const RankRow& row) const {
        return row.value + (is_best(row) ? "  best" : row.tied_with_best ? "  ≈ best" : "");
    }

    void place_plot(double top) {
        double names = 0, values = 0;
        axis_.low = chart_.rows[0].low;
        axis_.high = chart_.rows[0].high;
        double smallest = chart_.rows[0].median, largest = smallest;
        for (std::size_t i = 0; i < shown_.size(); ++i) {
            const RankRow& row = *shown_[i];
            names = std::max(names, canvas_.measure.width(name_text(i), TextStyle::label) + pin_room);
            values = std::max(values, canvas_.measure.width(value_text(row), TextStyle::label));
            axis_.low = std::min(axis_.low, row.low);
            axis_.high = std::max(axis_.high, row.high);
            if (i < top_) smallest = std::min(smallest, row.median); // a pinned one far below squeezes nothing
            largest = std::max(largest, row.median);
        }
        axis_.log = smallest > 0 && largest > log_beyond * smallest;
        if (axis_.log && axis_.low <= 0) axis_.low = axis_.high / 1e4;
        if (!axis_.log) axis_.low = std::min(axis_.low, 0.0);
        round_out(axis_);
        names = above_ ? 0 : std::min(names, canvas_.width * 0.4);
        const double left = chart_margin + names + row_gap, right = canvas_.width - chart_margin - values - row_gap - 8;
        plot_ = {left, top, std::max(40.0, right - left), static_cast<double>(shown_.size()) * row_height_};
        axis_.from = plot_.x;
        axis_.to = plot_.right();
    }

    /// Of the bar.
    double middle(std::size_t i) const {
        return plot_.y + (static_cast<double>(i) + 0.5) * row_height_ + (above_ ? label_line / 2 : 0);
    }
    double place(double value) const { return axis_.place(std::clamp(value, axis_.low, axis_.high)); }

    void add_row(std::size_t i) {
        const RankRow& row = *shown_[i];
        const double y = middle(i);
        const std::size_t slot = canvas_.slot(row.id, row.slot);
        const Colour colour = row.pinned ? colours_.of_slot(slot) : colours_.other;
        add_name(row, name_text(i), slot, y);
        const double row_top = plot_.y + static_cast<double>(i) * row_height_;
        if (i == top_) add_gap(row_top);
        if (!axis_.log) {
            const double zero = place(0), end = place(row.median);
            scene_.parts.push_back(
                Rectangle{{std::min(zero, end), y - 6, std::abs(end - zero), 12}, colour.with_alpha(70)});
        }
        const double low = place(row.low), high = place(row.high);
        if (high > low) {
            scene_.parts.push_back(Polyline{{{low, y}, {high, y}}, colour, 2});
            for (const double x : {low, high}) scene_.parts.push_back(Polyline{{{x, y - 4}, {x, y + 4}}, colour, 2});
        }
        if (row.remembered) scene_.parts.push_back(Circle{{place(row.median), y}, dot, colours_.ground, 0});
        scene_.parts.push_back(Circle{{place(row.median), y}, dot, colour, row.remembered ? 2.0 : 0.0});
        const bool first = row.tied_with_best || is_best(row);
        scene_.parts.push_back(Text{{high + row_gap, y}, value_text(row), first ? colours_.ink : colours_.dim});
        scene_.hits.push_back({{0, row_top, canvas_.width, row_height_}, row.id, row.hover});
    }

    /// Right of it the mark of a pinned metal.
    void add_name(const RankRow& row, const std::string& words, std::size_t slot, double y) {
        if (above_) return add_name_above(row, words, slot, y - label_line);
        const double right = plot_.x - row_gap - pin_room;
        const auto most = static_cast<std::size_t>(row_height_ / label_line);
        const auto lines = fitted_lines(words, right - chart_margin, most, TextStyle::label, canvas_.measure);
        double line_y = y - label_line * static_cast<double>(lines.size() - 1) / 2;
        for (const std::string& line : lines) {
            scene_.parts.push_back(Text{{right, line_y}, line, colours_.ink, Anchor::end});
            line_y += label_line;
        }
        if (row.pinned) add_marker(scene_, slot, {plot_.x - row_gap - 3, y}, 4, colours_.of_slot(slot));
    }

    void add_name_above(const RankRow& row, const std::string& words, std::size_t slot, double y) {
        const double left = chart_margin + (row.pinned ? pin_room : 0);
        const std::string name =
            shortened(words, canvas_.width - left - chart_margin, TextStyle::label, canvas_.measure);
        scene_.parts.push_back(Text{{left, y}, name, colours_.ink});
        if (row.pinned) add_marker(scene_, slot, {chart_margin + 4, y}, 4, colours_.of_slot(slot));
    }

    /// Between the top and what is pinned below it.
    void add_gap(double y) {
        scene_.parts.push_back(
            Polyline{{{chart_margin, y}, {canvas_.width - chart_margin, y}}, colours_.edge, 1, true});
    }

    /// Spans the rows from the first while the data can't tell them from the best.
    void add_bracket() {
        std::size_t last = 0;
        while (last + 1 < top_ && shown_[last + 1]->tied_with_best) ++last;
        if (last == 0) return;
        const double x = canvas_.width - chart_margin, top = middle(0) - 7, bottom = middle(last) + 7;
        scene_.parts.push_back(Polyline{{{x - 5, top}, {x, top}, {x, bottom}, {x - 5, bottom}}, colours_.ink, 2});
    }

    std::size_t unshown() const { return chart_.rows.size() - shown_.size() + chart_.beyond; }

    double legend_lines() const {
        return (above_ ? 1 : 0) + (any(&RankRow::tied_with_best) ? 1 : 0) + (any(&RankRow::remembered) ? 1 : 0) +
               (unshown() > 0 ? 1 : 0);
    }

    void add_foot() {
        double y = plot_.bottom() + label_line + 4 + label_line / 2;
        const double width = canvas_.width - 2 * chart_margin;
        const auto add = [&](const std::string& text, Colour colour, double x) {
            scene_.parts.push_back(Text{{x, y}, shortened(text, width, TextStyle::label, canvas_.measure), colour});
            y += label_line;
        };
        for (const std::string& line :
             fitted_lines(chart_.axis_label, width, above_ ? 2 : 1, TextStyle::label, canvas_.measure))
            add(line, colours_.ink, chart_margin);
        if (any(&RankRow::tied_with_best))
            add("≈ best: the data can't tell it from the first", colours_.dim, chart_margin);
        if (any(&RankRow::remembered)) {
            scene_.parts.push_back(Circle{{chart_margin + dot, y}, dot, colours_.dim, 2});
            add("rests on a remembered value", colours_.dim, chart_margin + 3 * dot);
        }
        if (unshown() > 0) add("and " + std::to_string(unshown()) + " more in the table", colours_.dim, chart_margin);
    }

    const RankChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    Box plot_;
    Axis axis_;
    double row_height_ = rank_row;
    bool above_ = canvas_.width < rank_upright; // names stand above their bars
    std::vector<const RankRow*> shown_;
    std::size_t top_ = 0; // of them: the first of the order
};

} // namespace

Scene layout(const RankChart& chart, const Canvas& canvas) {
    return RankLayout(chart, canvas).run();
}

} // namespace pourbook
