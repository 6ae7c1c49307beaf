#include "gui/widgets/scene_painter.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>

namespace pourbook {
namespace {

constexpr float dash_on = 6, dash_off = 4; // points
constexpr float longest_dashed = 1e5F;     // pixels: a line that runs far out of a plot drawn near

class Painter {
public:
    Painter(const Ui& ui, ImDrawList& list, ImVec2 origin)
        : ui_(ui), list_(list), origin_(origin), alpha_(ImGui::GetStyle().Alpha) {}

    void operator()(const Polyline& p) {
        const std::vector<ImVec2> spots = all(p.spots);
        if (p.dashed)
            dashes(spots, ink(p.colour), ui_.px(p.width));
        else
            list_.AddPolyline(spots.data(), static_cast<int>(spots.size()), ink(p.colour), 0,
                              std::max(1.0F, ui_.px(p.width)));
    }

    void operator()(const Polygon& p) {
        const std::vector<ImVec2> spots = all(p.spots);
        list_.AddConvexPolyFilled(spots.data(), static_cast<int>(spots.size()), ink(p.fill));
    }

    void operator()(const Band& b) {
        // Smoothed edges would show as seams between the pieces of a see-through band.
        const ImDrawListFlags flags = list_.Flags;
        list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
        for (std::size_t i = 1; i < b.upper.size() && i < b.lower.size(); ++i) {
            const ImVec2 quad[] = {at(b.upper[i - 1]), at(b.upper[i]), at(b.lower[i]), at(b.lower[i - 1])};
            list_.AddConvexPolyFilled(quad, 4, ink(b.fill));
        }
        list_.Flags = flags;
    }

    void operator()(const Rectangle& r) {
        list_.AddRectFilled(at({r.box.x, r.box.y}), at({r.box.right(), r.box.bottom()}), ink(r.fill));
    }

    void operator()(const Circle& c) {
        if (c.width > 0)
            list_.AddCircle(at(c.centre), ui_.px(c.radius), ink(c.colour), 0, ui_.px(c.width));
        else
            list_.AddCircleFilled(at(c.centre), ui_.px(c.radius), ink(c.colour));
    }

    void operator()(const Text& t) {
        ImFont* font = font_for(ui_, t.style);
        const ImVec2 size = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, t.text.c_str());
        const float shift = t.anchor == Anchor::start ? 0 : t.anchor == Anchor::middle ? size.x / 2 : size.x;
        const ImVec2 middle = at(t.at);
        const ImVec2 corner{std::round(middle.x - shift),
                            std::round(middle.y - size.y / 2)}; // whole pixels keep letters sharp
        list_.AddText(font, font->FontSize, corner, ink(t.colour), t.text.c_str());
    }

    void operator()(const ClipTo& c) {
        list_.PushClipRect(at({c.box.x, c.box.y}), at({c.box.right(), c.box.bottom()}), true);
    }
    void operator()(const ClipEnd&) { list_.PopClipRect(); }

private:
    /// As pale as what is around it.
    ImU32 ink(Colour c) const {
        return u32(c.with_alpha(static_cast<std::uint8_t>(static_cast<float>(c.alpha) * alpha_)));
    }
    ImVec2 at(Spot s) const { return {origin_.x + ui_.px(s.x), origin_.y + ui_.px(s.y)}; }

    std::vector<ImVec2> all(const std::vector<Spot>& spots) const {
        std::vector<ImVec2> out;
        for (const Spot& s : spots) out.push_back(at(s));
        return out;
    }

    void dashes(const std::vector<ImVec2>& spots, ImU32 colour, float width) {
        const float step = ui_.px(dash_on + dash_off);
        float begun = 0; // where the dash at hand began, before the piece's own beginning
        for (std::size_t i = 1; i < spots.size(); ++i) {
            const float dx = spots[i].x - spots[i - 1].x, dy = spots[i].y - spots[i - 1].y, length = std::hypot(dx, dy);
            if (length <= 0 || length > longest_dashed) continue;
            float at = -begun;
            for (; at < length; at += step) {
                const float from = std::max(0.0F, at), to = std::min(length, at + ui_.px(dash_on));
                if (to <= from) continue;
                list_.AddLine({spots[i - 1].x + dx * from / length, spots[i - 1].y + dy * from / length},
                              {spots[i - 1].x + dx * to / length, spots[i - 1].y + dy * to / length}, colour, width);
            }
            begun = length - (at - step);
        }
    }

    const Ui& ui_;
    ImDrawList& list_;
    ImVec2 origin_;
    float alpha_;
};

} // namespace

void paint(const Ui& ui, const Scene& scene, ImDrawList& list, ImVec2 origin) {
    Painter painter(ui, list, origin);
    for (const Primitive& p : scene.parts) std::visit(painter, p);
}

double FontMeasure::width(const std::string& text, TextStyle style) const {
    const ImFont* font = font_for(ui_, style);
    return static_cast<double>(font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, text.c_str()).x / ui_.scale);
}

ImFont* font_for(const Ui& ui, TextStyle style) {
    if (style == TextStyle::large) return ui.fonts.clock;
    return style == TextStyle::title ? ui.fonts.strong : ui.fonts.small;
}

} // namespace pourbook
