// A chart in a panel: laid out again only when its key, size or theme changes; hover and clicks come from the scene's
// hits.
#pragma once

#include "charts/canvas.hpp"
#include "gui/widgets/plot_hands.hpp"

#include <functional>
#include <string>

namespace pourbook {

/// Draws into `size` pixels, with a line below it to save or copy the picture; a chart with axes is moved and read by
/// hand (plot_hands.hpp). Returns the id of a hit clicked in this frame, else empty.
std::string chart_view(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                       const std::function<Scene(const Canvas&)>& build);

/// The same below a strip that reads the lines at the cross-hair; `lines` many.
std::string read_chart_view(Ui& ui, const std::string& id, const std::string& key, ImVec2 size,
                            const std::function<Scene(const Canvas&)>& build, std::size_t lines,
                            const PlotReader& reader);

} // namespace pourbook
