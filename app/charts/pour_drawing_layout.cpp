#include "charts/glow.hpp"
#include "charts/place_text.hpp"
#include "charts/pour_drawing.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double bars_share = 0.42, bar_thick = 12, limit_height = 2 * label_line + bar_thick + 14;
constexpr double pour_upright = 350;             // points of width, below which there are more lines
constexpr double dimension_room = 74, cup = 1.6; // cup over the top of the sprue

class PourLayout {
public:
    PourLayout(const PourDrawing& drawing, const Canvas& canvas)
        : d_(drawing), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
        scene_.origin = drawing.origin;
    }

    Scene run() {
        top_ = add_head(scene_, canvas_, d_.title, d_.heat);
        bottom_ = canvas_.height - chart_margin;
        if (!d_.cautions.empty()) add_caution();
        const bool beside = canvas_.width > 1.1 * (bottom_ - top_);
        const double bars_width = beside ? bars_share * canvas_.width : canvas_.width - 2 * chart_margin;
        if (beside) {
            add_limits({canvas_.width - chart_margin - bars_width, top_, bars_width, bottom_ - top_});
            add_section({chart_margin, top_, canvas_.width - bars_width - 3 * chart_margin, bottom_ - top_});
        } else {
            const double height = static_cast<double>(d_.limits.size()) * limit_height;
            add_limits({chart_margin, bottom_ - height, bars_width, height});
            add_section({chart_margin, top_, canvas_.width - 2 * chart_margin, bottom_ - height - top_ - chart_margin});
        }
        return std::move(scene_);
    }

private:
    void words(Spot at, const std::string& text, Colour colour, Anchor anchor = Anchor::start,
               TextStyle style = TextStyle::label) {
        scene_.parts.push_back(Text{at, text, colour, anchor, style});
    }
    void fill(double left, double right, double top, double bottom, Colour colour) {
        if (right > left && bottom > top)
            scene_.parts.push_back(Rectangle{{left, top, right - left, bottom - top}, colour});
    }

    void add_caution() {
        const std::size_t most = canvas_.width < pour_upright ? 8 : 4; // what can hurt is said whole
        const auto lines = fitted_lines("Caution: " + d_.cautions.front(), canvas_.width - 2 * chart_margin, most,
                                        TextStyle::label, canvas_.measure);
        bottom_ -= label_line * static_cast<double>(lines.size());
        for (std::size_t i = 0; i < lines.size(); ++i)
            words({chart_margin, bottom_ + label_line * (static_cast<double>(i) + 0.5)}, lines[i], colours_.warning);
        bottom_ -= 4;
    }

    double metres_high() const {
        return std::max(d_.height_m + d_.feeder_height_m, d_.sprue_height_m) + 2 * d_.mould_wall_m;
    }
    double metres_wide() const {
        return std::max(d_.outside_m, d_.feeder_m) + 4 * d_.mould_wall_m + cup * d_.sprue_top_m +
               (d_.sprue_top_m > 0 ? 0.25 * d_.outside_m : 0);
    }

    void add_section(const Box& room) {
        if (d_.height_m <= 0 || room.height < 60) return;
        const double name = d_.sprue_height_m > 0 ? label_line : 0; // above the sprue
        const double width = room.width - 2 * dimension_room, height = room.height - 2.5 * label_line - name;
        scale_ = std::min(height / metres_high(), width / metres_wide());
        floor_ = room.y + name + height / 2 + metres_high() * scale_ / 2 - d_.mould_wall_m * scale_;
        const double sprue = (cup * d_.sprue_top_m + 0.25 * d_.outside_m) * scale_ * (d_.sprue_top_m > 0 ? 1 : 0);
        axis_ = room.x + room.width / 2 + sprue / 2;
        add_mould();
        add_metal();
        add_sprue();
        add_pattern();
        add_dimensions();
        if (!d_.pattern.empty())
            words({room.x + room.width / 2, room.bottom() - label_line / 2},
                  shortened(d_.pattern + (canvas_.width < pour_upright ? "" : " (dashed)"), room.width,
                            TextStyle::label, canvas_.measure),
                  colours_.dim, Anchor::middle);
    }

    double ceiling() const { return floor_ - d_.height_m * scale_; }
    double half() const { return d_.outside_m * scale_ / 2; }

    void add_mould() {
        const double wall = d_.mould_wall_m * scale_;
        if (wall <= 0) return;
        fill(axis_ - half() - wall, axis_ + half() + wall, ceiling() - wall, floor_ + wall, colours_.pressed);
        const double feeder = d_.feeder_m * scale_ / 2;
        if (feeder > 0)
            fill(axis_ - feeder - wall, axis_ + feeder + wall, ceiling() - d_.feeder_height_m * scale_, ceiling(),
                 colours_.pressed);
    }

    void add_metal() {
        const Colour melt = glow(d_.pour_K), shown = melt.red < 60 ? Colour{0xA8, 0xAE, 0xB4} : melt;
        const double feeder = d_.feeder_m * scale_ / 2, bore = d_.bore_m * scale_ / 2;
        fill(axis_ - half(), axis_ + half(), ceiling(), floor_, shown);
        if (feeder > 0) fill(axis_ - feeder, axis_ + feeder, ceiling() - d_.feeder_height_m * scale_, ceiling(), shown);
        if (bore <= 0) return;
        fill(axis_ - bore, axis_ + bore, ceiling(), floor_, colours_.pressed); // the core
        if (2 * bore > canvas_.measure.width("core", TextStyle::label) + 6)
            words({axis_, (ceiling() + floor_) / 2}, "core", colours_.dim, Anchor::middle);
    }

    void add_sprue() {
        if (d_.sprue_height_m <= 0) return;
        const Colour melt = glow(d_.pour_K), shown = melt.red < 60 ? Colour{0xA8, 0xAE, 0xB4} : melt;
        const double foot = d_.sprue_foot_m * scale_ / 2, top = d_.sprue_top_m * scale_ / 2;
        const double x = axis_ - half() - d_.mould_wall_m * scale_ - 0.2 * half() - cup * top;
        const double head = floor_ - d_.sprue_height_m * scale_;
        scene_.parts.push_back(
            Polygon{{{x - top, head}, {x + top, head}, {x + foot, floor_}, {x - foot, floor_}}, shown});
        scene_.parts.push_back(Polygon{
            {{x - cup * top, head - top}, {x + cup * top, head - top}, {x + top, head}, {x - top, head}}, shown});
        fill(x - foot, axis_ - half(), floor_ - 2 * foot, floor_, shown); // the gate
        words({x, head - top - label_line / 2}, "sprue", colours_.dim, Anchor::middle);
    }

    void add_pattern() {
        if (d_.pattern_height_m <= 0) return;
        const double outside = d_.pattern_outside_m * scale_ / 2, top = floor_ - d_.pattern_height_m * scale_;
        scene_.parts.push_back(Polyline{{{axis_ - outside, floor_},
                                         {axis_ - outside, top},
                                         {axis_ + outside, top},
                                         {axis_ + outside, floor_},
                                         {axis_ - outside, floor_}},
                                        colours_.ink,
                                        1.2,
                                        true});
    }

    void add_dimensions() {
        const double x = axis_ + std::max(half() + d_.mould_wall_m * scale_, d_.feeder_m * scale_ / 2) + 12;
        scene_.parts.push_back(Polyline{{{x, ceiling()}, {x, floor_}}, colours_.dim, 1});
        for (const double y : {ceiling(), floor_})
            scene_.parts.push_back(Polyline{{{x - 4, y}, {x + 4, y}}, colours_.dim, 1});
        words({x + 8, (ceiling() + floor_) / 2}, d_.height, colours_.ink);
        const double below = floor_ + d_.mould_wall_m * scale_ + label_line / 2 + 4;
        words({axis_, below}, (d_.bore.empty() ? "" : d_.bore + " / ") + d_.outside, colours_.ink, Anchor::middle);
    }

    /// One below the other, in two columns where there is too little height.
    void add_limits(const Box& room) {
        const std::size_t count = d_.limits.size();
        const bool two = static_cast<double>(count) * limit_height > room.height + 1;
        const std::size_t rows = two ? (count + 1) / 2 : count;
        const double width = two ? (room.width - 2 * chart_margin) / 2 : room.width;
        const double top = room.y + std::max(0.0, (room.height - static_cast<double>(rows) * limit_height) / 3);
        for (std::size_t i = 0; i < count; ++i)
            add_limit(d_.limits[i], {room.x + static_cast<double>(i / rows) * (width + 2 * chart_margin),
                                     top + static_cast<double>(i % rows) * limit_height, width, limit_height});
    }

    void add_limit(const LimitBar& bar, const Box& room) {
        const bool known = !bar.mine.empty(), over = bar.share > 1, close = bar.share > 0.9;
        const Colour colour = over ? colours_.warning : close ? colours_.accent : colours_.dim;
        words({room.x, room.y + label_line / 2}, bar.name + " needs " + bar.needed, colours_.ink);
        const double y = room.y + label_line + 2, right = known ? room.width / 1.25 : room.width;
        if (known) {
            fill(room.x, room.x + right, y, y + bar_thick, colours_.line);
            fill(room.x, room.x + right * std::min(bar.share, 1.25), y, y + bar_thick, colour);
            fill(room.x + right - 1, room.x + right + 1, y - 3, y + bar_thick + 3, colours_.ink);
        } else
            for (double x = room.x; x < room.right() - 6; x += 12) // nobody said what there is
                scene_.parts.push_back(Polyline{{{x, y + bar_thick}, {x + 6, y}}, colours_.line, 1});
        const std::string verdict = !known  ? "mine: not entered"
                                    : over  ? "mine: " + bar.mine + ", not enough"
                                    : close ? "mine: " + bar.mine + ", just enough"
                                            : "mine: " + bar.mine;
        words({room.x, y + bar_thick + label_line / 2 + 2}, verdict, over ? colours_.warning : colours_.dim);
    }

    const PourDrawing& d_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    double top_ = 0, bottom_ = 0, scale_ = 0, floor_ = 0, axis_ = 0;
};

} // namespace

Scene layout(const PourDrawing& drawing, const Canvas& canvas) {
    return PourLayout(drawing, canvas).run();
}

} // namespace pourbook
