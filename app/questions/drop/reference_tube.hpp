// The same magnet through a tube of known conductivity calibrates it: what is wrong with its strength is wrong alike in
// both falls. With sigma_ref known and sigma_r inferred from the reference tube's falls, a conductivity inferred from
// another tube's falls is to be multiplied by sigma_ref / sigma_r, sample by sample: the magnet's draws are the same in
// both, those of the tubes and the timings are apart.
#pragma once

#include "questions/drop/infer.hpp"

#include <vector>

namespace pourbook {

struct Calibration {
    double factor = 1;           // of the stated figures
    std::vector<double> factors; // by sample
    std::vector<std::string> assumptions;
};

/// Errors: unreadable (times or resistivity missing or no number); those of drop_setup and of an inference.
Result<Calibration> calibration_of(const Catalogue& catalogue, const InferRequest& request);

} // namespace pourbook
