// Drag on a magnet held at a speed in an infinitely long tube.
#pragma once

#include "questions/drop/drop.hpp"

namespace pourbook {

struct DragRequest {
    DropRequest drop; // the set-up; the tube's length plays no part
    double speed_m_s = no_number;
};

struct DragResult {
    DropSetup setup;
    TubeMetal tube;
    Conditions conditions;
    double speed_m_s = 0;
    double drag_N = 0;
    double drag_low90_N = 0, drag_high90_N = 0;
    double linear_drag_N = 0; // coefficient times speed
    double peak_drag_N = 0, peak_drag_speed_m_s = 0;
    double skin_depth_m = 0; // at the frequency 0.3 v/a that a wall element sees
};

/// A point of the drag curve of a set-up, with its 90 % interval.
struct DragPoint {
    double speed_m_s = 0, drag_N = 0, low90_N = 0, high90_N = 0;
};

/// The curve of a computed set-up at speeds evenly spaced in their logarithm.
std::vector<DragPoint> drag_points(const DropResult& result, double from_m_s, double to_m_s, int points,
                                   std::size_t samples, std::uint64_t seed);

/// Errors: those of drop; unreadable speed.
Result<DragResult> drag(const Catalogue& catalogue, const DragRequest& request);

} // namespace pourbook
