// What a chart is made of once everything is decided: a few primitives in points, y downwards, later ones on top.
// A painter replays them and has no opinions; `dump` writes them as text, so that a chart can be approved without
// fonts.
#pragma once

#include "charts/axis.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace pourbook {

struct Colour {
    std::uint8_t red = 0, green = 0, blue = 0, alpha = 255;
    Colour with_alpha(std::uint8_t a) const { return {red, green, blue, a}; }
};

struct Spot {
    double x = 0, y = 0;
};

struct Box {
    double x = 0, y = 0, width = 0, height = 0;
    double right() const { return x + width; }
    double bottom() const { return y + height; }
    bool contains(Spot s) const { return s.x >= x && s.x <= right() && s.y >= y && s.y <= bottom(); }
    bool overlaps(const Box& o) const { return x < o.right() && o.x < right() && y < o.bottom() && o.y < bottom(); }
};

enum class Anchor { start, middle, end };
enum class TextStyle { label, title, large };

/// Size of the letters (the em of the font) and height of a line, in points.
constexpr double text_size(TextStyle style) {
    return style == TextStyle::large ? 34 : style == TextStyle::title ? 15 : 12.5;
}
constexpr double line_height(TextStyle style) {
    return style == TextStyle::large ? 44 : style == TextStyle::title ? 24 : 18;
}
constexpr double label_line = line_height(TextStyle::label);

struct Polyline {
    std::vector<Spot> spots;
    Colour colour;
    double width = 1;
    bool dashed = false;
};

struct Polygon { // convex
    std::vector<Spot> spots;
    Colour fill;
};

struct Band { // the area between two lines of equally many spots
    std::vector<Spot> upper, lower;
    Colour fill;
};

struct Rectangle {
    Box box;
    Colour fill;
};

struct Circle {
    Spot centre;
    double radius = 1;
    Colour colour;
    double width = 0; // of the outline; 0: filled
};

struct Text {
    Spot at; // on the middle of the line's height
    std::string text;
    Colour colour;
    Anchor anchor = Anchor::start;
    TextStyle style = TextStyle::label;
};

struct ClipTo {
    Box box;
};
struct ClipEnd {};

using Primitive = std::variant<Polyline, Polygon, Band, Rectangle, Circle, Text, ClipTo, ClipEnd>;

/// A place that answers the pointer.
struct Hit {
    Box box;
    std::string id;
    std::string hover;
    bool opens = false; // a click inside a plot opens it; else it only reads the line
};

/// Where a chart's numbers come from, under what conditions.
struct Origin {
    std::vector<std::string> sources; // keys, each once
    std::string data_version = {};
    std::string conditions = {}; // "at 293.15 K (20 °C), reference condition"
};

/// The area between two axes, for whoever wants to read or move it.
struct Plot {
    Box box;
    Axis x, y;           // as drawn
    Axis home_x, home_y; // where all of it is seen
};

struct Scene {
    double width = 0, height = 0;
    std::vector<Primitive> parts;
    std::vector<Hit> hits;
    std::string title = {}; // what it shows and whence, for a caption beside it
    Origin origin = {};
    std::optional<Plot> plot = {};

    /// The hit whose middle is nearest among those under the spot; null if there is none.
    const Hit* hit_at(Spot spot) const;
};

/// Width of a text in points, from whoever owns the font.
class TextMeasure {
public:
    virtual ~TextMeasure() = default;
    virtual double width(const std::string& text, TextStyle style) const = 0;
};

/// One primitive a line, rounded to a tenth of a point.
std::string dump(const Scene& scene);

} // namespace pourbook
