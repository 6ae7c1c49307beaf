#include "questions/drop/motion_words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <cmath>

namespace pourbook {

Result<DropSetup> with_timing(DropSetup setup, const SetupWords& words) {
    const double half = setup.inputs.magnet().whole_length_m() / 2;
    std::string from = "its centre at the mouth", to = "its centre leaves";
    if (words.release == "face") {
        setup.inputs.from_depth_m = -half;
        from = "its lower face at the mouth";
    } else if (!words.release.empty() && words.release != "centre") {
        const Result<double> above = parse_si(words.release, base_dimension(Dimension::metre), "--release");
        if (!above || !(std::abs(*above) <= setup.inputs.tube_length_m.value))
            return unreadable("--release '" + words.release +
                              "': centre, face, or the height of its centre above the mouth such as 20mm is expected");
        setup.inputs.from_depth_m = -*above;
        from = "its centre " + trimmed(*above * 1000, 4) + " mm above the mouth";
    }
    if (words.stop == "out") {
        setup.inputs.beyond_m = half;
        to = "it is wholly out";
    } else if (!words.stop.empty() && words.stop != "centre") {
        const Result<double> floor = parse_si(words.stop, base_dimension(Dimension::metre), "--stop");
        if (!floor || !(*floor >= 0 && *floor <= 10))
            return unreadable("--stop '" + words.stop +
                              "': centre, out, or the height of the tube's lower end above the floor such as 100mm");
        setup.inputs.beyond_m = *floor - half;
        to = "it strikes a floor " + trimmed(*floor * 1000, 4) + " mm below the tube";
    }
    if (!(setup.inputs.tube_length_m.value + setup.inputs.beyond_m > setup.inputs.from_depth_m))
        return Problem{Problem::Kind::refused, "--stop: the timing would end before the magnet is let go", 0};
    setup.timing = "let go at rest with " + from + ", timed until " + to;
    return setup;
}

} // namespace pourbook
