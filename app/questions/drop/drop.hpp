// How long a magnet falls through a tube, and the drag on it at a stated speed.
#pragma once

#include "questions/drop/magnet_words.hpp"
#include "questions/drop/wall_words.hpp"

#include <cstdint>
#include <memory>

namespace pourbook {

struct DropRequest {
    SetupWords setup;
    std::string metal;       // one of these two
    std::string resistivity; // or a conductivity
    Conditions conditions;   // of the tube
    std::size_t samples = 1000;
    std::uint64_t seed = 1;
    WallWords wall{}; // of several parts, slits that are more than narrow cuts
    bool operator==(const DropRequest&) const = default;
};

struct DropResult {
    DropSetup setup;
    TubeMetal tube;
    std::vector<WallPiece> pieces; // what is put to the tube itself
    Conditions conditions;
    std::shared_ptr<const eddy::DropModel> model; // drag curve and end effect, for charts
    eddy::Fall fall;                              // with its path
    double fall_time_low90_s = no_number, fall_time_high90_s = no_number;
    double speed_low90_m_s = no_number, speed_high90_m_s = no_number; // of the terminal speed; NaN if a sample has none
    double coefficient_N_s_m = 0, moment_A_m2 = 0, magnet_mass_kg = 0;
    double peak_drag_N = 0, peak_drag_speed_m_s = 0; // NaN with slits or off the axis: those are low-speed laws
    double path_factor = 1;                          // drag relative to the whole tube on its axis
    double time_constant_s = 0;                      // mass over drag coefficient
    double free_fall_time_s = 0;                     // the same way without a tube
    double effective_length_m = 0;                   // tube length less what the open ends take from the drag, >= 0
    double tube_mass_kg = no_number;                 // NaN where no density is known
    double cost_usd = no_number;                     // of the tube's metal; NaN where no price is cited
    double warming_K = no_number;                    // of the whole wall by one fall
    double felt_N = 0; // by the hand that holds the tube, above its own weight: evenly, or (not settled) at most
    std::string regime;
    bool settles = false; // a stretch of half a bore radius and more lies within 2 % of the terminal speed
    double fading_s = 0;  // time in which the wall's currents fade; longer than the time constant, the magnet bounces
    double fall_time_across_s = no_number; // of a ball with its poles across the tube; NaN for other shapes
    std::vector<std::string> left_out;     // what the model leaves out, with its size
    std::vector<std::string> cautions;     // what may spoil this drop
};

/// What tube and parts conduct together, sample by sample.
std::vector<double> drawn_conductivities(const DropResult& result, Draws& draws);

/// Errors: those of drop_setup, with_wall and tube_metal; refused where a low-speed law (slits, off axis, a long wall
/// of several parts) meets a high speed.
Result<DropResult> drop(const Catalogue& catalogue, const DropRequest& request);

/// Magnet and tube with the parts of its wall, before anything falls. Errors: those of drop_setup, with_wall,
/// tube_metal.
Result<DropSetup> whole_setup(const Catalogue& catalogue, const DropRequest& request, const Result<TubeMetal>& tube,
                              std::vector<WallPiece>& pieces);

struct DropOfMetal {
    const Metal* metal = nullptr;
    Result<DropResult> result; // a metal that makes no such tube says why
};

/// The same set-up in several metals, in the order asked; request.metal plays no part. Errors: those of drop_setup;
/// unknown metal.
Result<std::vector<DropOfMetal>> drop_in_each(const Catalogue& catalogue, const DropRequest& request,
                                              const std::vector<std::string>& metals);

} // namespace pourbook
