// What a workshop measures before it predicts: the magnet's moment from its field on the axis, and the tube's
// conductivity by four wires. Without readings: the sheet to fill in. The results are words for drop and infer.
#pragma once

#include "core/eddy/field_fit.hpp"
#include "core/eddy/infer.hpp"
#include "questions/drop/magnet_words.hpp"

#include <optional>

namespace pourbook {

struct MeasureRequest {
    SetupWords setup;                // magnet's shape and mass, tube
    std::vector<std::string> fields; // "0.35T@1mm", "0.21+-0.005T@5+-0.2mm"
    std::string meter_error;         // relative, of the field meter: "2%"
    std::string current, voltage, span;
    std::string reversed_voltage; // with the current reversed: of the other sign
};

struct MagnetMeasured {
    eddy::Magnet magnet;
    eddy::FieldFit fit;
    double remanence_T = 0, standard_uncertainty_T = 0; // the meter's error included
    double moment_A_m2 = 0, moment_uncertainty_A_m2 = 0;
    double density_kg_m3 = no_number;                                  // where it was weighed
    std::optional<double> depth_m, depth_doubt_m, remanence_at_case_T; // sensor's depth fitted; without it
    std::vector<eddy::FieldReading> readings;
    std::string words; // "--br 1.27+-0.03T --recoil-permeability 1"
    std::vector<std::string> notes;
};

struct TubeMeasured {
    double resistance_ohm = 0;
    eddy::Conductivity conductivity;
    double iacs_percent = 0;
    double thermal_voltage_V = no_number; // what both directions have in common
    std::string words;                    // "--resistivity 1.72+-0.03uohm.cm"
    std::vector<std::string> notes;
};

struct MeasureResult {
    std::optional<MagnetMeasured> magnet;
    std::optional<TubeMeasured> tube;
    bool blank() const { return !magnet && !tube; }
};

/// Errors: unreadable; refused.
Result<MeasureResult> measure(const MeasureRequest& request);

/// The sheet to print and fill in: a line per step, blanks as dots.
std::vector<std::string> measuring_sheet();

} // namespace pourbook
