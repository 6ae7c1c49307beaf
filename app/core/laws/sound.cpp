#include "core/laws/sound.hpp"

#include "core/laws/anchor.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double rod_error = 0.03;

} // namespace

Result<Evaluated> speed_of_sound_by_law(const Question& q) {
    const Result<Evaluated> modulus = value_at(q.catalogue, q.metal, "young_modulus", room_temperature_K);
    if (!modulus) return modulus.problem();
    const Result<Evaluated> density = value_at(q.catalogue, q.metal, "density", room_temperature_K);
    if (!density) return density.problem();
    const double relative = std::hypot(modulus->standard_uncertainty_si / modulus->value_si,
                                       density->standard_uncertainty_si / density->value_si) /
                            2;
    return worked_out(q, std::max({modulus->basis, density->basis, Basis::carried}),
                      std::sqrt(modulus->value_si / density->value_si), std::hypot(relative, rod_error),
                      "root of Young's modulus over density, along a thin rod",
                      {modulus->sources.front(), density->sources.front()});
}

} // namespace pourbook
