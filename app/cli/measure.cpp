#include "cli/context.hpp"

#include "answers/drop/measure_report.hpp"

namespace pourbook {

void declare_measure(Context& context) {
    auto request = std::make_shared<MeasureRequest>();
    SetupWords& setup = request->setup;
    CLI::App* c = context.command(
        "measure",
        "the magnet's moment and the tube's conductivity from readings; without readings the sheet to fill in");
    c->add_option("--magnet", setup.magnet, "sphere:D, cylinder:DxL or ring:ODxIDxL");
    c->add_option("--magnet-mass", setup.magnet_mass, "its mass, for its density");
    c->add_option("--field", request->fields,
                  "field on the axis at a distance from the pole face, such as 0.21T@5mm; repeat it")
        ->allow_extra_args(false);
    c->add_option("--meter-error", request->meter_error, "of the field meter's scale, such as 2%");
    c->add_option("--tube", setup.tube, "ID:OD:LENGTH");
    c->add_option("--current", request->current, "through the tube, such as 5A");
    c->add_option("--voltage", request->voltage, "between the taps, such as 1.8mV");
    c->add_option("--reversed-voltage", request->reversed_voltage, "the same with the current reversed");
    c->add_option("--span", request->span, "distance between the taps");
    c->callback([&context, request] {
        context.answer = [&context, request](const Catalogue&) {
            return context.answered(
                measure(*request), [](const MeasureResult& r) { return json_of(r); },
                [](const MeasureResult& r, UnitSystem u) { return text_of(r, u); });
        };
    });
}

} // namespace pourbook
