#include "charts/setup_drawing.hpp"

#include "charts/magnet_drawing.hpp"
#include "charts/place_text.hpp"
#include "charts/wall_drawing.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr Colour north{0xD5, 0x5E, 0x00}, south{0x00, 0x72, 0xB2}; // of the series (palette.hpp)
constexpr double tick = 4;                                         // at the ends of a dimension line

class SetupDrawing {
public:
    SetupDrawing(const DropSetup& setup, UnitSystem units, const Canvas& canvas)
        : inputs_(setup.inputs), pieces_(inputs_.outlines()), whole_(inputs_.whole_bore()), units_(units),
          canvas_(canvas), colours_(canvas.palette) {
        scene_.width = canvas.width;
        scene_.height = canvas.height;
    }

    Scene run() {
        const double side = add_whole_tube();
        choose_scale(side);
        add_walls();
        add_magnet(scene_, inputs_.magnet(), {axis_, top_ + height_ / 2}, scale_);
        add_dimensions();
        return std::move(scene_);
    }

private:
    double bore() const { return whole_.inner_radius_m; }
    double outside() const { return whole_.outer_radius_m; }
    bool of_parts() const { return pieces_.size() > 1 || pieces_.front().tapers(); }
    double length() const { return inputs_.tube_length_m.value; }
    double magnet_radius() const { return inputs_.outer_radius_m.value; }
    double magnet_length() const { return inputs_.magnet().whole_length_m(); }

    /// Without the nearest sixty-fourth, for which a drawing has no room.
    std::string metres(double m) const {
        const std::string text = length_text(std::round(m * 1e6) / 1e6, units_);
        return text.substr(0, text.find(" ("));
    }

    void fill(double x, double y, double width, double height, Colour colour) {
        scene_.parts.push_back(Rectangle{{x, y, width, height}, colour});
    }
    void words(double x, double y, const std::string& text, Anchor anchor, Colour colour) {
        scene_.parts.push_back(Text{{x, y}, text, colour, anchor});
    }

    /// The whole tube to scale at the left, its length beside it; returns where the section may begin.
    double add_whole_tube() {
        const double top = chart_margin;
        double height = canvas_.height - 2 * chart_margin;
        double scale = height / length();
        if (2 * outside() * scale > 0.25 * canvas_.width) return chart_margin; // short: the section shows all of it
        scale = std::min(scale, 0.12 * canvas_.width / (2 * outside()));       // the section needs the width
        height = length() * scale;
        const double width = std::max(3.0, 2 * outside() * scale);
        const double x = chart_margin + 14, wall = std::max(1.0, (outside() - bore()) * scale);
        if (of_parts()) {
            for (const eddy::WallOutline& o : pieces_)
                add_wall(scene_, o, {{x + width / 2, top}, width / (2 * outside()), scale}, colour_of(o));
        } else {
            fill(x, top, wall, height, colours_.dim);
            fill(x + width - wall, top, wall, height, colours_.dim);
        }
        const double r = std::max(1.0, magnet_radius() * scale), half = std::max(1.0, magnet_length() / 2 * scale);
        const double middle = x + width / 2, y = top + height * 0.35;
        fill(middle - r, y - half, 2 * r, half, north);
        fill(middle - r, y, 2 * r, half, south);
        dimension_upright(chart_margin + 4, top, top + height);
        words(x + width + 6, top + height - label_line / 2, metres(length()), Anchor::start, colours_.ink);
        return x + width + 12 + canvas_.measure.width(metres(length()), TextStyle::label);
    }

    /// Right of the section, beside its dimension line.
    double room_for_labels() const {
        double widest = 80;
        for (const auto& [name, m] : {std::pair{"magnet ", 2 * magnet_radius()},
                                      {"length ", magnet_length()},
                                      {"hole ", 2 * inputs_.inner_radius_m.value},
                                      {"wall ", outside() - bore()},
                                      {"gap ", bore() - magnet_radius()}})
            widest = std::max(widest, canvas_.measure.width(name + metres(m), TextStyle::label));
        return widest + 20;
    }

    /// Bore, walls and the magnet's length fit, with room for the dimensions.
    void choose_scale(double left) {
        const double labels = room_for_labels();
        const double room_x = std::max(60.0, canvas_.width - left - labels - chart_margin);
        const double room_y = std::max(60.0, canvas_.height - 2 * chart_margin - 4.5 * label_line);
        const double shown = std::min(length(), 2.2 * std::max(magnet_length(), 1.2 * bore()));
        scale_ = std::min(room_x / (2 * outside()), room_y / shown);
        axis_ = left + room_x / 2;
        left_ = left;
        top_ = chart_margin + 2 * label_line;
        height_ = shown * scale_;
        cut_ = shown < 0.999 * length();
    }

    void add_walls() {
        if (of_parts()) return add_pieces();
        const double wall = (outside() - bore()) * scale_;
        for (const double side : {-1.0, 1.0}) {
            const double x = side < 0 ? axis_ - outside() * scale_ : axis_ + bore() * scale_;
            fill(x, top_, wall, height_, colours_.dim);
            hatch(x, wall);
            if (cut_)
                for (const double y : {top_, top_ + height_}) break_line(x - 4, x + wall + 4, y);
        }
        add_axis();
    }

    /// All of the wall in the section's height: across to scale, along as much shorter as it must be.
    void add_pieces() {
        for (const eddy::WallOutline& o : pieces_)
            add_wall(scene_, o, {{axis_, top_}, scale_, height_ / length()}, colour_of(o));
        add_axis();
    }

    void add_axis() {
        scene_.parts.push_back(
            Polyline{{{axis_, top_ - 6}, {axis_, top_ + height_ + 6}}, colours_.dim.with_alpha(140), 1, true});
    }

    /// The tube itself as every wall; what is put to it in colours of its own.
    Colour colour_of(const eddy::WallOutline& o) const {
        return o.piece == 0 ? colours_.dim : colours_.of_slot(o.piece);
    }

    /// Slanted lines, as sections are drawn.
    void hatch(double x, double width) {
        scene_.parts.push_back(ClipTo{{x, top_, width, height_}});
        for (double y = top_; y < top_ + height_ + width; y += 9)
            scene_.parts.push_back(Polyline{{{x, y}, {x + width, y - width}}, colours_.ground.with_alpha(150), 1});
        scene_.parts.push_back(ClipEnd{});
    }

    void break_line(double from, double to, double y) {
        std::vector<Spot> spots;
        constexpr int waves = 6;
        for (int i = 0; i <= waves; ++i)
            spots.push_back({from + (to - from) * i / waves, y + (i == 0 || i == waves ? 0 : i % 2 ? -3 : 3)});
        scene_.parts.push_back(Polyline{spots, colours_.ink, 1.5});
    }

    void dimension_upright(double x, double from, double to) {
        scene_.parts.push_back(Polyline{{{x, from}, {x, to}}, colours_.dim, 1});
        for (const double y : {from, to})
            scene_.parts.push_back(Polyline{{{x - tick, y}, {x + tick, y}}, colours_.dim, 1});
    }

    void dimension_across(double y, double half) {
        scene_.parts.push_back(Polyline{{{axis_ - half, y}, {axis_ + half, y}}, colours_.dim, 1});
        for (const double x : {axis_ - half, axis_ + half})
            scene_.parts.push_back(Polyline{{{x, y - tick}, {x, y + tick}}, colours_.dim, 1});
    }

    void add_dimensions() {
        const double below = top_ + height_ + 10, middle = top_ + height_ / 2;
        const double bore_m = inputs_.bore_radius_m.value, wall_m = inputs_.outside_radius_m.value - bore_m;
        dimension_across(top_ - 12, bore_m * scale_);
        words(axis_, top_ - 12 - label_line / 2 - 2, "bore " + metres(2 * bore_m), Anchor::middle, colours_.ink);
        dimension_across(below, outside() * scale_);
        words(axis_, below + label_line / 2 + 2, "outside " + metres(2 * outside()), Anchor::middle, colours_.ink);
        const double x = axis_ + outside() * scale_ + 10, half = magnet_length() / 2 * scale_;
        dimension_upright(x, middle - half, middle + half);
        std::vector<std::string> of_magnet = {"magnet " + metres(2 * magnet_radius())};
        if (inputs_.shape != eddy::Shape::sphere) of_magnet.push_back("length " + metres(magnet_length()));
        if (inputs_.shape == eddy::Shape::ring) of_magnet.push_back("hole " + metres(2 * inputs_.inner_radius_m.value));
        const double first = middle - label_line, last = first + label_line * static_cast<double>(of_magnet.size() - 1);
        for (std::size_t i = 0; i < of_magnet.size(); ++i)
            words(x + 8, first + label_line * static_cast<double>(i), of_magnet[i], Anchor::start, colours_.ink);
        // At the ends of the section, in a low one above and below the magnet's.
        words(x + 8, std::min(top_ + label_line / 2, first - label_line), "wall " + metres(wall_m), Anchor::start,
              colours_.ink);
        words(x + 8, std::max(top_ + height_ - label_line / 2, last + label_line),
              "gap " + metres(bore() - magnet_radius()), Anchor::start, colours_.dim);
        if (!cut_) return;
        const std::string note = of_parts() ? "across to scale, lengths shortened" : "section to scale, shortened";
        const double half_note = canvas_.measure.width(note, TextStyle::label) / 2;
        const double most = std::max(left_ + half_note, canvas_.width - chart_margin - half_note);
        words(std::clamp(axis_, left_ + half_note, most), below + 1.5 * label_line + 2, note, Anchor::middle,
              colours_.dim);
    }

    const eddy::DropInputs& inputs_;
    std::vector<eddy::WallOutline> pieces_;
    eddy::Bore whole_; // from the narrowest to the widest
    UnitSystem units_;
    const Canvas& canvas_;
    const Palette& colours_;
    Scene scene_;
    double scale_ = 1, left_ = 0, axis_ = 0, top_ = 0, height_ = 0; // points a metre, and the section's place
    bool cut_ = false;
};

} // namespace

Scene setup_drawing(const DropSetup& setup, UnitSystem units, const Canvas& canvas) {
    return SetupDrawing(setup, units, canvas).run();
}

} // namespace pourbook
