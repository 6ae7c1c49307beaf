// A magnet sliding or swinging past a wide plate: drag and lift against speed, thin or thick.
#pragma once

#include "core/eddy/plate_motion.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/drop/tube_metal.hpp"

#include <optional>

namespace pourbook {

struct PlateRequest {
    SetupWords magnet;           // its tube words play no part
    std::string height;          // of the magnet's centre above the plate
    std::string gap;             // instead: of its lower face
    std::string thickness;       // of the plate
    std::string axis = "normal"; // of the magnetisation: normal to the plate, or along the motion
    std::string metal, resistivity;
    Conditions conditions; // of the plate
    std::string speed;     // "0.5m/s", or "0.1m/s:10m/s" for a table
    int steps = 15;
    std::optional<double> slope_deg, friction;           // a slide; friction: none where not stated
    std::optional<double> pendulum_m, swing_m;           // a bob that passes the plate: its length, the first amplitude
    std::optional<double> drop_from_m, block_diameter_m; // falling face-on from a gap; a wide block where not stated
};

struct PlatePoint {
    double speed_m_s = 0, drag_N = 0, lift_N = 0;
    double drag_low90_N = 0, drag_high90_N = 0;
};

/// What the magnet does there, with the 90 % interval of what is told of it.
struct PlateMotion {
    std::string kind; // slide | swing | fall
    double value = no_number, low90 = no_number,
           high90 = no_number;                             // m/s; swings until half; s: NaN where there is none
    std::string none;                                      // why
    double period_s = no_number, rest_s = no_number;       // of a swing
    double free_fall_s = no_number, touch_m_s = no_number; // of a fall
};

struct PlateResult {
    DropSetup setup;
    TubeMetal plate;
    Conditions conditions;
    double moment_A_m2 = 0, magnet_mass_kg = 0;
    double height_m = 0, thickness_m = 0;
    bool standing = true;
    std::vector<PlatePoint> points;
    double peak_drag_N = 0, peak_drag_speed_m_s = 0;
    double recession_speed_m_s = 0; // 2/(mu0 sigma w): over a thin plate drag over lift is this over the speed
    std::optional<PlateMotion> motion;
    std::vector<std::string> left_out;
};

/// Errors: unreadable; those of magnet_setup and tube_metal; refused as plate_force.
Result<PlateResult> plate(const Catalogue& catalogue, const PlateRequest& request);

} // namespace pourbook
