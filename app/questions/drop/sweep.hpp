// Fall time against wall thickness, bore, length, temperature or money: how thick is thick enough, and what a colder
// tube gains.
//
//   wall         bore, length and magnet fixed
//   bore         wall, length and magnet fixed
//   length       bore, wall and magnet fixed
//   temperature  of the tube; the magnet stays at its own
//   budget       bore and length fixed, the wall as thick as the money buys of the metal (USD, without forming cost)
#pragma once

#include "questions/drop/drop.hpp"

#include <cstdint>

namespace pourbook {

// With a mass or a budget held, the wall over bore or length is what that amount of each metal leaves: thicker or
// longer with the same metal.
enum class SweepOver { wall, bore, length, temperature, budget };
enum class SweepHold { nothing, mass, budget };

struct SweepRequest {
    SetupWords setup;
    std::vector<std::string> metals; // one or more, or
    std::string resistivity;
    Conditions conditions;
    SweepOver over = SweepOver::wall;
    double from_si = 0, to_si = 0; // m, K or USD
    SweepHold hold = SweepHold::nothing;
    std::optional<double> held_si; // kg or USD; a mass: else that of the stated tube in each metal
    int steps = 15;                // values of x, evenly spaced (wall, budget: evenly in ln x)
    std::size_t samples = 200;
    std::uint64_t seed = 1;
    bool operator==(const SweepRequest&) const = default;
};

struct SweepPoint {
    double x_si = 0;
    double wall_m = no_number;
    double time_s = no_number, low90_s = no_number, high90_s = no_number;
    double terminal_speed_m_s = no_number; // NaN: none
    double tube_mass_kg = no_number, cost_usd = no_number;
    std::string problem; // why there is no value here
};

struct SweepLine {
    std::string name; // slug, or the resistivity as written
    const Metal* metal = nullptr;
    std::vector<SweepPoint> points;
};

struct SweepResult {
    DropSetup setup;
    SweepOver over = SweepOver::wall;
    Conditions conditions;
    std::vector<SweepLine> lines;
    std::vector<std::string> metal_sources; // keys of the metals' resistivities, each once
    double wall_for_half_m = no_number,
           wall_for_90_percent_m = no_number; // of the drag that an endless wall would give
    double magnet_mass_kg = 0;
    std::string held; // "the same mass", "the same money", empty
};

const char* name_of(SweepOver over);

/// "wall", "1mm:5mm" into `over`, `from_si` and `to_si`. Errors: unreadable, with what is expected; those of usd_from.
Result<SweepRequest> with_range(const Catalogue& catalogue, SweepRequest request, const std::string& over,
                                const std::string& range);

/// A range to begin with, as it is typed; money in the currency shown.
std::string usual_range(const Catalogue& catalogue, SweepOver over);

/// Wall thickness at which the low-speed drag reaches a share of that of an endless wall.
double wall_for_share(const eddy::DropInputs& inputs, double share);

/// Errors: those of drop_setup; unreadable range; unknown metal. A single point without a value says why.
Result<SweepResult> sweep(const Catalogue& catalogue, const SweepRequest& request);

} // namespace pourbook
