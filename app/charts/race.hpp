// One to four falls side by side, each magnet at the place that was computed for a time: a frame of a film, or a moment
// of the race that the window plays.
#pragma once

#include "charts/canvas.hpp"
#include "questions/drop/drop.hpp"
#include "questions/say/shown.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// A piece of the tube's wall.
struct RaceWall {
    eddy::WallOutline outline;
    std::string id;                  // of its metal
    std::optional<std::size_t> slot; // colour; empty: the lane's
};

struct RaceLane {
    std::string id, name; // of the metal
    std::string detail;   // what sets this set-up apart beside the metal; may be empty
    std::size_t slot = 0; // colour
    eddy::Magnet magnet;
    eddy::Bore bore;                 // of the tube itself, at its mouth
    double tube_length_m = 0;        // of the tube itself
    std::vector<RaceWall> walls;     // the tube itself first
    std::vector<eddy::Instant> path; // of the fall; empty: there is none
    double low_s = 0, high_s = 0;    // 90 % interval of its time
    std::string problem;             // then why
};

struct Race {
    std::string title, subtitle;
    std::vector<RaceLane> lanes;
    std::vector<std::string> cautions;
    Origin origin;
    UnitSystem units = UnitSystem::shown;
    double aim_s = 0; // the time wished for, 0: none; the nearest is named once all are out

    /// When the last magnet is out; 0 where none falls.
    double end_s() const;
};

/// A magnet at a time after its release.
struct RacePlace {
    double time_s = 0; // of its own clock, which stops where the timing ends
    double depth_m = 0, speed_m_s = 0;
    double load_N = 0; // on the hand that holds the tube, beyond the tube's weight
    bool out = false;
};

/// Between the instants of the fall a cubic through depths and speeds, the load in proportion. The lane has a path.
RacePlace place_at(const RaceLane& lane, double time_s);

/// Lanes in the order of the drops; a drop that can't be is a lane that says why. The cautions of strong magnets, and
/// those of cold where a tube is below 230 K.
Race race_of(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units);

/// The moment `time_s` after the release, which may lie before it or after the end. Places are to scale, alike for all
/// lanes; magnets and widths are drawn larger where the scale would hide them, and the picture says how much. `slow`:
/// how many times slower than life it is shown, said at the foot.
/// Walls of several parts are drawn each in the colour of its metal. Hits: "tube-0" is the box of the first tube itself
/// (of its upper end's width), its top the upper mouth; the middle of "magnet-0" is the magnet's
/// centre.
Scene race_scene(const Race& race, double time_s, double slow, const Canvas& canvas);

/// Who fell how long, the sources, conditions and cautions: the last frame of a film.
Scene race_sources(const Race& race, const Canvas& canvas);

} // namespace pourbook
