// What "fall_time" in a goal's formula stands for: the fall of a stated magnet through a tube of each metal.
//
//   same size     the tube as stated
//   same mass     bore and length as stated, the wall free: the tube has this mass in each metal
//   same budget   bore and length as stated, the wall free: what the money buys of each metal (no making, no loss)
#pragma once

#include "core/eddy/wall_family.hpp"
#include "core/ranking/formula.hpp"
#include "questions/drop/magnet_words.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

/// What is the same for all candidates. Where the effect grows with the amount of metal (a thin tube wall, a bar, a
/// plate), equal mass divides the merit by density and equal budget by density times price; for a goal that is best low
/// they multiply. A fall through a tube has the wall worked out instead.
enum class Holding { size, mass, budget };

struct FallWords {
    SetupWords setup;
    std::string mass, budget; // of the tube, with that holding
    bool operator==(const FallWords&) const = default;
};

/// A budget to begin with, as it is typed: "20USD", "20EUR".
std::string usual_budget(const Catalogue& catalogue, const char* gap = "");

class FallTime {
public:
    /// Errors: those of drop_setup; unreadable (magnet or tube missing, mass or budget missing or not asked for).
    static Result<std::shared_ptr<const FallTime>> from_words(const Catalogue& catalogue, const FallWords& words,
                                                              Holding holding);

    /// Resistivity; with a mass also the density; with a budget also the price. Values below are in this order, SI.
    const std::vector<std::string>& properties() const { return properties_; }
    /// Why the fall can't be worked out for these; empty: it can. (Slits and off-axis travel have a range.)
    std::string fault(const std::vector<double>& values) const;
    double value(const std::vector<double>& values) const; // where there is no fault
    std::vector<double> samples(const Columns& columns, const std::vector<double>& nominal, Draws& draws) const;

    double wall_area_m2(const std::vector<double>& values) const { return wall_area_m2(values, length_m()); }
    double wall_m(double wall_area_m2) const;
    double length_m() const { return setup_.inputs.tube_length_m.value; }
    Holding holding() const { return holding_; }
    double held_si() const { return held_si_; } // kg or USD; NaN with the same size
    const DropSetup& setup() const { return setup_; }

private:
    FallTime(DropSetup setup, Holding holding, double held_si);
    double wall_area_m2(const std::vector<double>& values, double length_m) const;

    DropSetup setup_;
    Holding holding_;
    double held_si_;
    std::vector<std::string> properties_;
    std::optional<eddy::DropModel> tube_;    // one of these two
    std::optional<eddy::WallFamily> family_; // makes its curves as they are needed
};

} // namespace pourbook
