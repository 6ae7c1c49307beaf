#include "charts/diagram_chart.hpp"
#include "charts/place_text.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace pourbook {
namespace {

constexpr double spot_half = 6, published_radius = 3.5, end_radius = 4;

class DiagramLayout {
public:
    DiagramLayout(const DiagramChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette), free_({}) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const double top = add_head(scene_, canvas_, chart_.title, chart_.y_label);
        place_plot(top + 6, add_notes(scene_, canvas_, chart_.notes, add_origin(scene_, canvas_, chart_.origin)));
        add_horizontal_axis(scene_, canvas_, x_, plot_);
        add_vertical_axis(scene_, canvas_, y_, plot_);
        scene_.parts.push_back(
            Text{{plot_.right(), plot_.bottom() + 1.5 * label_line}, chart_.x_label, colours_.ink, Anchor::end});
        free_ = FreePlaces({plot_.x, plot_.y, plot_.width, plot_.height});
        scene_.parts.push_back(ClipTo{plot_});
        add_fields();
        for (const DiagramChartLine& line : chart_.lines) add_line(line);
        if (chart_.upright) add_upright();
        scene_.parts.push_back(ClipEnd{});
        for (const DiagramChartPoint& p : chart_.published) add_published(p);
        if (chart_.tie) add_tie();
        add_field_names();
        return std::move(scene_);
    }

private:
    void place_plot(double top, double bottom) {
        x_ = {chart_.x_low, chart_.x_high};
        y_ = {chart_.y_low, chart_.y_high};
        const double height = std::max(60.0, bottom - top - 2 * label_line - 6);
        const double left = chart_margin + width_of_figures(canvas_, y_, height);
        plot_ = {left, top, std::max(60.0, canvas_.width - chart_margin - 8 - left), height};
        span(x_, y_, plot_);
    }

    Spot place(Spot s) const { return {x_.place(s.x), y_.place(s.y)}; }

    void hit(Spot at, const std::string& id, const std::string& hover) {
        scene_.hits.push_back({{at.x - spot_half, at.y - spot_half, 2 * spot_half, 2 * spot_half}, id, hover});
    }

    void add_line(const DiagramChartLine& line) {
        Polyline drawn{{}, colours_.of_slot(line.melting ? 1 : 0), 1.8};
        for (std::size_t i = 0; i < line.spots.size(); ++i) {
            drawn.spots.push_back(place(line.spots[i]));
            hit(drawn.spots.back(), "line", line.hovers[i]);
            if (i > 0) keep_clear(drawn.spots[i - 1], drawn.spots[i]);
        }
        scene_.parts.push_back(std::move(drawn));
    }

    /// No text on a line.
    void keep_clear(Spot a, Spot b) {
        constexpr double step = 6;
        const int pieces = std::max(1, static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / step));
        for (int i = 0; i <= pieces; ++i) {
            const double q = static_cast<double>(i) / pieces;
            free_.take({a.x + q * (b.x - a.x) - 2, a.y + q * (b.y - a.y) - 2, 4, 4});
        }
    }

    void add_published(const DiagramChartPoint& p) {
        const Spot at = place({p.x, p.y});
        if (!plot_.contains(at)) return;
        scene_.parts.push_back(Circle{at, published_radius, colours_.ink});
        hit(at, "published", p.hover);
    }

    void add_upright() {
        const double x = x_.place(*chart_.upright);
        scene_.parts.push_back(Polyline{{{x, plot_.y}, {x, plot_.bottom()}}, colours_.accent, 1.5, true});
        scene_.hits.push_back({{x - 4, plot_.y, 8, plot_.height}, "composition", chart_.upright_hover});
        const bool right = x < plot_.x + plot_.width / 2;
        const Text label{{x + (right ? 6 : -6), plot_.y + label_line / 2 + 2},
                         chart_.upright_label,
                         colours_.accent,
                         right ? Anchor::start : Anchor::end};
        for (const Text& part : text_lines(label, plot_.width * 0.5, canvas_.measure)) {
            free_.take(text_box(part, canvas_.measure));
            scene_.parts.push_back(part);
        }
        keep_clear({x, plot_.y}, {x, plot_.bottom()});
    }

    void add_tie() {
        const DiagramTie& tie = *chart_.tie;
        const Spot left = place({tie.left, tie.y}), right = place({tie.right, tie.y});
        scene_.parts.push_back(Polyline{{left, right}, colours_.accent, 2.5});
        for (const Spot end : {left, right}) {
            scene_.parts.push_back(Circle{end, end_radius, colours_.accent});
            if (tie.words.size() == 1) break;
        }
        keep_clear(left, right);
        add_share(tie.words.front(), left, false);
        if (tie.words.size() > 1) add_share(tie.words.back(), right, true);
    }

    /// Outside the end it speaks of; where there is no room, above or below it with a leader to the end.
    void add_share(const std::string& words, Spot end, bool at_right) {
        const double out = at_right ? 1 : -1;
        std::vector<Text> outside, apart;
        for (const double dy : {0.0, -12.0, 12.0, -22.0, 22.0})
            outside.push_back(
                {{end.x + 9 * out, end.y + dy}, words, colours_.ink, at_right ? Anchor::start : Anchor::end});
        const double first = at_right ? -1 : 1; // one label above, the other below: no leader through the other's words
        for (const double dy : {28.0, 46.0, 64.0, 82.0, -28.0, -46.0, -64.0, -82.0})
            for (const double dx : {-14.0, 14.0, -40.0, 40.0})
                apart.push_back(
                    {{end.x + dx, end.y + first * dy}, words, colours_.ink, dx > 0 ? Anchor::start : Anchor::end});
        if (const auto free = free_.first_free(outside, canvas_.measure)) {
            scene_.parts.push_back(*free);
        } else if (const auto further = free_.first_free(apart, canvas_.measure)) {
            scene_.parts.push_back(Polyline{{end, near_edge(*further, end)}, colours_.dim, 1});
            scene_.parts.push_back(*further);
        }
    }

    Spot near_edge(const Text& text, Spot from) const {
        const Box b = text_box(text, canvas_.measure);
        return {std::clamp(from.x, b.x - 2, b.right() + 2), std::clamp(from.y, b.y + 3, b.bottom() - 3)};
    }

    /// What is liquid looks warm, the more so the more of it is; each solid has a tint of its own, two solids together
    /// stay grey.
    Colour tint_of(const std::string& name, std::size_t field) const {
        constexpr std::uint8_t strong = 28, middling = 18, weak = 10; // texts on them stay 4.5:1
        const bool melt = name.find("liquid") != std::string::npos, mixed = name.find('+') != std::string::npos;
        if (melt) return colours_.accent.with_alpha(mixed ? middling : strong);
        return mixed ? colours_.dim.with_alpha(weak) : colours_.of_slot(field).with_alpha(middling);
    }

    /// A rectangle for each run of cells of one field.
    void add_fields() {
        const double width = plot_.width / DiagramFields::columns, height = plot_.height / DiagramFields::rows;
        const std::vector<int>& of_cell = chart_.fields.of_cell;
        if (of_cell.empty()) return;
        for (int row = 0; row < DiagramFields::rows; ++row)
            for (int from = 0, to = 0; from < DiagramFields::columns; from = to) {
                const auto at = [&](int column) {
                    return of_cell[static_cast<std::size_t>(row * DiagramFields::columns + column)];
                };
                while (to < DiagramFields::columns && at(to) == at(from)) ++to;
                if (at(from) < 0 || chart_.fields.names[static_cast<std::size_t>(at(from))] == "not drawn") continue;
                const auto field = static_cast<std::size_t>(at(from));
                scene_.parts.push_back(Rectangle{
                    {plot_.x + from * width, plot_.bottom() - (row + 1) * height, (to - from) * width, height},
                    tint_of(chart_.fields.names[field], field)});
            }
    }

    Spot middle_of(int cell) const {
        const int column = cell % DiagramFields::columns, row = cell / DiagramFields::columns;
        return {plot_.x + (column + 0.5) / DiagramFields::columns * plot_.width,
                plot_.bottom() - (row + 0.5) / DiagramFields::rows * plot_.height};
    }

    int field_at(Spot s) const {
        const int column = static_cast<int>((s.x - plot_.x) / plot_.width * DiagramFields::columns);
        const int row = static_cast<int>((plot_.bottom() - s.y) / plot_.height * DiagramFields::rows);
        if (column < 0 || row < 0 || column >= DiagramFields::columns || row >= DiagramFields::rows) return -1;
        return chart_.fields.of_cell[static_cast<std::size_t>(row * DiagramFields::columns + column)];
    }

    bool inside(const Text& text, int field) const {
        const Box b = text_box(text, canvas_.measure);
        return field_at({b.x, text.at.y}) == field && field_at({b.right(), text.at.y}) == field;
    }

    /// Each field's name as near to its middle as it fits; a field too small for its name stays without.
    void add_field_names() {
        std::map<int, std::vector<int>> cells;
        for (int i = 0; i < static_cast<int>(chart_.fields.of_cell.size()); ++i)
            if (const int field = chart_.fields.of_cell[static_cast<std::size_t>(i)]; field >= 0)
                cells[field].push_back(i);
        for (auto& [field, its] : cells) {
            Spot middle;
            for (const int cell : its) {
                middle.x += middle_of(cell).x / static_cast<double>(its.size());
                middle.y += middle_of(cell).y / static_cast<double>(its.size());
            }
            std::stable_sort(its.begin(), its.end(), [&](int a, int b) { return away(a, middle) < away(b, middle); });
            std::vector<Text> offered;
            for (const int cell : its) {
                const Text text{middle_of(cell), chart_.fields.names[static_cast<std::size_t>(field)], colours_.ink,
                                Anchor::middle};
                if (inside(text, field)) offered.push_back(text);
            }
            if (const auto free = free_.first_free(offered, canvas_.measure)) scene_.parts.push_back(*free);
        }
    }

    double away(int cell, Spot from) const {
        const Spot s = middle_of(cell);
        return std::hypot(s.x - from.x, s.y - from.y);
    }

    const DiagramChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    FreePlaces free_;
    Scene scene_;
    Box plot_;
    Axis x_, y_;
};

} // namespace

Scene layout(const DiagramChart& chart, const Canvas& canvas) {
    return DiagramLayout(chart, canvas).run();
}

} // namespace pourbook
