#include "charts/scene.hpp"

#include <cmath>
#include <cstdio>

namespace pourbook {
namespace {

std::string tenth(double value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.1f", std::round(value * 10) / 10 + 0.0); // + 0.0: no "-0.0"
    return text;
}

std::string of(Spot s) {
    return tenth(s.x) + "," + tenth(s.y);
}

std::string of(const std::vector<Spot>& spots) {
    std::string out;
    for (const Spot& s : spots) out += " " + of(s);
    return out;
}

std::string of(const Box& b) {
    return tenth(b.x) + "," + tenth(b.y) + " " + tenth(b.width) + "x" + tenth(b.height);
}

std::string of(Colour c) {
    char text[16];
    std::snprintf(text, sizeof text, "#%02x%02x%02x%02x", c.red, c.green, c.blue, c.alpha);
    return text;
}

struct Writer {
    std::string operator()(const Polyline& p) const {
        return std::string(p.dashed ? "dashed " : "line ") + of(p.colour) + " " + tenth(p.width) + of(p.spots);
    }
    std::string operator()(const Polygon& p) const { return "polygon " + of(p.fill) + of(p.spots); }
    std::string operator()(const Band& b) const { return "band " + of(b.fill) + of(b.upper) + " |" + of(b.lower); }
    std::string operator()(const Rectangle& r) const { return "rect " + of(r.fill) + " " + of(r.box); }
    std::string operator()(const Circle& c) const {
        return "circle " + of(c.colour) + " " + of(c.centre) + " r" + tenth(c.radius) + (c.width > 0 ? " hollow" : "");
    }
    std::string operator()(const Text& t) const {
        static constexpr const char* anchors[] = {"start", "middle", "end"};
        return std::string(t.style == TextStyle::title ? "title " : "text ") + of(t.colour) + " " + of(t.at) + " " +
               anchors[static_cast<int>(t.anchor)] + " \"" + t.text + "\"";
    }
    std::string operator()(const ClipTo& c) const { return "clip " + of(c.box); }
    std::string operator()(const ClipEnd&) const { return "clip end"; }
};

double distance(const Box& b, Spot s) {
    return std::hypot(b.x + b.width / 2 - s.x, b.y + b.height / 2 - s.y);
}

} // namespace

const Hit* Scene::hit_at(Spot spot) const {
    const Hit* best = nullptr;
    for (const Hit& h : hits)
        if (h.box.contains(spot) && (!best || distance(h.box, spot) < distance(best->box, spot))) best = &h;
    return best;
}

std::string dump(const Scene& scene) {
    std::string out = "scene " + tenth(scene.width) + "x" + tenth(scene.height) + "\n";
    for (const Primitive& p : scene.parts) out += std::visit(Writer{}, p) + "\n";
    for (const Hit& h : scene.hits) out += "hit " + of(h.box) + " " + h.id + " \"" + h.hover + "\"\n";
    return out;
}

} // namespace pourbook
