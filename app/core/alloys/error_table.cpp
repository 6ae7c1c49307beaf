#include "core/alloys/error_table.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

bool in_kelvin(ErrorClass e) {
    return e >= ErrorClass::liquidus_binary;
}

} // namespace

double half_width_90(ErrorClass e) {
    switch (e) {
    case ErrorClass::resistivity_dilute:
        return 0.21;
    case ErrorClass::resistivity_table:
        return 0.29;
    case ErrorClass::resistivity_nordheim:
        return 0.31;
    case ErrorClass::resistivity_two_phase:
        return 0.37;
    case ErrorClass::density_dissolved:
        return 0.013;
    case ErrorClass::density_elements:
        return 0.024;
    case ErrorClass::expansion:
        return 0.15;
    case ErrorClass::liquidus_binary:
        return 9;
    case ErrorClass::liquidus_sum:
        return 23;
    case ErrorClass::solidus_binary:
        return 18;
    case ErrorClass::solidus_sum:
        return 67;
    case ErrorClass::liquidus_near:
        return 65;
    case ErrorClass::solidus_near:
        return 60;
    }
    return 0;
}

void set_error(Estimate& estimate, ErrorClass error) {
    const double width = half_width_90(error);
    const double half = in_kelvin(error) ? width : width * estimate.value_si;
    estimate.standard_uncertainty_si = half / normal_90;
    estimate.low90_si = estimate.value_si - half;
    estimate.high90_si = estimate.value_si + half;
    estimate.error = "nine in ten known alloys lie within " +
                     (in_kelvin(error) ? trimmed(width, 2) + " K" : trimmed(100 * width, 2) + " %") + " of this rule";
}

} // namespace pourbook
