#include "charts/field_chart.hpp"

#include "charts/contour.hpp"
#include "charts/magnet_drawing.hpp"
#include "charts/place_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr int flux_lines = 14;
constexpr Colour out_of_picture{0xE6, 0x9F, 0x00}, into_picture{0x56, 0xB4, 0xE9}; // of the series (palette.hpp)
constexpr double least_shown = 0.02;                                               // of the peak

class FieldLayout {
public:
    FieldLayout(const FieldChart& chart, const Canvas& canvas)
        : chart_(chart), canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const double top = add_head(scene_, canvas_, chart_.title, chart_.subtitle);
        double bottom = add_origin(scene_, canvas_, chart_.origin);
        if (!chart_.cautions.empty()) {
            bottom -= label_line;
            scene_.parts.push_back(Text{
                {chart_margin, bottom + label_line / 2},
                shortened(chart_.cautions.front(), canvas_.width - 2 * chart_margin, TextStyle::label, canvas_.measure),
                colours_.warning});
        }
        bottom = add_notes(scene_, canvas_, chart_.notes, bottom);
        bottom -= label_line + 4;
        place(top, bottom);
        scene_.parts.push_back(ClipTo{plot_});
        add_wall();
        add_currents();
        add_lines();
        add_magnet(scene_, chart_.magnet, middle_, scale_);
        add_arrow();
        scene_.parts.push_back(ClipEnd{});
        add_legend(bottom + 2 + label_line / 2);
        return std::move(scene_);
    }

private:
    void place(double top, double bottom) {
        const double wide = chart_.grid.r_m.back(), tall = chart_.grid.z_m.back();
        scale_ = std::min((canvas_.width - 2 * chart_margin) / (2 * wide), std::max(20.0, bottom - top) / (2 * tall));
        middle_ = {canvas_.width / 2, (top + bottom) / 2};
        plot_ = {middle_.x - wide * scale_, middle_.y - tall * scale_, 2 * wide * scale_, 2 * tall * scale_};
    }

    void add_wall() {
        for (const double side : {-1.0, 1.0}) {
            const double inner = chart_.bore.inner_radius_m * scale_, outer = chart_.bore.outer_radius_m * scale_;
            scene_.parts.push_back(
                Rectangle{{middle_.x + (side < 0 ? -outer : inner), plot_.y, outer - inner, plot_.height},
                          colours_.dim.with_alpha(60)});
        }
    }

    /// Half way to the neighbours on both sides.
    static std::pair<double, double> cell(const std::vector<double>& at, std::size_t i) {
        const double before = i ? (at[i - 1] + at[i]) / 2 : at[i] - (at[1] - at[0]) / 2,
                     after = i + 1 < at.size() ? (at[i] + at[i + 1]) / 2 : at[i] + (at[i] - at[i - 1]) / 2;
        return {before, after};
    }

    void add_currents() {
        const eddy::FieldGrid& g = chart_.grid;
        const std::size_t radii = g.r_m.size();
        for (std::size_t j = 0; j < g.z_m.size(); ++j)
            for (std::size_t i = 0; i < radii; ++i) {
                const double share = g.current_A_m2[j * radii + i] / chart_.peak_A_m2;
                if (!(std::abs(share) > least_shown)) continue;
                auto [r0, r1] = cell(g.r_m, i);
                r0 = std::max(r0, chart_.bore.inner_radius_m);
                r1 = std::min(r1, chart_.bore.outer_radius_m);
                const auto [z0, z1] = cell(g.z_m, j);
                add_cell(-r1, -r0, z0, z1, share);
                add_cell(r0, r1, z0, z1, -share);
            }
    }

    /// The grid's magnet points its north pole down, the picture's up, which turns the currents round: what ran out of
    /// the picture on the right runs into it.
    void add_cell(double x0, double x1, double z0, double z1, double out) {
        const Colour colour = out > 0 ? out_of_picture : into_picture;
        scene_.parts.push_back(
            Rectangle{{middle_.x + x0 * scale_, middle_.y + z0 * scale_, (x1 - x0) * scale_, (z1 - z0) * scale_ + 0.2},
                      colour.with_alpha(static_cast<std::uint8_t>(30 + 215 * std::abs(out)))});
    }

    void add_lines() {
        double low = 0, high = 0;
        for (const double f : chart_.grid.flux_T_m2) {
            low = std::min(low, f);
            high = std::max(high, f);
        }
        const double step = (high - low) / flux_lines;
        for (int k = -flux_lines; k < flux_lines; ++k)
            if (const double level = (k + 0.5) * step; level > low && level < high) add_level(level);
    }

    void add_level(double level) {
        for (const std::vector<Spot>& line : contour(chart_.grid.r_m, chart_.grid.z_m, chart_.grid.flux_T_m2, level))
            for (const double side : {-1.0, 1.0}) {
                Polyline drawn{{}, colours_.ink.with_alpha(150), 1};
                for (const Spot& s : line)
                    drawn.spots.push_back({middle_.x + side * s.x * scale_, middle_.y + s.y * scale_});
                scene_.parts.push_back(std::move(drawn));
            }
    }

    /// Which way it falls.
    void add_arrow() {
        const double from = middle_.y + chart_.magnet.whole_length_m() / 2 * scale_ + 8, to = from + 26;
        scene_.parts.push_back(Polyline{{{middle_.x, from}, {middle_.x, to}}, colours_.accent, 2});
        scene_.parts.push_back(
            Polygon{{{middle_.x - 5, to - 4}, {middle_.x + 5, to - 4}, {middle_.x, to + 6}}, colours_.accent});
    }

    void add_legend(double y) {
        const double gap = 16, square = 10;
        double x = chart_margin;
        const auto add = [&](Colour colour, const std::string& words) {
            if (x + square + 6 + canvas_.measure.width(words, TextStyle::label) > canvas_.width - chart_margin) return;
            scene_.parts.push_back(Rectangle{{x, y - square / 2, square, square}, colour});
            scene_.parts.push_back(Text{{x + square + 6, y}, words, colours_.ink});
            x += square + 6 + canvas_.measure.width(words, TextStyle::label) + gap;
        };
        add(out_of_picture, "current out of the picture");
        add(into_picture, "into the picture");
        add(colours_.ink.with_alpha(150), "flux");
    }

    const FieldChart& chart_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    Box plot_;
    Spot middle_;
    double scale_ = 1; // points a metre
};

} // namespace

Scene layout(const FieldChart& chart, const Canvas& canvas) {
    return FieldLayout(chart, canvas).run();
}

} // namespace pourbook
