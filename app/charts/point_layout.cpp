#include "charts/point_chart.hpp"

#include "charts/marker.hpp"
#include "charts/place_text.hpp"
#include "core/materials/record.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double point_radius = 4;
constexpr double point_half = 8;
constexpr std::uint8_t bar_alpha = 110;

class PointLayout {
public:
    PointLayout(const PointChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette), free_({}), across_({}) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const bool empty = chart_.points.empty();
        double top = add_head(scene_, canvas_, chart_.title, empty ? "no metal has both values" : chart_.subtitle);
        const double bottom = add_notes(add_origin(scene_, canvas_, chart_.origin));
        if (empty) return std::move(scene_);
        for (const std::string& line : lines_of(chart_.y_label)) {
            scene_.parts.push_back(Text{{chart_margin, top + label_line / 2}, fitted(line), colours_.ink});
            top += label_line;
        }
        const std::vector<std::string> along = lines_of(chart_.x_label);
        place_plot(top + 6, bottom - label_line * static_cast<double>(along.size() - 1));
        add_horizontal_axis(scene_, canvas_, x_, plot_);
        add_vertical_axis(scene_, canvas_, y_, plot_);
        for (std::size_t i = 0; i < along.size(); ++i)
            scene_.parts.push_back(Text{{plot_.right(), plot_.bottom() + (1.5 + static_cast<double>(i)) * label_line},
                                        fitted(along[i]),
                                        colours_.ink,
                                        Anchor::end});
        scene_.parts.push_back(ClipTo{plot_});
        add_line();
        for (const bool faded : {true, false}) add_marks(faded);
        scene_.parts.push_back(ClipEnd{});
        add_names();
        return std::move(scene_);
    }

private:
    std::string fitted(const std::string& text) const {
        return shortened(text, canvas_.width - 2 * chart_margin, TextStyle::label, canvas_.measure);
    }

    bool any_remembered() const {
        return std::any_of(chart_.points.begin(), chart_.points.end(), [](const PointMark& p) { return p.remembered; });
    }

    std::string legend(std::size_t without) const {
        std::string text = "bars: 90 % interval";
        if (any_remembered()) text += " · ○ rests on a remembered value";
        if (without > 0)
            text += " · " + std::to_string(without) + " of " + std::to_string(chart_.points.size()) +
                    " without room for a name";
        return text;
    }

    std::vector<std::string> lines_of(const std::string& text) const {
        return wrapped(text, canvas_.width - 2 * chart_margin, TextStyle::label, canvas_.measure);
    }

    void add_lines(const std::vector<std::string>& lines, double top) {
        for (const std::string& line : lines) {
            scene_.parts.push_back(Text{{chart_margin, top + label_line / 2}, fitted(line), colours_.dim});
            top += label_line;
        }
    }

    /// Leaves room for the legend above the notes: `add_names` knows how many names found a place.
    double add_notes(double bottom) {
        std::vector<std::string> lines;
        for (const std::string& note : chart_.notes)
            for (std::string& line : lines_of(note)) lines.push_back(std::move(line));
        const double top = bottom - label_line * static_cast<double>(lines.size());
        add_lines(lines, top);
        const std::size_t most = chart_.points.empty() ? 0 : lines_of(legend(chart_.points.size())).size();
        legend_top_ = top - label_line * static_cast<double>(most);
        return legend_top_ - 2;
    }

    Axis fit(PointReach PointMark::*side) const {
        double small = no_number, large = no_number;
        Axis axis{no_number, no_number};
        for (const PointMark& p : chart_.points) {
            const PointReach& r = p.*side;
            small = std::fmin(small, r.middle); // fmin and fmax pass over NaN
            large = std::fmax(large, r.middle);
            axis.low = std::fmin(axis.low, r.low);
            axis.high = std::fmax(axis.high, r.high);
        }
        axis.log = small > 0 && large > log_beyond * small;
        if (axis.log) axis.low = std::max(axis.low, small / 10); // a bar may reach to zero
        if (!axis.log && axis.low < 0 && small >= 0) axis.low = 0;
        const double room = axis.log ? 0 : 0.03 * (axis.high - axis.low);
        if (axis.low - room > 0 || small < 0) axis.low -= room;
        axis.high += room;
        round_out(axis);
        return axis;
    }

    void place_plot(double top, double bottom) {
        Axis home_x = x_ = fit(&PointMark::x);
        Axis home_y = y_ = fit(&PointMark::y);
        take_range(x_, canvas_.range.x);
        take_range(y_, canvas_.range.y);
        const double height = std::max(60.0, bottom - top - 2 * label_line - 6);
        const double left = chart_margin + width_of_figures(canvas_, y_, height);
        plot_ = {left, top, std::max(60.0, canvas_.width - chart_margin - 4 - left), height};
        span(x_, y_, plot_);
        span(home_x, home_y, plot_);
        scene_.plot = Plot{plot_, x_, y_, home_x, home_y};
        free_ = across_ =
            FreePlaces({plot_.x, plot_.y - label_line / 2, canvas_.width - 2 - plot_.x, plot_.height + label_line / 2});
    }

    static double place(const Axis& axis, double value) {
        return axis.place(axis.log ? std::max(value, axis.low * 1e-3) : value);
    }
    Spot middle(const PointMark& p) const { return {place(x_, p.x.middle), place(y_, p.y.middle)}; }

    void add_line() {
        Polyline joined{{}, colours_.ink.with_alpha(150), 1.5};
        for (const Spot& s : chart_.line) joined.spots.push_back({place(x_, s.x), place(y_, s.y)});
        for (std::size_t i = 1; i < joined.spots.size(); ++i) take(joined.spots[i - 1], joined.spots[i]);
        if (joined.spots.size() > 1) scene_.parts.push_back(std::move(joined));
    }

    /// No name goes into the box between these two.
    void take(Spot a, Spot b) {
        free_.take({std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)});
    }

    Colour colour(const PointMark& p) const {
        if (p.pinned) return colours_.of_slot(canvas_.slot(p.id, p.slot));
        return p.faded ? colours_.dim.with_alpha(bar_alpha) : colours_.other;
    }

    void add_bar(Spot from, Spot to, Colour colour) {
        if (std::hypot(to.x - from.x, to.y - from.y) >= 1) scene_.parts.push_back(Polyline{{from, to}, colour, 1});
    }

    /// What is in the way of names: every mark, and the bars of those in front.
    void take_marks(bool faded) {
        for (const PointMark& p : chart_.points) {
            if (p.faded != faded) continue;
            const Spot at = middle(p);
            const Box mark{at.x - point_radius, at.y - point_radius, 2 * point_radius, 2 * point_radius};
            free_.take(mark);
            across_.take(mark);
            if (faded) continue;
            take({place(x_, p.x.low), at.y}, {place(x_, p.x.high), at.y});
            take({at.x, place(y_, p.y.low)}, {at.x, place(y_, p.y.high)});
        }
    }

    void add_marks(bool faded) {
        for (const PointMark& p : chart_.points) {
            const Spot at = middle(p);
            if (p.faded != faded || !plot_.contains(at)) continue;
            const Colour ink = colour(p), thin = ink.with_alpha(faded ? 60 : bar_alpha);
            add_bar({place(x_, p.x.low), at.y}, {place(x_, p.x.high), at.y}, thin);
            add_bar({at.x, place(y_, p.y.low)}, {at.x, place(y_, p.y.high)}, thin);
            if (p.pinned)
                add_marker(scene_, canvas_.slot(p.id, p.slot), at, point_radius + 2, ink, !p.remembered);
            else
                scene_.parts.push_back(Circle{at, point_radius, ink, p.remembered ? 1.5 : 0.0});
            scene_.hits.push_back(
                {{at.x - point_half, at.y - point_half, 2 * point_half, 2 * point_half}, p.id, p.hover, true});
        }
    }

    /// Beside the point, then around it, then up to `furthest` points further off.
    std::vector<Text> offered(Spot at, const std::string& name, Colour ink, double furthest) const {
        std::vector<Text> out;
        const double half = canvas_.measure.width(name, TextStyle::label) / 2;
        const double middle = std::min(at.x, canvas_.width - 3 - half); // moved left where the edge is near
        for (double far = 0; far <= furthest; far += 14) {
            const double aside = point_radius + 5 + far, up = label_line * 0.75 + far;
            out.push_back({{at.x + aside, at.y}, name, ink, Anchor::start});
            out.push_back({{at.x + aside - 3, at.y - up + 4}, name, ink, Anchor::start});
            out.push_back({{at.x + aside - 3, at.y + up - 4}, name, ink, Anchor::start});
            out.push_back({{at.x - aside, at.y}, name, ink, Anchor::end});
            out.push_back({{at.x - aside + 3, at.y - up + 4}, name, ink, Anchor::end});
            out.push_back({{at.x - aside + 3, at.y + up - 4}, name, ink, Anchor::end});
            out.push_back({{middle, at.y - up}, name, ink, Anchor::middle});
            out.push_back({{middle, at.y + up}, name, ink, Anchor::middle});
        }
        return out;
    }

    void tie(Spot at, const Text& label, Colour ink) {
        const Box box = text_box(label, canvas_.measure);
        const Spot near{std::clamp(at.x, box.x - 2, box.right() + 2), std::clamp(at.y, box.y + 4, box.bottom() - 4)};
        if (std::hypot(near.x - at.x, near.y - at.y) > 12)
            scene_.parts.push_back(Polyline{{at, near}, ink.with_alpha(bar_alpha), 1});
    }

    /// False where no place is free.
    bool add_name(const PointMark& p) {
        if (!plot_.contains(middle(p))) return true; // moved out of sight
        const bool front = !p.faded || p.pinned;
        const double furthest = !front ? 0 : chart_.line.empty() ? 14 : 56;
        const Spot at = middle(p);
        const Colour ink = p.faded && !p.pinned ? colours_.dim : colours_.ink;
        const std::vector<Text> places = offered(at, p.name, ink, furthest);
        auto label = free_.first_free(places, canvas_.measure);
        if (!label && front && !chart_.line.empty()) label = across_.first_free(places, canvas_.measure);
        if (!label) return false;
        free_.take(text_box(*label, canvas_.measure));
        across_.take(text_box(*label, canvas_.measure));
        tie(at, *label, ink);
        scene_.parts.push_back(*label);
        return true;
    }

    void add_names() {
        std::size_t without = 0;
        for (const bool faded : {false, true}) take_marks(faded);
        // the pinned choose first, then those in front, if need be across a bar or the line
        for (const bool pinned : {true, false})
            for (const bool faded : {false, true})
                for (const PointMark& p : chart_.points)
                    if (p.faded == faded && p.pinned == pinned && !add_name(p)) ++without;
        add_lines(lines_of(legend(without)), legend_top_);
    }

    const PointChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    FreePlaces free_, across_; // the second: bars and the line count for nothing
    Scene scene_;
    Box plot_;
    Axis x_, y_;
    double legend_top_ = 0;
};

} // namespace

Scene layout(const PointChart& chart, const Canvas& canvas) {
    return PointLayout(chart, canvas).run();
}

} // namespace pourbook
