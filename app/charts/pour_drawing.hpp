// A pour as a drawing: the mould in section to scale with the part in it, the pattern as a dashed outline, sprue and
// feeder, dimensions; beside it what the plan needs against what the workshop has, as bars with words.
#pragma once

#include "charts/canvas.hpp"
#include "questions/pour/pour.hpp"
#include "questions/say/shown.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// needed over mine, both as shown; without `mine` nobody has said what there is.
struct LimitBar {
    std::string name, needed, mine;
    double share = 0; // needed over mine; 0 without mine
};

struct PourDrawing {
    std::string title;
    double outside_m = 0, bore_m = 0, height_m = 0;                         // of the casting, cold, with stock
    double pattern_outside_m = 0, pattern_bore_m = 0, pattern_height_m = 0; // 0: not known
    double mould_wall_m = 0;                                                // 0: not known
    double feeder_m = 0, feeder_height_m = 0;                               // 0: none
    double sprue_top_m = 0, sprue_foot_m = 0, sprue_height_m = 0;           // 0: none planned
    double pour_K = 0, mould_K = no_number;
    std::string outside, bore, height, pattern; // as shown
    std::string heat;                           // "pour at 470 °C, mould at 200 °C"
    std::vector<LimitBar> limits;
    std::vector<std::string> cautions;
    Origin origin;
};

/// The first piece of the plan; a part of another form than tube or bar is drawn as the box it fills. `mine`: limits
/// that the plan was held to, or would have been.
PourDrawing pour_drawing(const Catalogue& catalogue, const PourResult& plan, const casting::Workshop& mine,
                         UnitSystem units);

Scene layout(const PourDrawing& drawing, const Canvas& canvas);

} // namespace pourbook
