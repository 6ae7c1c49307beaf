#include "questions/drop/measure.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/drop/meter_words.hpp"

#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

using eddy::Uncertain;

// Where no tolerance is given; workshop measuring, common practice without a source.
constexpr double much_thermal_V = 20e-6;
constexpr double current_doubt = 0.01, voltage_doubt = 0.005;
constexpr std::size_t samples = 2000;

/// "1.27+-0.03T": limits whose standard uncertainty is the one found.
std::string with_limits(double value, double standard, const char* unit) {
    const double half = standard * std::numbers::sqrt3;
    return rounded_to(value, half / 10, 6) + "+-" + significant(half, 2) + unit;
}

Result<MagnetMeasured> measured_magnet(const MeasureRequest& request) {
    const Result<eddy::Magnet> magnet = magnet_shape(request.setup);
    if (!magnet) return magnet.problem();
    MagnetMeasured out;
    out.magnet = *magnet;
    for (const std::string& text : request.fields) {
        const Result<eddy::FieldReading> reading = field_reading(text, "--field");
        if (!reading) return reading.problem();
        out.readings.push_back(*reading);
    }
    Result<eddy::FieldFit> fit = eddy::fitted_remanence(*magnet, out.readings);
    if (!fit) return fit.problem();
    if (out.readings.size() >= 3) {
        out.remanence_at_case_T = fit->remanence_T;
        fit = eddy::fitted_with_depth(*magnet, out.readings);
        if (!fit) return fit.problem();
        out.depth_m = fit->depth_m;
        out.depth_doubt_m = fit->depth_doubt_m;
        out.notes.push_back("the sensor sits " + rounded_to(fit->depth_m * 1000, fit->depth_doubt_m * 1000) +
                            " mm inside its case, to " + significant(fit->depth_doubt_m * 1000, 1) +
                            " mm; taken at the case itself the remanence would be " +
                            significant(*out.remanence_at_case_T, 3) + " T");
    }
    out.fit = *fit;
    double meter = meter_doubt;
    if (!request.meter_error.empty()) {
        const Result<double> given = parse_si(request.meter_error, {}, "--meter-error");
        if (!given || !(*given >= 0 && *given < 0.5))
            return unreadable("--meter-error '" + request.meter_error + "': a share such as 2% is expected");
        meter = *given;
    } else {
        out.notes.push_back(
            "the field meter's scale is taken as good to 2 % (assumed): give --meter-error if you know it");
    }
    out.remanence_T = fit->remanence_T;
    out.standard_uncertainty_T = std::hypot(fit->standard_uncertainty_T, meter * fit->remanence_T);
    out.moment_A_m2 = eddy::moment_A_m2(*magnet, out.remanence_T, 1);
    out.moment_uncertainty_A_m2 = out.moment_A_m2 * out.standard_uncertainty_T / out.remanence_T;
    if (fit->widened > 1.5)
        out.notes.push_back("the readings scatter " + significant(fit->widened, 2) +
                            " times more than their uncertainties: check the distance from the pole face to the sensor "
                            "inside its case, and that you are on the axis");
    if (out.readings.size() == 1) out.notes.push_back("one reading can't show a wrong distance: add two further out");
    if (out.remanence_T > 1.6) out.notes.push_back("no permanent magnet has so much: check unit and distance");
    if (!request.setup.magnet_mass.empty()) {
        const Result<Uncertain> mass =
            uncertain_from(request.setup.magnet_mass, base_dimension(Dimension::kilogram), "--magnet-mass");
        if (!mass) return mass.problem();
        out.density_kg_m3 = mass->value / magnet->volume_m3();
    }
    out.words = "--br " + with_limits(out.remanence_T, out.standard_uncertainty_T, "T") + " --recoil-permeability 1";
    return out;
}

Result<Uncertain> electrical(const std::string& text, const char* unit, const std::string& option, double doubt) {
    Result<Uncertain> value = uncertain_from(text, parse_unit(unit)->dimension, option);
    if (!value) return value;
    if (value->value == 0) return unreadable(option + " '" + text + "': a value apart from zero is expected");
    if (value->spread == 0) *value = {value->value, doubt * std::abs(value->value), false};
    return value;
}

Result<TubeMeasured> measured_tube(const MeasureRequest& request) {
    if (request.current.empty() || request.voltage.empty() || request.span.empty())
        return unreadable("four wires need --current, --voltage and --span (between the voltage taps)");
    const Result<DropSetup> setup = tube_setup(request.setup);
    if (!setup) return setup.problem();
    const Result<Uncertain> current = electrical(request.current, "A", "--current", current_doubt);
    if (!current) return current.problem();
    Result<Uncertain> voltage = electrical(request.voltage, "V", "--voltage", voltage_doubt);
    if (!voltage) return voltage.problem();
    Result<Uncertain> span = uncertain_from(request.span, base_dimension(Dimension::metre), "--span");
    if (!span) return span.problem();
    if (span->spread == 0) *span = {span->value, 0.5e-3, true};
    if (span->value > setup->inputs.tube_length_m.value)
        return refused("the span between the taps is longer than the tube");
    TubeMeasured out;
    if (request.reversed_voltage.empty()) {
        out.notes.push_back("measured in one direction: reverse the current and give --reversed-voltage, so that the "
                            "contacts' thermal voltage cancels");
    } else {
        const Result<Uncertain> back = electrical(request.reversed_voltage, "V", "--reversed-voltage", voltage_doubt);
        if (!back) return back.problem();
        if ((voltage->value > 0) == (back->value > 0))
            return unreadable("--reversed-voltage '" + request.reversed_voltage +
                              "': with the current reversed the voltage has the other sign: -0.27mV beside 0.26mV");
        out.thermal_voltage_V = (voltage->value + back->value) / 2;
        voltage->value = (voltage->value - back->value) / 2;
        if (std::abs(out.thermal_voltage_V) > much_thermal_V)
            out.notes.push_back("the contacts' thermal voltage of " + significant(out.thermal_voltage_V * 1e6, 2) +
                                " uV is large (copper contacts give a few): let them cool, and read again");
    }
    out.resistance_ohm = std::abs(voltage->value / current->value);
    const double relative = std::hypot(voltage->standard() / voltage->value, current->standard() / current->value);
    Draws draws(samples, 1);
    const auto variations = eddy::tube_variations(setup->inputs, draws);
    const Result<eddy::Conductivity> c =
        eddy::conductivity_from_resistance({{out.resistance_ohm, relative * out.resistance_ohm, false}, *span},
                                           eddy::nominal_wall_area_m2(setup->inputs), variations, draws);
    if (!c) return c.problem();
    out.conductivity = *c;
    out.iacs_percent = 100 * c->value_S_m / iacs_S_m;
    const double rho = 1e8 / c->value_S_m;
    out.words = "--resistivity " + with_limits(rho, rho * c->standard_uncertainty_S_m / c->value_S_m, "uohm.cm");
    return out;
}

} // namespace

Result<MeasureResult> measure(const MeasureRequest& request) {
    MeasureResult out;
    if (!request.fields.empty()) {
        Result<MagnetMeasured> magnet = measured_magnet(request);
        if (!magnet) return magnet.problem();
        out.magnet = std::move(*magnet);
    }
    if (!request.current.empty() || !request.voltage.empty() || !request.span.empty()) {
        Result<TubeMeasured> tube = measured_tube(request);
        if (!tube) return tube.problem();
        out.tube = std::move(*tube);
    }
    return out;
}

std::vector<std::string> measuring_sheet() {
    return {
        "Magnet",
        "  1. Weigh it:                                            mass ............ g",
        "  2. Calipers of brass or plastic (steel jumps onto it):  diameter .......... mm   length .......... mm",
        "  3. Field meter on the axis, from the pole face to the sensor inside its case (ask the maker how deep it "
        "sits):",
        "        at .......... mm   ............ mT        at .......... mm   ............ mT",
        "        at .......... mm   ............ mT        the meter is good to ........ %",
        "     Distances of half a diameter and more are less touchy than at the face. Turn it round: both faces alike?",
        "  4. Temperature of the magnet:                            ............ degC",
        "     -> pourbook measure --magnet cylinder:Dmmx Lmm --field B@Z --field B@Z --field B@Z",
        "",
        "Tube",
        "  5. At both ends, across two directions, averaged:       bore ............ mm   outside ............ mm",
        "  6. Length ............ mm    mass ............ g        temperature ............ degC",
        "  7. Four wires: current in and out at the very ends; two taps at least two diameters inside, on one line:",
        "        span ............ mm    current ............ A    voltage ............ mV    reversed ............ mV",
        "     Short pulses: 10 A warms a thin tube within a minute.",
        "     -> pourbook measure --tube ID:OD:LENGTH --current I --voltage U --reversed-voltage U --span L",
        "",
        "Drop",
        "  8. Tube upright (plumb line). Let go at rest with the magnet's centre at the mouth; catch it on something "
        "soft.",
        "        time ........ ........ ........ ........ ........ s    or frames ........ ........ ........ at "
        "........ /s",
        "  9. The same magnet, not magnetic metal or plastic of the same fit dropped beside it: does it rub?",
        "     -> pourbook infer --magnet ... --br ... --tube ... --time T,T,T,T,T --resistance R --span L --tube-mass "
        "M",
    };
}

} // namespace pourbook
