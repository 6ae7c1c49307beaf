// The workshop's drop trials that were made with a given magnet and tube, to stand beside what is computed for them.
#pragma once

#include "core/workshop/data.hpp"
#include "questions/drop/drop.hpp"

#include <map>

namespace pourbook {

/// Fall times (s) by the slug of the metal that a trial names. A trial counts where magnet, tube and remanence are the
/// same figures, in whatever unit they are written, and tube and magnet were within 5 K of those asked about; a setup
/// with slits or off the axis has none, for trials are of whole tubes.
using MeasuredFalls = std::map<std::string, std::vector<double>>;

/// Errors: those of drop_setup for the setup asked about; a trial that can't be read is passed over (it is checked when
/// it is kept).
Result<MeasuredFalls> measured_falls(const Catalogue& catalogue, const std::vector<Trial>& trials,
                                     const SetupWords& setup, const Conditions& conditions);

} // namespace pourbook
