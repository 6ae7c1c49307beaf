// An axis: from values to points, and where its ticks go.
#pragma once

#include <string>
#include <vector>

namespace pourbook {

struct Tick {
    double value = 0;
    std::string text;
};

constexpr double log_beyond = 30; // ratio from which a linear axis hides the small ones

struct Axis {
    double low = 0, high = 1; // in the unit shown; low < high, above zero where logarithmic
    bool log = false;
    double from = 0, to = 1; // the same ends in points

    double place(double value) const;
    double share(double value) const; // 0 at low, 1 at high
    double at_share(double share) const;
    double value(double place) const; // the way back from points
};

/// The axis with `factor` of its length left (below 1: nearer), the value at this share where it was.
Axis nearer(const Axis& axis, double share, double factor);
/// The axis moved by this share of its length.
Axis moved(const Axis& axis, double by);
/// At most as wide as `home`, and never all outside it.
Axis kept_near(Axis axis, const Axis& home);

/// About `wanted` round ticks inside the axis; on a logarithmic one decades, with 2 and 5 where they fit.
std::vector<Tick> ticks(const Axis& axis, int wanted);

/// A range that ends on round figures and starts at zero where that costs little room.
void round_out(Axis& axis);

/// Plain figures, powers of ten outside 1e-4 to 1e5: "0.02", "1500", "10⁻⁷".
std::string tick_text(double value, double step);

} // namespace pourbook
