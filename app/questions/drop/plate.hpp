// A magnet sliding or swinging past a wide plate: drag and lift against speed, thin or thick.
#pragma once

#include "core/eddy/plate.hpp"
#include "questions/drop/magnet_words.hpp"
#include "questions/drop/tube_metal.hpp"

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
};

struct PlatePoint {
    double speed_m_s = 0, drag_N = 0, lift_N = 0;
    double drag_low90_N = 0, drag_high90_N = 0;
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
    std::vector<std::string> left_out;
};

/// Errors: unreadable; those of magnet_setup and tube_metal; refused as plate_force.
Result<PlateResult> plate(const Catalogue& catalogue, const PlateRequest& request);

} // namespace pourbook
