// A Scene replayed into an ImGui draw list, and the width of its letters.
#pragma once

#include "charts/scene.hpp"
#include "gui/widgets/ui.hpp"

namespace pourbook {

/// `origin` in pixels; the scene's points are multiplied by ui.scale.
void paint(const Ui& ui, const Scene& scene, ImDrawList& list, ImVec2 origin);

class FontMeasure : public TextMeasure {
public:
    explicit FontMeasure(const Ui& ui) : ui_(ui) {}
    double width(const std::string& text, TextStyle style) const override;

private:
    const Ui& ui_;
};

/// The font a style is drawn with: built at this very size, so it stays sharp.
ImFont* font_for(const Ui& ui, TextStyle style);

} // namespace pourbook
