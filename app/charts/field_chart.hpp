// A magnet in its tube in section, to scale, with the lines of flux round it and the currents in the wall that brake
// it, as they are while it falls evenly: the whole field, the currents' own included.
#pragma once

#include "charts/canvas.hpp"
#include "core/eddy/tube_field.hpp"
#include "questions/drop/drop.hpp"
#include "questions/say/shown.hpp"

#include <optional>

namespace pourbook {

struct FieldChart {
    std::string title, subtitle;
    eddy::Magnet magnet;
    eddy::Bore bore;
    eddy::FieldGrid grid; // radii from the axis outwards, places downwards; the magnet moves down
    double peak_A_m2 = 0;
    std::vector<std::string> notes, cautions;
    Origin origin;
};

/// At the terminal speed, or a stated one. Errors: refused (no terminal speed and none stated; slits or off-axis
/// travel, whose currents are not round; a speed beyond tube_field.hpp's range).
Result<FieldChart> field_chart(const Catalogue& catalogue, const DropOfMetal& drop, std::optional<double> speed_m_s,
                               UnitSystem units);

Scene layout(const FieldChart& chart, const Canvas& canvas);

} // namespace pourbook
