#include "charts/curve_axes.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double marker_radius = 3.5;
constexpr double hit_half = 6;
constexpr double mark_room = 14;      // the mark in front of an end label
constexpr double label_indent = 24;   // gap and mark before an end label
constexpr double curve_upright = 350; // points, below which the names stand above the plot instead of at the ends

class CurveLayout {
public:
    CurveLayout(const CurveChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette), free_({}) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        double top = add_head(scene_, canvas_, chart_.title, chart_.lines.empty() ? "" : chart_.y_label);
        double bottom = add_origin(scene_, canvas_, chart_.origin);
        bottom = add_notes(scene_, canvas_, notes(), bottom);
        if (chart_.lines.empty()) return std::move(scene_);
        if (key_) top = add_key(top);
        place_plot(top + 6, bottom);
        add_horizontal_axis(scene_, canvas_, x_, plot_);
        add_vertical_axis(scene_, canvas_, y_, plot_);
        scene_.parts.push_back(
            Text{{plot_.right(), plot_.bottom() + 1.5 * label_line}, chart_.x_label, colours_.ink, Anchor::end});
        free_ = FreePlaces({plot_.x, plot_.y - label_line / 2, canvas_.width - plot_.x, plot_.height + label_line});
        scene_.parts.push_back(ClipTo{plot_});
        add_levels();
        for (const CurveLine& line : chart_.lines) add_bands(line);
        for (const CurveLine& line : chart_.lines) add_lines(line);
        for (const CurveLine& line : chart_.lines) add_printed(line);
        add_upright();
        for (const CurveMark& mark : chart_.marks) add_mark(mark);
        scene_.parts.push_back(ClipEnd{});
        add_level_labels();
        for (const CurveMark& mark : chart_.marks) name_mark(mark);
        if (!key_) add_end_labels();
        for (const CurveLine& line : chart_.lines) add_jump_labels(line);
        return std::move(scene_);
    }

private:
    std::vector<std::string> notes() const {
        std::vector<std::string> lines;
        if (!chart_.lines.empty() && !chart_.legend.empty()) lines.push_back(chart_.legend);
        lines.insert(lines.end(), chart_.notes.begin(), chart_.notes.end());
        return lines;
    }

    /// A line for each name; the y below them.
    double add_key(double top) {
        for (const CurveLine& line : chart_.lines) {
            const double y = top + label_line / 2;
            add_marker(scene_, slot(line), {chart_margin + marker_radius, y}, marker_radius, colour(line));
            scene_.parts.push_back(Text{
                {chart_margin + mark_room, y},
                shortened(line.name, canvas_.width - 2 * chart_margin - mark_room, TextStyle::label, canvas_.measure),
                colours_.ink});
            top += label_line;
        }
        return top;
    }

    /// All of it, then what is asked for; the heights of all the lines, or of what is seen of them.
    void fit_axes() {
        home_x_ = x_ = horizontal_axis(chart_);
        home_y_ = y_ = vertical_axis(chart_, x_);
        take_range(x_, canvas_.range.x);
        if (canvas_.range.x && !canvas_.range.y) y_ = vertical_axis(chart_, x_);
        take_range(y_, canvas_.range.y);
    }

    void place_plot(double top, double bottom) {
        fit_axes();
        double labels = 0;
        for (const CurveLine& line : chart_.lines)
            labels = std::max(labels, canvas_.measure.width(line.name, TextStyle::label));
        label_room_ = std::min(labels, canvas_.width * 0.42);
        labels = key_ ? 0 : label_room_ + label_indent;
        const double height = std::max(60.0, bottom - top - 2 * label_line - 6);
        const double left = chart_margin + width_of_figures(canvas_, y_, height);
        plot_ = {left, top, std::max(60.0, canvas_.width - chart_margin - labels - left), height};
        span(x_, y_, plot_);
        span(home_x_, home_y_, plot_);
        scene_.plot = Plot{plot_, x_, y_, home_x_, home_y_};
    }

    double place_y(double value) const { return y_.place(y_.log ? std::max(value, y_.low * 1e-3) : value); }
    Spot place(const CurveSpot& s) const { return {x_.place(s.x), place_y(s.y)}; }
    std::size_t slot(const CurveLine& line) const { return canvas_.slot(line.id, line.slot); }
    Colour colour(const CurveLine& line) const { return colours_.of_slot(slot(line)); }

    void add_levels() {
        for (const CurveLevel& level : chart_.levels)
            scene_.parts.push_back(Polyline{{{plot_.x, y_.place(level.y)}, {plot_.right(), y_.place(level.y)}},
                                            colours_.ink.with_alpha(150),
                                            1.5,
                                            true});
    }

    void add_level_labels() {
        const auto place_one = [&](const std::vector<Text>& offered) {
            if (const auto free = free_.first_free(offered, canvas_.measure)) scene_.parts.push_back(*free);
        };
        for (const CurveLevel& level : chart_.levels) {
            const double y = y_.place(level.y);
            std::vector<Text> offered;
            for (const double side : {-1.0, 1.0})
                for (const double share : {0.02, 0.6, 0.45, 0.3, 0.15})
                    offered.push_back(
                        {{plot_.x + share * plot_.width, y + side * 0.6 * label_line}, level.label, colours_.ink});
            place_one(offered);
            free_.take({plot_.x, y - 2, plot_.width, 4});
        }
    }

    void add_bands(const CurveLine& line) {
        for (const auto& stretch : line.stretches) {
            Band band{{}, {}, colour(line).with_alpha(48)};
            for (const CurveSpot& s : stretch) {
                band.upper.push_back({x_.place(s.x), place_y(s.high)});
                band.lower.push_back({x_.place(s.x), place_y(s.low)});
            }
            if (band.upper.size() > 1) scene_.parts.push_back(std::move(band));
        }
    }

    void add_lines(const CurveLine& line) {
        for (std::size_t i = 0; i < line.stretches.size(); ++i) {
            const auto& stretch = line.stretches[i];
            const bool by_law = i < line.by_law.size() && line.by_law[i];
            const bool remembered = i < line.remembered.size() && line.remembered[i];
            Polyline drawn{{}, colour(line), by_law ? 1.0 : 2.0, remembered};
            for (const CurveSpot& s : stretch) {
                drawn.spots.push_back(place(s));
                add_hit(line, s);
            }
            if (drawn.spots.size() == 1) scene_.parts.push_back(Circle{drawn.spots.front(), 1, colour(line)});
            if (drawn.spots.size() > 1) scene_.parts.push_back(std::move(drawn));
        }
        for (const auto& [before, after] : line.jumps)
            scene_.parts.push_back(Polyline{{place(before), place(after)}, colour(line).with_alpha(150), 1});
        for (const CurveJoin& join : line.joins) add_join(line, join);
    }

    /// A bar across the line where another source goes on.
    void add_join(const CurveLine& line, const CurveJoin& join) {
        constexpr double half = 8;
        const Spot a = place(join.before), b = place(join.after);
        const double x = (a.x + b.x) / 2, top = std::min(a.y, b.y) - half, bottom = std::max(a.y, b.y) + half;
        scene_.parts.push_back(Polyline{{{x, top}, {x, bottom}}, colour(line), 1.5});
        if (plot_.contains({x, (top + bottom) / 2}))
            scene_.hits.push_back({{x - hit_half, top, 2 * hit_half, bottom - top}, line.id + ".join", join.words});
    }

    void add_hit(const CurveLine& line, const CurveSpot& s) {
        const Spot at = place(s);
        free_.take({at.x - 3, at.y - 3, 6, 6});
        if (plot_.contains(at))
            scene_.hits.push_back({{at.x - hit_half, at.y - hit_half, 2 * hit_half, 2 * hit_half}, line.id, s.hover});
    }

    void add_printed(const CurveLine& line) {
        for (const CurveSpot& s : line.printed) {
            const Spot at = place(s);
            add_marker(scene_, slot(line), at, marker_radius, colour(line));
            free_.take({at.x - 4, at.y - 4, 8, 8});
        }
    }

    void add_mark(const CurveMark& m) {
        const double x = x_.place(m.x);
        scene_.parts.push_back(Polyline{{{x, place_y(m.low)}, {x, place_y(m.high)}}, colours_.dim, 1});
        const Spot at{x, place_y(m.y)};
        scene_.parts.push_back(Circle{at, marker_radius, colours_.ink});
        free_.take({at.x - 5, at.y - 5, 10, 10});
        scene_.hits.push_back({{at.x - hit_half, at.y - hit_half, 2 * hit_half, 2 * hit_half}, m.id, m.hover, true});
    }

    /// Its name where there is room, else only on hover.
    void name_mark(const CurveMark& m) {
        const Spot at{x_.place(m.x), place_y(m.y)};
        std::vector<Text> offered;
        for (const double dy : {0.0, -label_line, label_line})
            for (const bool right : {true, false})
                offered.push_back(
                    {{at.x + (right ? 8 : -8), at.y + dy}, m.label, colours_.dim, right ? Anchor::start : Anchor::end});
        if (const auto free = free_.first_free(offered, canvas_.measure)) scene_.parts.push_back(*free);
    }

    bool clear_of_lines(const Box& box) const {
        for (const CurveLine& line : chart_.lines)
            for (const auto& stretch : line.stretches)
                for (std::size_t i = 1; i < stretch.size(); ++i) {
                    const Spot a = place(stretch[i - 1]), b = place(stretch[i]);
                    if (box.overlaps(
                            {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x) + 1, std::abs(b.y - a.y) + 1}))
                        return false;
                }
        return true;
    }

    /// The words beside the upright line, from this height down.
    std::vector<Text> upright_words(double top) const {
        const double x = x_.place(chart_.upright->x);
        const bool right = x < plot_.x + plot_.width / 2;
        return text_lines(
            {{x + (right ? 6 : -6), top}, chart_.upright->label, colours_.ink, right ? Anchor::start : Anchor::end},
            plot_.width * 0.5, canvas_.measure);
    }

    /// Its words at the foot, or at the head where a line would run through them there.
    void add_upright() {
        if (!chart_.upright) return;
        const double x = x_.place(chart_.upright->x);
        scene_.parts.push_back(Polyline{{{x, plot_.y}, {x, plot_.bottom()}}, colours_.ink, 1.5, true});
        const auto clear = [&](const std::vector<Text>& words) {
            return std::all_of(words.begin(), words.end(),
                               [&](const Text& t) { return clear_of_lines(text_box(t, canvas_.measure)); });
        };
        const std::vector<Text> head = upright_words(plot_.y + label_line / 2 + 2);
        const std::vector<Text> foot =
            upright_words(plot_.bottom() + label_line / 2 - 2 - label_line * static_cast<double>(head.size()));
        for (const Text& part : !clear(foot) && clear(head) ? head : foot) {
            free_.take(text_box(part, canvas_.measure));
            scene_.parts.push_back(part);
        }
    }

    void add_jump_labels(const CurveLine& line) {
        for (const auto& [before, after] : line.jumps) {
            const Spot a = place(before), b = place(after);
            const Spot middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
            const std::string text = line.jump_label;
            const auto offered = [&](double dx, double dy, Anchor anchor) {
                return Text{{middle.x + dx, middle.y + dy}, text, colours_.dim, anchor};
            };
            const auto free = free_.first_free({offered(8, 0, Anchor::start), offered(-8, 0, Anchor::end),
                                                offered(8, 20, Anchor::start), offered(-8, -20, Anchor::end)},
                                               canvas_.measure);
            if (free) scene_.parts.push_back(*free);
        }
    }

    /// The order in which labels choose their places: those that end highest first.
    std::vector<const CurveLine*> from_top() const {
        std::vector<const CurveLine*> out;
        for (const CurveLine& line : chart_.lines) out.push_back(&line);
        std::stable_sort(out.begin(), out.end(),
                         [&](const CurveLine* a, const CurveLine* b) { return end_of(*a).y < end_of(*b).y; });
        return out;
    }

    void add_end_labels() {
        const std::vector<const CurveLine*> lines = from_top();
        const std::vector<double> heights = spread(lines);
        for (std::size_t i = 0; i < lines.size(); ++i) add_end_label(*lines[i], heights[i]);
    }

    /// Heights of the labels, as near to the ends of their lines as they go without touching; of lines that end further
    /// in, the ends themselves.
    std::vector<double> spread(const std::vector<const CurveLine*>& from_top) const {
        std::vector<double> heights;
        std::vector<std::size_t> at_edge;
        for (const CurveLine* line : from_top) {
            const Spot end = end_of(*line);
            if (end.x > plot_.right() - label_indent) at_edge.push_back(heights.size());
            heights.push_back(std::clamp(end.y, plot_.y, plot_.bottom()));
        }
        double least = plot_.y;
        for (const std::size_t i : at_edge) {
            heights[i] = std::max(heights[i], least);
            least = heights[i] + label_line;
        }
        double most = plot_.bottom();
        std::reverse(at_edge.begin(), at_edge.end());
        for (const std::size_t i : at_edge) {
            heights[i] = std::min(heights[i], most);
            most = heights[i] - label_line;
        }
        return heights;
    }

    /// At this height, or beside the end of its line, or as near above or below as it goes, tied to the end by a thin
    /// line.
    void add_end_label(const CurveLine& line, double height) {
        const Spot end = end_of(line);
        const std::string name = shortened(line.name, label_room_, TextStyle::label, canvas_.measure);
        const double width = canvas_.measure.width(name, TextStyle::label);
        std::vector<Text> offered = {{{end.x + label_indent, height}, name, colours_.ink}};
        for (const double step : {0.0, -1.0, 1.0, -2.0, 2.0, -3.0, 3.0, -4.0, 4.0, -5.0, 5.0, -6.0, 6.0})
            for (const double aside : {label_indent, -width - label_indent / 2, label_indent + 40})
                offered.push_back({{end.x + aside, std::clamp(end.y, plot_.y, plot_.bottom()) + step * label_line},
                                   name,
                                   colours_.ink});
        auto free = free_.first_free(offered, canvas_.measure, mark_room);
        if (!free) free = names_.first_free({offered.front()}, canvas_.measure, mark_room);
        if (!free) return; // over a line if need be, never over a name: then it is told on hover
        const Text label = *free;
        names_.take(text_box(label, canvas_.measure));
        const bool apart = std::abs(label.at.y - end.y) > 1 || label.at.x > end.x + label_indent;
        const double edge = label.at.x < end.x ? label.at.x + width + 2 : label.at.x - mark_room;
        if (apart) scene_.parts.push_back(Polyline{{end, {edge, label.at.y}}, colour(line).with_alpha(130), 1});
        add_marker(scene_, slot(line), {label.at.x - 8, label.at.y}, marker_radius + 1, colour(line));
        scene_.parts.push_back(label);
        const Box box = text_box(label, canvas_.measure);
        scene_.hits.push_back({box, line.id, line.name});
    }

    /// The last spot that is seen; of a line all out of sight the nearest edge.
    Spot end_of(const CurveLine& line) const {
        const CurveSpot* last = &line.stretches.front().front();
        for (const auto& stretch : line.stretches)
            for (const CurveSpot& s : stretch)
                if (s.x <= x_.high) last = &s;
        const Spot end = place(*last);
        return {std::clamp(end.x, plot_.x, plot_.right()), end.y};
    }

    const CurveChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    bool key_ = canvas_.width < curve_upright && chart_.lines.size() <= 8;
    FreePlaces free_, names_{{0, 0, canvas_.width, canvas_.height}}; // the second: of the other names alone
    Scene scene_;
    Box plot_;
    Axis x_, y_, home_x_, home_y_;
    double label_room_ = 0;
};

} // namespace

Scene layout(const CurveChart& chart, const Canvas& canvas) {
    return CurveLayout(chart, canvas).run();
}

} // namespace pourbook
