// Letters of one width, so that approved scenes do not depend on fonts.
#pragma once

#include "charts/canvas.hpp"

namespace pourbook::testing {

class FixedMeasure : public TextMeasure {
public:
    double width(const std::string& text, TextStyle style) const override {
        double signs = 0;
        for (const char c : text)
            if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) ++signs;
        return signs * (style == TextStyle::title ? 9 : 7);
    }
};

inline Canvas canvas(double width, double height, bool dark = true) {
    static const FixedMeasure measure;
    return {width, height, palette(dark), measure};
}

/// All texts of a scene, with their boxes.
inline std::vector<std::pair<std::string, Box>> texts_of(const Scene& scene) {
    std::vector<std::pair<std::string, Box>> out;
    const FixedMeasure measure;
    for (const Primitive& p : scene.parts)
        if (const Text* t = std::get_if<Text>(&p)) {
            const double w = measure.width(t->text, t->style), h = text_size(t->style);
            const double shift = t->anchor == Anchor::start ? 0 : t->anchor == Anchor::middle ? w / 2 : w;
            out.push_back({t->text, {t->at.x - shift, t->at.y - h / 2, w, h}});
        }
    return out;
}

} // namespace pourbook::testing
